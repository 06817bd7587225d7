package org.geneticsrules.planning;

/**
 * What a step is expected to say for one model against another, if the first is true.
 *
 * @param truth number of the model that is supposed to be true
 * @param rival number of the other
 * @param expected the mean of the natural logarithm of the likelihood ratio of the first over the other, which is their Kullback-Leibler
 *     divergence: never negative, 0 if and only if no outcome tells them apart, infinite if some outcome excludes the other
 * @param excluding the chance, if the first is true, of an outcome that excludes the other
 * @param finite the part of the mean that comes from outcomes which exclude neither; it may be negative where others exclude
 */
public record ExpectedRatio(int truth, int rival, double expected, double excluding, double finite) {

    /**
     * Checks the numbers.
     *
     * @param truth number of the model that is supposed to be true
     * @param rival number of the other
     * @param expected the mean of the logarithm of the ratio
     * @param excluding the chance of an outcome that excludes the other
     * @param finite the part of the mean that is a number in any case
     * @throws IllegalArgumentException if one of them is no number
     */
    public ExpectedRatio {
        if (Double.isNaN(expected) || Double.isNaN(excluding) || !Double.isFinite(finite)) {
            throw new IllegalArgumentException(
                    "an expected ratio is made of numbers, but was " + expected + ", " + excluding + ", " + finite);
        }
    }
}
