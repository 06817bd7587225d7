package org.geneticsrules.statistics;

import org.apache.commons.numbers.rootfinder.BrentSolver;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * A statistic that has the chi-squared distribution if the hypothesis is right.
 *
 * @param statistic its value, 0 or more
 * @param degreesOfFreedom how many independent deviations it sums, at least 1
 */
public record ChiSquared(double statistic, int degreesOfFreedom) {

    /**
     * Checks the range.
     *
     * @param statistic its value
     * @param degreesOfFreedom how many deviations it sums
     * @throws IllegalArgumentException if the statistic is negative or not a number, or there is no degree of freedom
     */
    public ChiSquared {
        if (!(statistic >= 0) || degreesOfFreedom < 1) {
            throw new IllegalArgumentException("chi-squared is 0 or more with at least 1 degree of freedom, but was "
                    + statistic + " with " + degreesOfFreedom);
        }
    }

    /**
     * Returns the chance of so large a statistic or a larger one if the hypothesis is right.
     *
     * @return the upper tail, from 0 to 1; small values speak against the hypothesis
     */
    public double p() {
        return ChiSquaredDistribution.of(degreesOfFreedom).survivalProbability(statistic);
    }

    /**
     * Returns the chance of so small a statistic or a smaller one if the hypothesis is right.
     *
     * @return the lower tail, from 0 to 1; small values mean that counts fit better than chance lets them
     */
    public double lowerTail() {
        return ChiSquaredDistribution.of(degreesOfFreedom).cumulativeProbability(statistic);
    }

    /**
     * Returns the sum with the statistic of another, independent test.
     *
     * @param other the other statistic
     * @return statistics and degrees of freedom added
     */
    public ChiSquared plus(ChiSquared other) {
        return new ChiSquared(statistic + other.statistic, degreesOfFreedom + other.degreesOfFreedom);
    }

    /**
     * Returns the statistic that is exceeded with a given chance.
     *
     * @param degreesOfFreedom at least 1
     * @param p chance to exceed it, above 0 and below 1
     * @return the critical value, to about 12 digits
     * @throws IllegalArgumentException if an argument is outside its range
     */
    public static double critical(int degreesOfFreedom, double p) {
        if (degreesOfFreedom < 1 || !(p > 0 && p < 1)) {
            throw new IllegalArgumentException(
                    "a critical value needs at least 1 degree of freedom and a chance above 0 and below 1, but was asked for "
                            + degreesOfFreedom + " and " + p);
        }
        if (degreesOfFreedom == 1) {
            double z = NormalDistribution.of(0, 1).inverseSurvivalProbability(p / 2);
            return z * z;
        }
        ChiSquaredDistribution law = ChiSquaredDistribution.of(degreesOfFreedom);
        double low = degreesOfFreedom;
        while (law.survivalProbability(low) < p) {
            low /= 2;
        }
        double high = degreesOfFreedom;
        while (law.survivalProbability(high) > p) {
            high *= 2;
        }
        return new BrentSolver(1e-14, 1e-14, 1e-16).findRoot(x -> law.survivalProbability(x) / p - 1, low, high);
    }
}
