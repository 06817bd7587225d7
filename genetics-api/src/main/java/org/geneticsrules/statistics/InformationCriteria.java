package org.geneticsrules.statistics;

import java.util.OptionalDouble;

/**
 * How well a model fits, less a price for each number that was fitted; of models of the same data, less is better.
 *
 * @param logLikelihood natural logarithm of the likelihood at its maximum; minus infinity where the data are impossible
 * @param parameters how many numbers were fitted, 0 or more
 * @param observations how many independent observations there are, at least 1
 */
public record InformationCriteria(double logLikelihood, int parameters, long observations) {

    /**
     * Checks the numbers.
     *
     * @param logLikelihood natural logarithm of the likelihood
     * @param parameters how many numbers were fitted
     * @param observations how many observations there are
     * @throws IllegalArgumentException if one is outside its range
     */
    public InformationCriteria {
        if (Double.isNaN(logLikelihood) || parameters < 0 || observations < 1) {
            throw new IllegalArgumentException(
                    "expected a log-likelihood, 0 or more parameters and 1 or more observations, but found "
                            + logLikelihood + ", " + parameters + " and " + observations);
        }
    }

    /**
     * Returns Akaike's criterion, {@code 2k - 2 ln L} (Akaike 1974, from memory).
     *
     * @return the criterion; infinite where the data are impossible
     */
    public double aic() {
        return 2.0 * parameters - 2 * logLikelihood;
    }

    /**
     * Returns Akaike's criterion corrected for small samples, {@code AIC + 2k(k + 1) / (n - k - 1)} (Hurvich and Tsai 1989, from memory).
     *
     * @return the criterion; empty if there are at most k + 1 observations
     */
    public OptionalDouble aicc() {
        double left = (double) observations - parameters - 1;
        return left > 0
                ? OptionalDouble.of(aic() + 2.0 * parameters * (parameters + 1) / left)
                : OptionalDouble.empty();
    }

    /**
     * Returns Schwarz's criterion, {@code k ln n - 2 ln L} (Schwarz 1978, from memory).
     *
     * @return the criterion; infinite where the data are impossible
     */
    public double bic() {
        return parameters * Math.log((double) observations) - 2 * logLikelihood;
    }
}
