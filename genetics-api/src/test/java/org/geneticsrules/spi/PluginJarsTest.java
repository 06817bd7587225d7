package org.geneticsrules.spi;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Plug-ins that were compiled a moment ago, found in jars by machines and class loaders of their own. */
class PluginJarsTest {

    @TempDir
    private Path folder;

    @Test
    void a_good_plug_in_is_found_beside_a_broken_one_on_the_class_path_and_on_the_module_path() throws IOException {
        Workshop workshop = new Workshop(folder);
        Path otters = workshop.plugin("otters.jar", "otters", "example.otters", "1.0.0", "");
        Path broken = workshop.plugin(
                "broken.jar", "broken", "example.broken", "1.0.0", "throw new IllegalStateException(\"no fur\");");
        List<Path> path = path(otters, broken, workshop.program("listing", "Listing"));

        assertListing(Workshop.onClassPath(path, "listing", "Listing"), uri(otters), uri(broken));
        // A module is resolved because it provides what another uses, so the plug-ins need not be named.
        assertListing(
                Workshop.onModulePath(path, "tools.jackson.databind", "listing", "Listing"),
                "module otters (" + uri(otters) + ")",
                "module broken (" + uri(broken) + ")");
    }

    private static void assertListing(List<String> lines, String otters, String broken) {
        assertEquals(3, lines.size(), lines::toString);
        assertEquals("plugin example.otters 1.0.0 (" + otters + ")", lines.get(0));
        assertEquals("model example.otters.coat 1.0.0 from example.otters 1.0.0 (" + otters + ")", lines.get(1));
        assertTrue(lines.get(2).startsWith("problem example.broken 1.0.0 (" + broken + "): "), lines.get(2));
        assertTrue(lines.get(2).contains("IllegalStateException: no fur"), lines.get(2));
        assertTrue(lines.get(2).endsWith("[cannot-start]"), lines.get(2));
    }

    @Test
    void two_jars_with_one_id_and_version_are_both_named_and_neither_is_served() throws IOException {
        Workshop workshop = new Workshop(folder);
        Path one = workshop.plugin("one.jar", "one", "example.otters", "1.0.0", "");
        Path two = workshop.plugin("two.jar", "two", "example.otters", "1.0.0", "");
        for (List<Path> order : List.of(List.of(one, two), List.of(two, one))) {
            try (URLClassLoader loader = loader(order)) {
                Registry registry = Registry.discover(loader);
                assertEquals(List.of(), registry.providers());
                assertEquals(1, registry.problems().size(), registry.problems()::toString);
                PluginProblem problem = registry.problems().get(0);
                assertEquals("duplicate-plugin", problem.code());
                assertEquals("example.otters 1.0.0", problem.subject());
                assertEquals(List.of(uri(one), uri(two)), problem.locations());
                assertTrue(problem.message().contains("one.Provider in " + uri(one)), problem::message);

                Registry chosen =
                        Registry.discover(loader, plugin -> plugin.location().endsWith("/two.jar"));
                assertEquals(List.of(), chosen.problems());
                assertEquals("two.Provider", chosen.providers().get(0).className());
            }
        }
    }

    @Test
    void two_versions_that_bring_equal_documents_are_both_served() throws IOException {
        Workshop workshop = new Workshop(folder);
        Path one = workshop.plugin("one.jar", "one", "example.otters", "1.0.0", "");
        Path two = workshop.plugin("two.jar", "two", "example.otters", "1.1.0", "");
        try (URLClassLoader loader = loader(List.of(one, two))) {
            Registry registry = Registry.discover(loader);
            assertEquals(List.of(), registry.problems());
            assertEquals(2, registry.providers().size());
            assertEquals(1, registry.models().size(), "equal content is one document");
        }
    }

    @Test
    void one_class_in_two_jars_is_reported_whatever_their_order() throws IOException {
        Workshop workshop = new Workshop(folder);
        Path jar = workshop.plugin("one.jar", "one", "example.otters", "1.0.0", "");
        Path copy = Files.copy(jar, folder.resolve("copy.jar"));
        Path other = workshop.plugin("other.jar", "other", "example.seals", "1.0.0", "");
        for (List<Path> order : List.of(List.of(jar, copy, other), List.of(copy, other, jar))) {
            try (URLClassLoader loader = loader(order)) {
                Registry registry = Registry.discover(loader);
                assertEquals(
                        List.of("example.seals"),
                        registry.providers().stream()
                                .map(ProviderDescriptor::id)
                                .toList());
                PluginProblem problem = registry.problems().get(0);
                assertEquals("class-in-several-jars", problem.code());
                assertEquals("one.Provider", problem.subject());
                assertEquals(List.of(uri(copy), uri(jar)), problem.locations());
            }
        }
    }

    @Test
    void a_jar_that_names_a_class_it_lacks_is_named_and_hides_no_other() throws IOException {
        Workshop workshop = new Workshop(folder);
        Path good = workshop.plugin("good.jar", "good", "example.seals", "1.0.0", "");
        Path empty = folder.resolve("empty");
        Workshop.write(empty.resolve("META-INF/services/" + GeneticsProvider.class.getName()), "gone.Provider\n");
        try (URLClassLoader loader = loader(List.of(empty, good))) {
            Registry registry = Registry.discover(loader);
            assertEquals(1, registry.providers().size());
            PluginProblem problem = registry.problems().get(0);
            assertEquals("broken-service", problem.code());
            assertEquals(List.of(uri(empty)), problem.locations());
            assertTrue(problem.message().contains("gone.Provider"), problem::message);
        }
    }

    @Test
    void what_is_not_wanted_is_never_run() throws IOException {
        Workshop workshop = new Workshop(folder);
        Path broken = workshop.plugin(
                "broken.jar", "broken", "example.broken", "1.0.0", "throw new IllegalStateException(\"it ran\");");
        try (URLClassLoader loader = loader(List.of(broken))) {
            List<ProviderDescriptor> shown = new ArrayList<>();
            Registry registry = Registry.discover(loader, plugin -> {
                shown.add(plugin);
                return false;
            });
            assertEquals(List.of(), registry.problems());
            assertEquals("CC0-1.0", shown.get(0).licence());
            assertEquals("Coats of example.broken", shown.get(0).title());
        }
    }

    private static URLClassLoader loader(Collection<Path> jars) throws IOException {
        List<URL> urls = new ArrayList<>();
        for (Path jar : jars) {
            urls.add(jar.toUri().toURL());
        }
        return new URLClassLoader(urls.toArray(URL[]::new), Registry.class.getClassLoader());
    }

    private static List<Path> path(Path... more) {
        List<Path> path = new ArrayList<>(Workshop.guava());
        path.addAll(Workshop.jackson());
        path.add(Workshop.LIBRARY);
        path.addAll(List.of(more));
        return path;
    }

    private static String uri(Path file) {
        return file.toUri().toString();
    }
}
