package org.geneticsrules.answer.estimated;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import org.geneticsrules.statistics.Interval;

/** Numbers in sentences. */
final class Words {

    private Words() {}

    /** Three decimals, or as many as show two digits, without zeros at the end. */
    static String number(double value) {
        if (Double.isInfinite(value)) {
            return value > 0 ? "infinity" : "-infinity";
        }
        double size = Math.abs(value);
        int decimals = size >= 0.01 || size == 0 ? 3 : size >= 0.001 ? 4 : size >= 0.0001 ? 5 : 6;
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    /** How often intervals of a level hold the truth, for example {@code 19 in 20}. */
    static String level(double level) {
        for (int of : new int[] {2, 3, 4, 5, 10, 20, 100, 1000}) {
            double missed = (1 - level) * of;
            if (Math.abs(missed - 1) < 1e-9) {
                return (of - 1) + " in " + of;
            }
        }
        return percent(level) + " in 100";
    }

    /** A level in hundredths; what is not all of them is not rounded to that. */
    private static String percent(double level) {
        String rounded = number(100 * level);
        return rounded.equals("100")
                ? new BigDecimal(Double.toString(level))
                        .movePointRight(2)
                        .stripTrailingZeros()
                        .toPlainString()
                : rounded;
    }

    static String range(Interval interval) {
        return number(interval.low()) + " to " + number(interval.high());
    }

    static String p(double p) {
        return p == 0 ? "0" : String.format(Locale.ROOT, p < 0.0005 ? "%.1e" : "%.4f", p);
    }

    /** What is known of a number, as a sentence. */
    static String verdict(EstimatedNumber number) {
        String what = capital(number.words());
        if (number.estimate().flat()) {
            return "These records say nothing about " + number.words()
                    + ": they are as likely at every value that it can have.";
        }
        Interval within = number.best();
        String how = level(within.level());
        if (within.low() == within.high()) {
            return what + " is likeliest to be " + number(number.estimate().value())
                    + ", an end of what it can be, but no value of it goes with the records (" + how + ").";
        }
        if (within.lowIsBoundary() && within.highIsBoundary()) {
            return what + " is likeliest to be " + number(number.estimate().value())
                    + ", but the records rule out no value of it (" + how + ").";
        }
        String about = number.estimate().atBoundary()
                ? " is likeliest to be " + number(number.estimate().value()) + ", an end of what it can be, and "
                : " is about " + number(number.estimate().value()) + ", and ";
        return what + about + range(within) + " goes with the records (" + how + ").";
    }

    static String capital(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    static String counted(long number, String one, String many) {
        return number + " " + (number == 1 ? one : many);
    }
}
