package org.geneticsrules.simulation;

import java.util.random.RandomGenerator;

/**
 * Decides by random numbers. Only whole random longs are asked of the generator, because how it makes other numbers of them may differ
 * between JDKs.
 */
final class Chance {

    private final RandomGenerator random;
    private long bits;
    private int left;

    Chance(RandomGenerator random) {
        this.random = random;
    }

    /** A number from 0 to below 1, in steps of 2^-53. */
    private double next() {
        return (random.nextLong() >>> 11) * 0x1.0p-53;
    }

    /** True or false, equally often. */
    boolean coin() {
        if (left == 0) {
            bits = random.nextLong();
            left = Long.SIZE;
        }
        left--;
        boolean one = (bits & 1) == 1;
        bits >>>= 1;
        return one;
    }

    /** What is certain or impossible takes no random number. */
    boolean happens(double chance) {
        return chance >= 1 || (chance > 0 && next() < chance);
    }

    /** A number from 0 to below a bound, equally often. */
    int below(int bound) {
        return (int) (next() * bound);
    }

    /**
     * One of several by their weights; never one whose weight is 0.
     *
     * @param sums the sum of the weights up to each, the last of which is positive
     */
    int among(double[] sums) {
        int last = sums.length - 1;
        double at = next() * sums[last];
        for (int i = 0; i < last; i++) {
            if (at < sums[i]) {
                return i;
            }
        }
        while (last > 0 && sums[last] == sums[last - 1]) {
            last--; // only where a product was rounded up to the sum
        }
        return last;
    }

    /** The sums of weights up to each. */
    static double[] sums(double[] weights) {
        double[] sums = weights.clone();
        for (int i = 1; i < sums.length; i++) {
            sums[i] += sums[i - 1];
        }
        return sums;
    }
}
