package org.geneticsrules.architecture;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaModifier;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.module.ModuleDescriptor;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Checks of whole packages. Each gives the packages that fail, in order of name. */
final class PackageChecks {
    private PackageChecks() {}

    /** Packages with more public top-level types than a reader can hold in mind. */
    static List<String> crowded(JavaClasses classes, int limit) {
        return publicTypes(classes).entrySet().stream()
                .filter(entry -> entry.getValue() > limit)
                .map(entry -> entry.getKey() + " has " + entry.getValue())
                .toList();
    }

    /** Packages with public types that the module does not export. */
    static List<String> hidden(JavaClasses classes, ModuleDescriptor module) {
        Collection<String> exported = module.exports().stream()
                .filter(export -> !export.isQualified())
                .map(ModuleDescriptor.Exports::source)
                .collect(Collectors.toSet());
        return publicTypes(classes).keySet().stream()
                .filter(name -> !exported.contains(name))
                .toList();
    }

    /** Source folders with Java files but without a package-info.java that says {@code @NullMarked}. */
    static List<String> undescribed(Path sources) {
        try (Stream<Path> files = Files.walk(sources)) {
            return files.filter(file -> file.toString().endsWith(".java"))
                    .filter(file -> !file.endsWith("module-info.java"))
                    .map(Path::getParent)
                    .distinct()
                    .filter(folder -> !described(folder.resolve("package-info.java")))
                    .map(folder -> sources.relativize(folder).toString())
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static boolean described(Path packageInfo) {
        try {
            return Files.exists(packageInfo) && Files.readString(packageInfo).contains("@NullMarked");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Map<String, Long> publicTypes(JavaClasses classes) {
        return classes.stream()
                .filter(JavaClass::isTopLevelClass)
                .filter(item -> item.getModifiers().contains(JavaModifier.PUBLIC))
                .collect(Collectors.groupingBy(JavaClass::getPackageName, TreeMap::new, Collectors.counting()));
    }
}
