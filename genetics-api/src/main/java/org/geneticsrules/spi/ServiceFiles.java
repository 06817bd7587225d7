package org.geneticsrules.spi;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URL;
import java.net.URLConnection;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;

/**
 * The provider-configuration files that a class loader can see, each with its jar.
 *
 * <p>{@link java.util.ServiceLoader} silently takes the first of two jars that provide a class of the same name, which depends on the
 * order of the class path. These files tell that there are two.
 */
final class ServiceFiles {

    private static final String NAME = "META-INF/services/" + GeneticsProvider.class.getName();

    private final Map<String, TreeSet<String>> jarsByClass = new LinkedHashMap<>();
    private final List<PluginProblem> problems = new ArrayList<>();

    private ServiceFiles() {}

    /** No files, for providers that are not found by such files. */
    static ServiceFiles none() {
        return new ServiceFiles();
    }

    static ServiceFiles of(ClassLoader loader) {
        ServiceFiles files = new ServiceFiles();
        try {
            for (URL url : Collections.list(loader.getResources(NAME))) {
                files.read(url);
            }
        } catch (IOException e) {
            files.problems.add(PluginProblem.of(
                    "unreadable-services", NAME, List.of(), "the class loader cannot list these files: " + e));
        }
        return files;
    }

    private void read(URL url) {
        String jar = Locations.holding(url, NAME);
        try {
            URLConnection connection = url.openConnection();
            connection.setUseCaches(false); // a cached jar file would stay open after the class loader is closed
            try (BufferedReader lines =
                    new BufferedReader(new InputStreamReader(connection.getInputStream(), StandardCharsets.UTF_8))) {
                lines.lines().forEach(line -> {
                    String name = line.replaceFirst("#.*", "").strip();
                    if (!name.isEmpty()) {
                        jarsByClass
                                .computeIfAbsent(name, unseen -> new TreeSet<>())
                                .add(jar);
                    }
                });
            }
        } catch (IOException e) {
            problems.add(PluginProblem.of("unreadable-services", NAME, List.of(jar), "this file cannot be read: " + e));
        }
    }

    /** The jars that provide a class, sorted. */
    List<String> jars(String className) {
        return new ArrayList<>(jarsByClass.getOrDefault(className, new TreeSet<>()));
    }

    /** The jars of the classes that a message mentions. */
    List<String> jarsMentioned(String message) {
        return jarsByClass.keySet().stream()
                .filter(name -> message.contains(name) || message.contains(name.replace('.', '/')))
                .flatMap(name -> Objects.requireNonNull(jarsByClass.get(name)).stream())
                .toList();
    }

    /** One problem for each class that several jars provide, and one for each file that could not be read. */
    List<PluginProblem> problems() {
        List<PluginProblem> all = new ArrayList<>(problems);
        jarsByClass.forEach((name, jars) -> {
            if (jars.size() > 1) {
                all.add(PluginProblem.of(
                        "class-in-several-jars",
                        name,
                        new ArrayList<>(jars),
                        "a provider class of this name is in " + jars.size()
                                + " jars, and which one Java loads depends on"
                                + " their order; none is served. Leave one jar"));
            }
        });
        return all;
    }
}
