package org.geneticsrules.examples;

import java.io.UncheckedIOException;
import java.util.Optional;
import java.util.function.Supplier;
import org.geneticsrules.problem.ProblemsException;

/** Reads several things and notes what is wrong with each, so that all of it is told at once. Not thread-safe. */
final class Noted {

    private final StringBuilder problems = new StringBuilder();

    /** What was read; nothing if it could not be, which is noted. */
    <T> Optional<T> read(Supplier<T> reading) {
        try {
            return Optional.of(reading.get());
        } catch (InputException e) {
            problems.append(e.text());
        } catch (ProblemsException e) {
            problems.append(ProblemText.of(e.problems()));
        } catch (UncheckedIOException e) {
            problems.append("problem: ").append(ProblemText.sentence(e)).append('\n');
        }
        return Optional.empty();
    }

    /** Ends the reading if anything was wrong. */
    void throwIfAny() {
        if (problems.length() > 0) {
            throw new InputException(problems.toString());
        }
    }
}
