package org.geneticsrules.spi;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.spi.ToolProvider;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Compiles plug-ins and programs in a temporary folder and runs programs in a Java machine of their own. */
final class Workshop {

    /** The test runner says where the module is; without it, the working folder is the module. */
    static final Path LIBRARY =
            Path.of(System.getProperty("basedir", "")).resolve("target/classes").toAbsolutePath();

    private final Path folder;

    Workshop(Path folder) {
        this.folder = folder;
    }

    /** A source or document of the test resources, with its blanks filled in. */
    static String text(String name, String... blanks) {
        try (InputStream in = Workshop.class.getResourceAsStream("programs/" + name)) {
            String text = new String(Objects.requireNonNull(in, name).readAllBytes(), StandardCharsets.UTF_8);
            for (int i = 0; i < blanks.length; i += 2) {
                text = text.replace("@" + blanks[i] + "@", blanks[i + 1]);
            }
            return text;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The jar or folder that a class of this test run came from. */
    static Path origin(Class<?> type) {
        try {
            return Path.of(
                    type.getProtectionDomain().getCodeSource().getLocation().toURI());
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    /** A jar that provides one plug-in, named both in its module descriptor and in META-INF/services. */
    Path plugin(String jar, String packageName, String id, String version, String constructor) throws IOException {
        String[] blanks = {"package", packageName, "id", id, "version", version, "constructor", constructor};
        Map<String, String> sources = new LinkedHashMap<>();
        sources.put("module-info.java", """
                module %s {
                    requires org.geneticsrules.api;
                    provides org.geneticsrules.spi.GeneticsProvider with %s.Provider;
                }
                """.replace("%s", packageName));
        sources.put(packageName + "/Provider.java", text("Provider.java.txt", blanks));
        Path classes = compile(jar, sources);
        write(classes.resolve(packageName + "/traits.json"), text("traits.json.txt", blanks));
        write(classes.resolve(packageName + "/model.json"), text("model.json.txt", blanks));
        write(
                classes.resolve("META-INF/services/" + GeneticsProvider.class.getName()),
                packageName + ".Provider # the plug-in\n");
        return pack(jar, classes);
    }

    /** A jar with one program, as a module of the name of its package. */
    Path program(String packageName, String className) throws IOException {
        Map<String, String> sources = new LinkedHashMap<>();
        sources.put(
                "module-info.java",
                "module " + packageName + " { requires org.geneticsrules.api; exports " + packageName + "; }");
        sources.put(packageName + "/" + className + ".java", text(className + ".java.txt"));
        return pack(packageName + ".jar", compile(packageName + ".jar", sources));
    }

    private Path compile(String name, Map<String, String> sources) throws IOException {
        Path source = folder.resolve(name + ".source");
        Path classes = folder.resolve(name + ".classes");
        List<Path> files = new ArrayList<>();
        for (Map.Entry<String, String> entry : sources.entrySet()) {
            files.add(write(source.resolve(entry.getKey()), entry.getValue()));
        }
        // To compile against the library takes the annotations that its descriptor names; to run does not.
        String path = LIBRARY
                + File.pathSeparator
                + origin(org.jspecify.annotations.NullMarked.class)
                + File.pathSeparator
                + guava().stream().map(Path::toString).collect(Collectors.joining(File.pathSeparator));
        List<String> arguments = new ArrayList<>(
                List.of("--release", "17", "-proc:none", "--module-path", path, "-d", classes.toString()));
        files.forEach(file -> arguments.add(file.toString()));
        StringWriter messages = new StringWriter();
        PrintWriter printer = new PrintWriter(messages);
        int status =
                ToolProvider.findFirst("javac").orElseThrow().run(printer, printer, arguments.toArray(String[]::new));
        if (status != 0) {
            throw new AssertionError(name + " does not compile: " + messages);
        }
        return classes;
    }

    private Path pack(String name, Path classes) throws IOException {
        Path jar = folder.resolve(name);
        try (OutputStream out = Files.newOutputStream(jar);
                JarOutputStream entries = new JarOutputStream(out);
                Stream<Path> files = Files.walk(classes)) {
            for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
                entries.putNextEntry(
                        new JarEntry(classes.relativize(file).toString().replace(File.separatorChar, '/')));
                Files.copy(file, entries);
                entries.closeEntry();
            }
        }
        return jar;
    }

    static Path write(Path file, String text) throws IOException {
        Files.createDirectories(file.getParent());
        return Files.writeString(file, text);
    }

    /** The jars of Guava: all that the library needs at run time. */
    static List<Path> guava() {
        return List.of(
                origin(com.google.common.collect.ImmutableList.class),
                origin(com.google.common.util.concurrent.internal.InternalFutureFailureAccess.class));
    }

    /** The jars of Jackson, which documents need. */
    static List<Path> jackson() {
        return List.of(
                origin(tools.jackson.core.JsonParser.class),
                origin(tools.jackson.databind.ObjectMapper.class),
                origin(com.fasterxml.jackson.annotation.JsonProperty.class));
    }

    static List<String> onClassPath(Collection<Path> path, String packageName, String className) throws IOException {
        return run("--class-path", join(path), packageName + "." + className);
    }

    static List<String> onModulePath(Collection<Path> path, String addModules, String packageName, String className)
            throws IOException {
        return addModules.isEmpty()
                ? run("--module-path", join(path), "--module", packageName + "/" + packageName + "." + className)
                : run(
                        "--module-path",
                        join(path),
                        "--add-modules",
                        addModules,
                        "--module",
                        packageName + "/" + packageName + "." + className);
    }

    private static String join(Collection<Path> path) {
        return path.stream().map(Path::toString).collect(Collectors.joining(File.pathSeparator));
    }

    /** The lines a child machine prints; its failure is a failure of the test. */
    private static List<String> run(String... arguments) throws IOException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(Arrays.asList(arguments));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        try {
            if (process.waitFor() != 0) {
                throw new AssertionError(command + " ended with " + process.exitValue() + ":\n" + printed);
            }
        } catch (InterruptedException e) {
            process.destroy();
            throw new AssertionError(e);
        }
        return printed.lines().toList();
    }
}
