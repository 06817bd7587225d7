package org.geneticsrules.examples.guide;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** The pages whose blocks come from the code: those of the guide, and the README. */
final class Guide {

    /** The test runner says where the module is; without it, the working folder is the module. */
    static final Path MODULE = Path.of(System.getProperty("basedir", "")).toAbsolutePath();

    static final Path FOLDER = MODULE.resolve("guide");
    static final Path README = MODULE.resolveSibling("README.md");
    static final Path SOURCES = MODULE.resolve("src/main/java/org/geneticsrules/examples/guide");

    /** The pages about the ferret models. */
    static final Path FERRETS = FOLDER.resolve("ferret");

    /** The pages about daily questions, one command each, and the files they ask about. */
    static final Path JOBS = FOLDER.resolve("jobs");

    private Guide() {}

    /** The pages about one ferret model each, in the order of their file names. */
    static List<Path> ferrets() {
        return files(FERRETS, ".md");
    }

    /** The pages about one concept each, in the order of their file names. */
    static List<Path> concepts() {
        return files(FOLDER, ".md").stream()
                .filter(page -> !page.endsWith("index.md"))
                .toList();
    }

    /** All pages with blocks from the code. */
    static List<Path> pages() {
        return Stream.of(List.of(README), files(FOLDER, ".md"), ferrets(), files(JOBS, ".md"))
                .flatMap(List::stream)
                .toList();
    }

    static List<Path> files(Path folder, String ending) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.toString().endsWith(ending))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
