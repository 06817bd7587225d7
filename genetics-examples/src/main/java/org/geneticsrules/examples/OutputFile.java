package org.geneticsrules.examples;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Locale;
import java.util.concurrent.CancellationException;
import org.geneticsrules.json.DocumentKind;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.Source;
import org.geneticsrules.problem.ProblemsException;
import org.jspecify.annotations.Nullable;

/** Writes a file as a whole or not at all, also where the program is ended meanwhile. Stateless and thread-safe. */
final class OutputFile {

    private OutputFile() {}

    /**
     * Writes a text beside the file and then moves it there. What was written beside is deleted when the program ends, however it ends,
     * unless the machine fails.
     *
     * @param file the file, created or replaced
     * @param text what is to stand there
     * @throws CancellationException if the thread was interrupted; then the file is as it was
     * @throws UncheckedIOException if it cannot be written; then the file is as it was
     */
    static void write(Path file, String text) {
        try {
            Path target = Files.isSymbolicLink(file) ? file.toRealPath() : file.toAbsolutePath();
            Path beside = target.resolveSibling(
                    "." + target.getFileName() + "." + ProcessHandle.current().pid() + ".tmp");
            beside.toFile().deleteOnExit();
            try {
                Files.writeString(beside, text, StandardCharsets.UTF_8);
                if (Thread.currentThread().isInterrupted()) {
                    throw new CancellationException("interrupted before " + file + " was complete");
                }
                move(beside, target);
            } finally {
                Files.deleteIfExists(beside);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(file + " cannot be written", e);
        }
    }

    /** Refuses a file that certainly cannot be written, before any work is done for it. */
    static boolean writable(String option, @Nullable Path file) {
        if (file == null) {
            return true;
        }
        Path folder = file.toAbsolutePath().getParent();
        if (Files.isDirectory(file) || folder == null || !Files.isDirectory(folder)) {
            throw new InputException("problem: " + option + ": "
                    + (Files.isDirectory(file) ? file + " is a folder" : "there is no folder for " + file)
                    + "; expected a file in a folder that is there\n");
        }
        return true;
    }

    /** Refuses a place for a frozen analysis where something else stands already, such as the records themselves. */
    static boolean freezable(@Nullable Path file) {
        writable("--freeze", file);
        if (file != null && file.toFile().length() > 0 && !isAnalysis(file)) {
            throw new InputException("problem: --freeze: " + file
                    + " is there already and is no frozen analysis; expected a new file, so that nothing is lost\n");
        }
        return true;
    }

    private static boolean isAnalysis(Path file) {
        try {
            return Documents.reader().kindOf(Source.of(file)) == DocumentKind.ANALYSIS;
        } catch (ProblemsException | UncheckedIOException unlike) {
            return false;
        }
    }

    /** Refuses to write over a file that is read. */
    static boolean apart(String option, @Nullable Path file, @Nullable Path read) {
        if (file != null
                && read != null
                && file.toAbsolutePath()
                        .normalize()
                        .equals(read.toAbsolutePath().normalize())) {
            throw new InputException("problem: " + option + ": " + file
                    + " is read by the same command; expected a file of its own, so that nothing is lost\n");
        }
        return true;
    }

    /** Whether a file is a document, by its name, or else a table. */
    static boolean isJson(String option, Path file) {
        String name = file.toString().toLowerCase(Locale.ROOT);
        if (!name.endsWith(".csv") && !name.endsWith(".json")) {
            throw new InputException(
                    "problem: " + option + " " + file + ": expected a name that ends in .csv or .json\n");
        }
        return name.endsWith(".json");
    }

    private static void move(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        }
    }
}
