package org.geneticsrules.statistics;

/**
 * Whether a number that a hypothesis states fits the data significantly worse than the number that fits them best.
 *
 * @param statistic twice the difference of the natural log-likelihoods, 0 or more; infinite if the data are impossible under the hypothesis
 * @param degreesOfFreedom how many numbers the hypothesis states that are else estimated, at least 1
 * @param atBoundary whether the one number stated is an end of what the number can be, so that estimates lie on one side of it only
 */
public record LikelihoodRatio(double statistic, int degreesOfFreedom, boolean atBoundary) {

    /**
     * Checks the numbers.
     *
     * @param statistic twice the difference
     * @param degreesOfFreedom how many numbers are stated
     * @param atBoundary whether the one number stated is an end
     * @throws IllegalArgumentException if one is outside its range, or more than one number is stated at a boundary
     */
    public LikelihoodRatio {
        if (!(statistic >= 0) || degreesOfFreedom < 1 || (atBoundary && degreesOfFreedom > 1)) {
            throw new IllegalArgumentException(
                    "expected a statistic of 0 or more with at least 1 degree of freedom, and 1 at a boundary, but found "
                            + statistic + " with " + degreesOfFreedom);
        }
    }

    /**
     * Compares a hypothesis inside the range of the number with the best fit.
     *
     * @param logStated log-likelihood of the number stated
     * @param logBest log-likelihood of the best fit, at least that but for rounding, and finite
     * @return the test, with one degree of freedom
     * @throws IllegalArgumentException if one is not a number or the best is not finite
     */
    public static LikelihoodRatio of(double logStated, double logBest) {
        return new LikelihoodRatio(twice(logStated, logBest), 1, false);
    }

    /**
     * Compares a hypothesis at an end of the range of the number, such as a recombination fraction of 1/2, with the best fit.
     *
     * @param logStated log-likelihood of the number stated
     * @param logBest log-likelihood of the best fit, at least that but for rounding, and finite
     * @return the test, whose p is halved
     * @throws IllegalArgumentException if one is not a number or the best is not finite
     */
    public static LikelihoodRatio atBoundary(double logStated, double logBest) {
        return new LikelihoodRatio(twice(logStated, logBest), 1, true);
    }

    private static double twice(double stated, double best) {
        if (Double.isNaN(stated) || !Double.isFinite(best)) {
            throw new IllegalArgumentException(
                    "expected log-likelihoods of which the best is finite, but found " + stated + " and " + best);
        }
        return Math.max(0, 2 * (best - stated));
    }

    /**
     * Returns the chance of so large a statistic if the hypothesis is right, by the asymptotic distribution.
     *
     * @return the upper tail of chi-squared; at a boundary half of it, or 1 where the statistic is 0, since half of all estimates lie there (Self
     *     and Liang 1987); 0 if the data are impossible under the hypothesis
     */
    public double p() {
        if (statistic == Double.POSITIVE_INFINITY) {
            return 0;
        }
        double tail = new ChiSquared(statistic, degreesOfFreedom).p();
        return !atBoundary ? tail : statistic == 0 ? 1 : tail / 2;
    }
}
