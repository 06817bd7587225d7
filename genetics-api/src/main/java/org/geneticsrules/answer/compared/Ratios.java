package org.geneticsrules.answer.compared;

import java.util.List;
import java.util.Locale;

/** Likelihood ratios, chances and lists in words. */
final class Ratios {

    private static final double LOG_10 = Math.log(10);

    /** More names than these are told by their number. */
    private static final int MOST_NAMES = 5;

    private Ratios() {}

    /**
     * Lists names.
     *
     * @param names what is listed
     * @return all of them, or the first ones and how many more there are
     */
    static String some(List<String> names) {
        return some(names, ", ", " and ");
    }

    /**
     * Lists names.
     *
     * @param names what is listed
     * @param between what stands between two of them
     * @param last what stands before the last one
     * @return all of them, or the first ones and how many more there are
     */
    static String some(List<String> names, String between, String last) {
        int more = names.size() - MOST_NAMES;
        if (more > 1) { // one more is told by its name, which is no longer
            return String.join(between, names.subList(0, MOST_NAMES)) + " and " + more + " more";
        }
        int end = names.size() - 1;
        return end < 1 ? String.join("", names) : String.join(between, names.subList(0, end)) + last + names.get(end);
    }

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
