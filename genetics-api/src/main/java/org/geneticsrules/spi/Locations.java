package org.geneticsrules.spi;

import java.lang.module.ModuleReference;
import java.lang.module.ResolvedModule;
import java.net.URI;
import java.net.URL;
import java.nio.file.FileSystemNotFoundException;
import java.nio.file.Path;
import java.security.CodeSource;
import java.util.Optional;

/** Says where a class or a file came from, for people who have to find the jar. Stateless and thread-safe. */
final class Locations {

    private Locations() {}

    /** As in {@code file:///plugins/mice.jar} or {@code module example.mice (file:///plugins/mice.jar)}. */
    static String of(Class<?> type) {
        Module module = type.getModule();
        if (module.isNamed()) {
            return "module " + module.getName()
                    + moduleUri(module)
                            .map(uri -> " (" + plain(uri.toString()) + ")")
                            .orElse("");
        }
        return Optional.ofNullable(type.getProtectionDomain().getCodeSource())
                .map(CodeSource::getLocation)
                .map(url -> plain(url.toString()))
                .orElse("class " + type.getName() + " of unknown origin");
    }

    /** The jar or folder that holds a resource. */
    static String holding(URL resource, String name) {
        String text = resource.toString();
        String holder = text.endsWith(name) ? text.substring(0, text.length() - name.length()) : text;
        if (holder.startsWith("jar:") && holder.endsWith("!/")) {
            holder = holder.substring("jar:".length(), holder.length() - "!/".length());
        }
        return plain(holder);
    }

    private static Optional<URI> moduleUri(Module module) {
        return Optional.ofNullable(module.getLayer())
                .flatMap(layer -> layer.configuration().findModule(module.getName()))
                .map(ResolvedModule::reference)
                .flatMap(ModuleReference::location);
    }

    /** The same file is spelled in several ways by different class loaders; this is the spelling of {@link Path#toUri()}. */
    private static String plain(String uri) {
        try {
            return Path.of(URI.create(uri)).toUri().toString();
        } catch (IllegalArgumentException | FileSystemNotFoundException e) {
            return uri;
        }
    }
}
