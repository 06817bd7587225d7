package org.geneticsrules.expression;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * The chances of what an animal expresses at one locus that is independent of all others, as whole numbers such as 3 : 1.
 *
 * <p>Weights are in lowest terms, so that totals of many loci stay small. Immutable and thread-safe.
 */
public final class LocusWeights {

    /** One weight for each expression of the locus. */
    final long[] shares;

    /** The sum of the weights, at least 1. */
    final long total;

    private LocusWeights(long[] shares, long total) {
        this.shares = shares;
        this.total = total;
    }

    /**
     * Returns weights.
     *
     * @param shares the weight of each expression in the order of the locus, at least 0, not all 0, with a sum that fits a long
     * @return the weights in lowest terms
     * @throws IllegalArgumentException if a weight is negative or all are 0
     * @throws ArithmeticException if the sum does not fit a long
     */
    public static LocusWeights of(long... shares) {
        long sum = 0;
        long common = 0;
        for (long share : shares) {
            if (share < 0) {
                throw new IllegalArgumentException(
                        "a weight must not be negative, but found " + Arrays.toString(shares));
            }
            sum = Math.addExact(sum, share);
            common = gcd(common, share);
        }
        if (sum == 0) {
            throw new IllegalArgumentException("at least one weight must be positive, but all are 0");
        }
        long divisor = common;
        return new LocusWeights(
                Arrays.stream(shares).map(share -> share / divisor).toArray(), sum / divisor);
    }

    private static long gcd(long a, long b) {
        return b == 0 ? a : gcd(b, a % b);
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof LocusWeights that && Arrays.equals(shares, that.shares);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(shares);
    }

    /** Returns the weights with colons, {@code 3 : 1}. */
    @Override
    public String toString() {
        return String.join(" : ", Arrays.stream(shares).mapToObj(Long::toString).toList());
    }
}
