package org.geneticsrules.render;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.geneticsrules.answer.Probabilities;
import org.geneticsrules.probability.Probability;

/** Chances as people read them. Stateless and thread-safe. */
final class Numbers {

    /** Longer fractions tell a reader nothing; the exact one is in the document form. */
    private static final int LONGEST_FRACTION = 25;

    private static final int MOST_LISTED = 4;

    private Numbers() {}

    /** The fraction, or its percentage where it is too long to read. */
    static String exact(Probability chance) {
        String text = chance.toString();
        return text.length() <= LONGEST_FRACTION ? text : "about " + Probabilities.percent(chance);
    }

    static String percent(Probability chance) {
        return Probabilities.percent(chance);
    }

    static String both(Probability chance) {
        return chance.toString().length() <= LONGEST_FRACTION
                ? chance + " (" + percent(chance) + ")"
                : "about " + percent(chance);
    }

    /** As in "about one time in ten", or empty where that says no more than the number. */
    static String oneIn(Probability chance) {
        if (chance.isZero() || chance.compareTo(chance.complement()) > 0) {
            return "";
        }
        BigInteger times = new BigDecimal(chance.denominator())
                .divide(new BigDecimal(chance.numerator()), 0, RoundingMode.HALF_EVEN)
                .toBigInteger();
        return "about one time in " + times;
    }

    static String decimal(double number) {
        return String.format(Locale.ROOT, "%.2f", number);
    }

    /** All of a few values in ascending order, or the least and the greatest of many. */
    static String range(Collection<Probability> chances) {
        List<Probability> sorted = chances.stream().sorted().toList();
        if (sorted.isEmpty()) {
            return "not listed";
        }
        return sorted.size() <= MOST_LISTED
                ? sorted.stream().map(Numbers::exact).collect(Collectors.joining(" or "))
                : exact(sorted.get(0)) + " to " + exact(sorted.get(sorted.size() - 1)) + ", " + sorted.size()
                        + " values";
    }
}
