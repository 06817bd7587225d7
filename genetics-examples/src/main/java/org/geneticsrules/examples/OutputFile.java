package org.geneticsrules.examples;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Collection;
import java.util.Collections;
import java.util.Locale;
import java.util.concurrent.CancellationException;
import org.geneticsrules.json.DocumentKind;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.Source;
import org.geneticsrules.problem.ProblemsException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

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
    private static boolean writable(String option, @Nullable Path file) {
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
    static boolean freezable(CommandSpec command, @Nullable Path file) {
        apart(command, "--freeze", file);
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

    /**
     * Refuses, before any work is done, a file that certainly cannot be written, and one that another option names: what is read by a command
     * is not lost by it, and two files that it writes are two.
     *
     * @param command the command, when its options were read
     * @param option the option that names the file
     * @param file the file
     */
    static boolean apart(CommandSpec command, String option, @Nullable Path file) {
        writable(option, file);
        if (file == null) {
            return true;
        }
        for (ArgSpec other : command.commandLine().getParseResult().matchedArgs()) {
            String name = other instanceof OptionSpec named ? named.longestName() : other.paramLabel();
            Object value = other.getValue();
            Collection<?> stated = value instanceof Collection<?> many ? many : Collections.singletonList(value);
            if (!name.equals(option) && stated.stream().anyMatch(one -> isSame(file, one))) {
                throw new InputException("problem: " + option + ": " + file + " is named by the same command (" + name
                        + "); expected a file of its own, so that nothing is lost\n");
            }
        }
        return true;
    }

    /** Whether what was stated for an option is a file, and that file. */
    private static boolean isSame(Path file, @Nullable Object stated) {
        if (!(stated instanceof Path || stated instanceof String)) {
            return false;
        }
        try {
            Path other = Path.of(stated.toString());
            return file.toAbsolutePath()
                            .normalize()
                            .equals(other.toAbsolutePath().normalize())
                    || (Files.exists(file) && Files.exists(other) && Files.isSameFile(file, other));
        } catch (InvalidPathException | IOException noSuchFile) {
            return false;
        }
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
