package org.geneticsrules.answer.estimated;

import java.util.Optional;
import org.geneticsrules.estimation.Estimate;
import org.geneticsrules.statistics.Interval;

/**
 * One number that was estimated.
 *
 * @param words what it is, for example {@code the recombination fraction}
 * @param estimate the value of maximum likelihood with its profile interval, or with the exact one where no other was asked for
 * @param exact the exact interval, where there is one: it holds the truth at least as often as it says
 */
public record EstimatedNumber(String words, Estimate estimate, Optional<Interval> exact) {

    /**
     * Returns the interval to go by.
     *
     * @return the exact one if there is one, else that of the estimate
     */
    public Interval best() {
        return exact.orElse(estimate.interval());
    }
}
