package org.geneticsrules.answer;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import org.geneticsrules.probability.Probability;

/** Chances as percentages for people. Stateless and thread-safe. */
public final class Probabilities {

    private Probabilities() {}

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
