package org.geneticsrules.statistics;

import org.apache.commons.statistics.distribution.BetaDistribution;

/** How likely as many of so many would be at a stated chance, or more, or as few. Exact but for rounding. Stateless and thread-safe. */
public final class BinomialTail {

    private BinomialTail() {}

    /**
     * Returns the chance of so many or more, by the beta distribution function with parameters x and n - x + 1.
     *
     * @param successes how many have the property, 0 to {@code trials}
     * @param trials how many were looked at, at least 1
     * @param chance the chance stated, from 0 to 1
     * @return P(X &gt;= successes), from 0 to 1
     * @throws IllegalArgumentException if an argument is outside its range
     */
    public static double atLeast(long successes, long trials, double chance) {
        BinomialInterval.require(successes, trials);
        if (!(chance >= 0 && chance <= 1)) {
            throw new IllegalArgumentException("a chance is 0 to 1, but was " + chance);
        }
        return successes == 0
                ? 1
                : BetaDistribution.of((double) successes, trials - successes + 1.0)
                        .cumulativeProbability(chance);
    }

    /**
     * Returns p of the chance stated, whichever way the counts deviate: twice the smaller of both tails.
     *
     * @param successes how many have the property, 0 to {@code trials}
     * @param trials how many were looked at, at least 1
     * @param chance the chance stated, from 0 to 1
     * @return p, at most 1
     * @throws IllegalArgumentException if an argument is outside its range
     */
    public static double twoSided(long successes, long trials, double chance) {
        return Math.min(
                1, 2 * Math.min(atLeast(successes, trials, chance), atLeast(trials - successes, trials, 1 - chance)));
    }
}
