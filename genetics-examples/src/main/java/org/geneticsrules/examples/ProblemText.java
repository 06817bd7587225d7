package org.geneticsrules.examples;

import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.NoSuchFileException;
import java.util.List;
import org.geneticsrules.problem.Position;
import org.geneticsrules.problem.Problem;
import org.jspecify.annotations.Nullable;

/** Problems as lines for the error stream. Stateless and thread-safe. */
final class ProblemText {

    private ProblemText() {}

    /** Problems of a question, one line each. */
    static String of(List<Problem> problems) {
        StringBuilder text = new StringBuilder();
        problems.forEach(problem -> text.append("problem: ").append(problem).append('\n'));
        return text.toString();
    }

    /** Problems of a document, each with file, line and column in front, as editors and terminals link them. */
    static String of(String file, List<Problem> problems) {
        StringBuilder text = new StringBuilder();
        for (Problem problem : problems) {
            text.append(file).append(':');
            problem.position()
                    .ifPresent(place -> text.append(place.line())
                            .append(':')
                            .append(place.column())
                            .append(':'));
            text.append(' ').append(withoutPosition(problem)).append('\n');
        }
        return text.toString();
    }

    /** Problems of a text on the command line, each with the text below and a caret where it goes wrong. */
    static String of(String option, String given, List<Problem> problems) {
        StringBuilder text = new StringBuilder();
        for (Problem problem : problems) {
            text.append("problem: ").append(option);
            problem.position().ifPresent(place -> text.append(", column ").append(place.column()));
            text.append(": ").append(withoutPosition(problem)).append('\n');
            problem.position().filter(place -> place.line() == 1).ifPresent(place -> caret(given, place, text));
        }
        return text.toString();
    }

    static String sentence(UncheckedIOException unreadable) {
        String reason = unreadable.getCause() instanceof NoSuchFileException
                ? "there is no such file"
                : unreadable.getCause() instanceof AccessDeniedException
                        ? "it may not be opened"
                        : reason(unreadable.getCause());
        return unreadable.getMessage() + ": " + reason;
    }

    /** A folder is told in plain words, which the system tells in its own. */
    private static String reason(@Nullable Throwable cause) {
        return String.valueOf(cause).endsWith("Is a directory") ? "it is a folder" : String.valueOf(cause);
    }

    private static void caret(String given, Position place, StringBuilder text) {
        text.append("  ")
                .append(given)
                .append('\n')
                .append(" ".repeat(place.column() + 1))
                .append("^\n");
    }

    private static String withoutPosition(Problem problem) {
        Problem bare = Problem.of(problem.stage(), problem.code(), problem.pointer(), problem.message())
                .near(problem.nearest());
        return problem.expected().map(bare::expecting).orElse(bare).toString();
    }
}
