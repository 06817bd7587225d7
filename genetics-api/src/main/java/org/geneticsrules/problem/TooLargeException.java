package org.geneticsrules.problem;

import java.util.Locale;

/**
 * Thrown when an exact answer would take more work than allowed; the question is refused before the work is begun.
 *
 * <p>The message says what was estimated, what is allowed, and what to ask instead.
 */
public final class TooLargeException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /** The estimated amount of work. */
    private final double estimate;

    /** The allowed amount of work, in the same unit. */
    private final double limit;

    /**
     * Makes the exception.
     *
     * @param what what would be counted, for example {@code classes of genotypes}
     * @param estimate the estimated number
     * @param limit the allowed number
     * @param alternative what to ask instead, as a sentence
     */
    public TooLargeException(String what, double estimate, double limit, String alternative) {
        super(String.format(
                Locale.ROOT,
                "an exact answer needs about %.0f %s, more than the %.0f allowed; %s",
                estimate,
                what,
                limit,
                alternative));
        this.estimate = estimate;
        this.limit = limit;
    }

    /**
     * Returns the estimated amount of work.
     *
     * @return a positive number
     */
    public double estimate() {
        return estimate;
    }

    /**
     * Returns the allowed amount of work.
     *
     * @return a positive number, less than the estimate
     */
    public double limit() {
        return limit;
    }
}
