package org.geneticsrules.inference;

import java.util.Optional;
import java.util.concurrent.CancellationException;

/**
 * How much may be done for an answer.
 *
 * @param cells the cells that all tables of one part may have together
 * @param sampling how parts that take more are sampled, if they are
 * @param parallel whether groups are looked at by several threads at once
 * @param by is called now and then by whoever works, and may throw; an interruption is watched for if there is nobody else
 */
record Effort(double cells, Optional<Sampling> sampling, boolean parallel, Optional<Runnable> by) {

    /** What may be done unless stated otherwise. */
    static Effort usual() {
        return within(Inference.USUAL_CELLS);
    }

    /** The usual with another limit. */
    static Effort within(double cells) {
        return new Effort(cells, Optional.empty(), false, Optional.empty());
    }

    /** The same for a question of the current thread: it is this one whose interruption counts, whoever works. */
    Effort asked() {
        Thread asking = Thread.currentThread();
        return by.isPresent() ? this : watched(() -> unlessInterrupted(asking));
    }

    /** Is called now and then by whoever works, and may throw. */
    Runnable watch() {
        return by.orElse(() -> unlessInterrupted(Thread.currentThread()));
    }

    private static void unlessInterrupted(Thread thread) {
        if (thread.isInterrupted()) {
            throw new CancellationException("the question was interrupted");
        }
    }

    Effort of(double most) {
        return new Effort(most, sampling, parallel, by);
    }

    Effort sampled(Sampling how) {
        return new Effort(cells, Optional.of(how), parallel, by);
    }

    Effort inParallel() {
        return new Effort(cells, sampling, true, by);
    }

    Effort watched(Runnable watch) {
        return new Effort(cells, sampling, parallel, Optional.of(watch));
    }
}
