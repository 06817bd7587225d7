package org.geneticsrules.estimation;

/** Terms of log-likelihoods, in which an event that did not occur says nothing, whatever its chance. */
final class Terms {

    private Terms() {}

    /** {@code count ln(chance)}; 0 if the count is 0, minus infinity if only the chance is. */
    static double log(long count, double chance) {
        return count == 0 ? 0 : count * Math.log(chance);
    }

    /** {@code ln(e^a + e^b)}. */
    static double sum(double a, double b) {
        double greater = Math.max(a, b);
        return greater == Double.NEGATIVE_INFINITY ? greater : greater + Math.log1p(Math.exp(Math.min(a, b) - greater));
    }

    /** {@code ln(n! / k! / (n - k)!)}. */
    static double logChoose(int n, int k) {
        double sum = 0;
        for (int i = 1; i <= k; i++) {
            sum += Math.log((double) (n - k + i) / i);
        }
        return sum;
    }

    /** A recombination fraction that is stated. */
    static double requireFraction(double r) {
        if (!(r >= 0 && r <= 0.5)) {
            throw new IllegalArgumentException("a recombination fraction is from 0 to 1/2, but was " + r);
        }
        return r;
    }

    /** A chance that is stated. */
    static double requireChance(String what, double chance) {
        if (!(chance >= 0 && chance <= 1)) {
            throw new IllegalArgumentException(what + " is from 0 to 1, but was " + chance);
        }
        return chance;
    }
}
