package org.geneticsrules.answer;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Optional;
import org.geneticsrules.probability.Probability;

/** Chances as percentages for people. Stateless and thread-safe. */
public final class Probabilities {

    /** A number this close to a fraction is taken for that fraction, rounded by floating point. */
    private static final double ROUNDING = 1e-12;

    /** Longer fractions are no easier to read than percentages. */
    private static final int MOST_PARTS = 2_000;

    private Probabilities() {}

    /**
     * Returns a chance that was calculated in floating point as people read it.
     *
     * @param chance a chance, from 0 to 1
     * @return a simple fraction with its percentage where the chance is one but for rounding, as in {@code 2/3 (66.67 %)}; else the
     *     percentage, as in {@code 12.35 %}
     * @throws IllegalArgumentException if it is no chance
     */
    public static String words(double chance) {
        Optional<Probability> simple = simple(chance);
        if (simple.isPresent()) {
            Probability fraction = simple.get();
            return fraction.isZero() || fraction.isOne()
                    ? fraction.toString()
                    : fraction + " (" + percent(fraction) + ")";
        }
        return percent(Probability.from(BigDecimal.valueOf(chance)));
    }

    /**
     * Returns the simple fraction that a chance calculated in floating point stands for.
     *
     * @param chance a chance, from 0 to 1
     * @return the fraction of least denominator that is equal to it but for rounding; empty if only long ones are
     * @throws IllegalArgumentException if it is no chance
     */
    public static Optional<Probability> simple(double chance) {
        if (!(chance >= 0 && chance <= 1 + ROUNDING)) {
            throw new IllegalArgumentException("a chance is a number from 0 to 1, but was " + chance);
        }
        for (int parts = 1; parts <= MOST_PARTS; parts++) {
            long times = Math.round(chance * parts);
            boolean same = Math.abs(chance - (double) times / parts) <= ROUNDING * Math.max(chance, ROUNDING);
            if (same && (times > 0 || chance == 0)) {
                return Optional.of(Probability.of(times, parts));
            }
        }
        return Optional.empty();
    }

    /**
     * Returns a chance as a percentage with at most two decimals, never rounded to 0 % or 100 % if it is neither.
     *
     * @param chance a chance
     * @return for example {@code 56.25 %}, {@code < 0.01 %} or {@code > 99.99 %}
     */
    public static String percent(Probability chance) {
        BigDecimal percent = new BigDecimal(chance.numerator().multiply(BigInteger.valueOf(100)))
                .divide(new BigDecimal(chance.denominator()), MathContext.DECIMAL128);
        BigDecimal rounded = percent.setScale(2, RoundingMode.HALF_EVEN).stripTrailingZeros();
        if (!chance.isZero() && rounded.signum() == 0) {
            return "< 0.01 %";
        }
        if (!chance.isOne() && rounded.compareTo(BigDecimal.valueOf(100)) == 0) {
            return "> 99.99 %";
        }
        return rounded.toPlainString() + " %";
    }
}
