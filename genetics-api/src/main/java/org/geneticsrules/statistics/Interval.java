package org.geneticsrules.statistics;

/**
 * A confidence interval: the values that the data do not speak against.
 *
 * <p>Of many such intervals from many samples, a share of about the level (at least the level, if the method is exact) hold the true value.
 * A single one holds it or does not.
 *
 * @param low lower end
 * @param high upper end
 * @param level confidence level, above 0 and below 1
 * @param method how it was found
 * @param lowIsBoundary whether the lower end is that of what the number can be at all, and not a limit set by the data
 * @param highIsBoundary whether the upper end is
 */
public record Interval(
        double low, double high, double level, Method method, boolean lowIsBoundary, boolean highIsBoundary) {

    /** How an interval was found. */
    public enum Method {
        /** Exact tails of the binomial distribution: covers at least as often as its level says. */
        CLOPPER_PEARSON("Clopper-Pearson, exact"),
        /** The score interval of a proportion: approximate. */
        WILSON("Wilson, approximate"),
        /** Values whose likelihood is not much below the highest: approximate. */
        PROFILE_LIKELIHOOD("profile likelihood, approximate"),
        /** Values that an exact test does not reject: covers at least as often as its level says. */
        EXACT_TEST("inverted exact test, exact");

        private final String words;

        Method(String words) {
            this.words = words;
        }

        /**
         * Returns the method in words.
         *
         * @return its name, and whether it is exact
         */
        public String words() {
            return words;
        }
    }

    /**
     * Checks the numbers.
     *
     * @param low lower end
     * @param high upper end
     * @param level confidence level
     * @param method how it was found
     * @param lowIsBoundary whether the lower end is a boundary
     * @param highIsBoundary whether the upper end is
     * @throws IllegalArgumentException if the ends are not in order or the level is not above 0 and below 1
     */
    public Interval {
        if (!(low <= high)) {
            throw new IllegalArgumentException("an interval begins before it ends, but was " + low + " to " + high);
        }
        requireLevel(level);
    }

    /**
     * Tells whether a value is inside.
     *
     * @param value any number
     * @return true from the lower to the upper end
     */
    public boolean contains(double value) {
        return low <= value && value <= high;
    }

    static double requireLevel(double level) {
        if (!(level > 0 && level < 1)) {
            throw new IllegalArgumentException(
                    "a confidence level is above 0 and below 1, such as 0.95, but was " + level);
        }
        return level;
    }
}
