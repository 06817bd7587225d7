package org.geneticsrules.statistics;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.numbers.rootfinder.BrentSolver;

/** Confidence intervals of the values that an exact test does not reject. Stateless and thread-safe. */
public final class TestInversion {

    private TestInversion() {}

    /**
     * Returns the values at which neither so large nor so small an estimate as the one observed has less than half of (1 - level).
     *
     * <p>Whatever the true value is, either tail rejects it in at most half of (1 - level) of all samples; so the interval covers at least as often as its level says.
     *
     * @param atLeast by value, the chance of an estimate as large as the one observed or larger; continuous, and rising with the value
     * @param atMost by value, the chance of an estimate as small as the one observed or smaller; continuous, and falling
     * @param low the least value that the number can have
     * @param high the greatest
     * @param level confidence level, above 0 and below 1
     * @return the interval
     * @throws IllegalArgumentException if the range is empty or the level is outside its range
     */
    public static Interval of(
            DoubleUnaryOperator atLeast, DoubleUnaryOperator atMost, double low, double high, double level) {
        if (!(low < high)) {
            throw new IllegalArgumentException("expected a range, but found " + low + " to " + high);
        }
        double tail = (1 - Interval.requireLevel(level)) / 2;
        boolean fromLow = atLeast.applyAsDouble(low) >= tail;
        boolean toHigh = atMost.applyAsDouble(high) >= tail;
        double begin = fromLow ? low : atLeast.applyAsDouble(high) < tail ? high : root(atLeast, tail, low, high);
        double end = toHigh ? high : atMost.applyAsDouble(low) < tail ? low : root(atMost, tail, low, high);
        return new Interval(
                Math.min(begin, end), Math.max(begin, end), level, Interval.Method.EXACT_TEST, fromLow, toHigh);
    }

    private static double root(DoubleUnaryOperator chance, double tail, double low, double high) {
        return new BrentSolver(1e-12, 1e-14, 1e-15).findRoot(x -> chance.applyAsDouble(x) / tail - 1, low, high);
    }
}
