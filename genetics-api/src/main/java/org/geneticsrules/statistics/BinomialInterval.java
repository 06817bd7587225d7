package org.geneticsrules.statistics;

import org.apache.commons.numbers.rootfinder.BrentSolver;
import org.apache.commons.statistics.distribution.BetaDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;

/** Confidence intervals of a proportion, from how many of so many had the property. Stateless and thread-safe. */
public final class BinomialInterval {

    private BinomialInterval() {}

    /**
     * Returns the exact interval of Clopper and Pearson: all chances at which neither so many nor so few have less than half of (1 - level).
     *
     * <p>Its ends are quantiles of beta distributions, since P(X &gt;= x) at chance p is the beta distribution function with parameters x and n - x + 1.
     *
     * @param successes how many have the property, 0 to {@code trials}
     * @param trials how many were looked at, at least 1
     * @param level confidence level, above 0 and below 1
     * @return the interval, whose lower end is 0 where none has the property, and whose upper end is 1 where all have
     * @throws IllegalArgumentException if an argument is outside its range
     */
    public static Interval clopperPearson(long successes, long trials, double level) {
        require(successes, trials);
        double tail = (1 - Interval.requireLevel(level)) / 2;
        double low = successes == 0 ? 0 : quantile((double) successes, trials - successes + 1.0, tail);
        // The upper end is one less the lower end of those without the property.
        double high = successes == trials ? 1 : 1 - quantile((double) trials - successes, successes + 1.0, tail);
        return new Interval(low, high, level, Interval.Method.CLOPPER_PEARSON, successes == 0, successes == trials);
    }

    /** Where the beta distribution function reaches a small tail. */
    private static double quantile(double a, double b, double tail) {
        BetaDistribution law = BetaDistribution.of(a, b);
        double high = law.getMean();
        while (law.cumulativeProbability(high) < tail) {
            high = (1 + high) / 2;
        }
        double low = high / 2;
        while (law.cumulativeProbability(low) > tail) {
            low /= 2;
        }
        return new BrentSolver(1e-14, Double.MIN_NORMAL, 1e-16)
                .findRoot(x -> law.cumulativeProbability(x) / tail - 1, low, high);
    }

    /**
     * Returns the approximate interval of Wilson: all chances p at which (x/n - p)^2 is at most z^2 p (1 - p) / n.
     *
     * @param successes how many have the property, 0 to {@code trials}
     * @param trials how many were looked at, at least 1
     * @param level confidence level, above 0 and below 1
     * @return the interval
     * @throws IllegalArgumentException if an argument is outside its range
     */
    public static Interval wilson(long successes, long trials, double level) {
        require(successes, trials);
        double z = NormalDistribution.of(0, 1).inverseSurvivalProbability((1 - Interval.requireLevel(level)) / 2);
        double n = (double) trials;
        double share = successes / n;
        double middle = share + z * z / (2 * n);
        double half = z * Math.sqrt(share * (1 - share) / n + z * z / (4 * n * n));
        double scale = 1 + z * z / n;
        double low = successes == 0 ? 0 : Math.max(0, (middle - half) / scale);
        double high = successes == trials ? 1 : Math.min(1, (middle + half) / scale);
        return new Interval(low, high, level, Interval.Method.WILSON, successes == 0, successes == trials);
    }

    static void require(long successes, long trials) {
        if (trials < 1 || successes < 0 || successes > trials) {
            throw new IllegalArgumentException("expected at least 1 trial and from 0 to as many successes, but found "
                    + successes + " of " + trials);
        }
    }
}
