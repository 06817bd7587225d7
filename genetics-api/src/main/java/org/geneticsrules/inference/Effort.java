package org.geneticsrules.inference;

import java.util.Optional;
import java.util.concurrent.CancellationException;

/**
 * How much may be done for an answer.
 *
 * @param cells the cells that all tables of one part may have together
 * @param sampling how parts that take more are sampled, if they are
 * @param parallel whether groups are looked at by several threads at once
 * @param watch is called now and then by whoever works, and may throw
 */
record Effort(double cells, Optional<Sampling> sampling, boolean parallel, Runnable watch) {

    /** Watches for an interruption of whoever works. */
    private static final Runnable WORKER = () -> unlessInterrupted(Thread.currentThread());

    /** What may be done unless stated otherwise. */
    static Effort usual() {
        return within(Inference.USUAL_CELLS);
    }

    /** The usual with another limit. */
    static Effort within(double cells) {
        return new Effort(cells, Optional.empty(), false, WORKER);
    }

    private static void unlessInterrupted(Thread thread) {
        if (thread.isInterrupted()) {
            throw new CancellationException("the question was interrupted");
        }
    }

    /** The same for a question of the current thread: it is this one whose interruption counts, whoever works. */
    Effort asked() {
        Thread asking = Thread.currentThread();
        return watch == WORKER ? watched(() -> unlessInterrupted(asking)) : this;
    }

    Effort of(double most) {
        return new Effort(most, sampling, parallel, watch);
    }

    Effort sampled(Sampling how) {
        return new Effort(cells, Optional.of(how), parallel, watch);
    }

    Effort inParallel() {
        return new Effort(cells, sampling, true, watch);
    }

    Effort watched(Runnable by) {
        return new Effort(cells, sampling, parallel, by);
    }
}
