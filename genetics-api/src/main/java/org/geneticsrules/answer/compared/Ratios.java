package org.geneticsrules.answer.compared;

import java.util.Locale;

/** Likelihood ratios and chances in words. */
final class Ratios {

    private static final double LOG_10 = Math.log(10);

    private Ratios() {}

    /**
     * Says a ratio.
     *
     * @param log its natural logarithm, not negative
     * @return for example {@code 34 : 1} or {@code about 3 x 10^12 : 1}
     */
    static String of(double log) {
        double ratio = Math.exp(log);
        if (log == Double.POSITIVE_INFINITY) {
            return "beyond any ratio";
        } else if (ratio < 10) {
            return String.format(Locale.ROOT, "%.2f : 1", ratio);
        } else if (ratio < 1000) {
            return String.format(Locale.ROOT, "%.1f : 1", Math.floor(ratio * 10) / 10); // never up to a bar
        } else if (ratio < 1e6) {
            return String.format(Locale.ROOT, "%.0f : 1", Math.floor(ratio));
        }
        double power = Math.floor(log / LOG_10);
        return String.format(
                Locale.ROOT, "about %.0f x 10^%.0f : 1", Math.floor(Math.exp(log - power * LOG_10)), power);
    }

    /**
     * Says a chance.
     *
     * @param chance from 0 to 1
     * @return two digits that count
     */
    static String chance(double chance) {
        if (chance == 0 || chance >= 0.9995) {
            return chance == 0 ? "0" : String.format(Locale.ROOT, "%.2f", chance);
        } else if (chance < 0.0001) {
            return String.format(Locale.ROOT, "%.1e", chance);
        }
        int places = Math.max(2, (int) Math.ceil(-Math.log10(chance)) + 1);
        return String.format(Locale.ROOT, "%." + places + "f", chance);
    }
}
