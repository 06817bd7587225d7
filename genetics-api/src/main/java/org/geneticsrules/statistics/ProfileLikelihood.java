package org.geneticsrules.statistics;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.DoubleBinaryOperator;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.numbers.rootfinder.BrentSolver;

/**
 * The log-likelihood of one number over all that it can be: where it is highest, and which values lie not much below.
 *
 * <pre>{@code
 * ProfileLikelihood found = ProfileLikelihood.of(r -> 12 * Math.log(r) + 88 * Math.log(1 - r), 0, 0.5);
 * found.maximum().at();        // 0.12
 * found.interval(0.95);        // 0.0664 to 0.1921
 * }</pre>
 *
 * <p>The function may have several peaks, and may be minus infinity where the data are impossible. Peaks narrower than a step of the grid
 * are found where they rise above what surrounds them at a point of the grid, and where they lie beside its highest point.
 *
 * <p>Immutable and thread-safe if the function is.
 */
public final class ProfileLikelihood {

    /** Steps of the grid unless stated otherwise. */
    public static final int USUAL_STEPS = 40;

    /** Steps between two points of the grid by which the two outermost are divided further, where peaks tend to be narrow. */
    private static final double[] NEAR_ENDS = {1e-6, 1e-5, 1e-4, 1e-3, 1e-2, 0.1};

    /** A top that is no more than this above an end of the range beside it is that end: sums over many data are rounded in their last digits. */
    private static final double TIE = 1e-12;

    private final DoubleUnaryOperator function;
    private final double low;
    private final double high;

    /** Log-likelihoods by value: the points of the grid, and the tops of peaks. */
    private final TreeMap<Double, Double> points = new TreeMap<>();

    private final Maximum maximum;

    private ProfileLikelihood(DoubleUnaryOperator function, double low, double high, int steps) {
        this.function = function;
        this.low = low;
        this.high = high;
        for (int i = 0; i <= steps; i++) {
            look(i == steps ? high : low + (high - low) * i / steps);
        }
        double step = (high - low) / steps;
        for (double part : NEAR_ENDS) {
            look(low + part * step);
            look(high - part * step);
        }
        this.maximum = climb();
    }

    /**
     * Looks at a log-likelihood with the usual number of steps.
     *
     * @param logLikelihood the natural logarithm of the likelihood by value; minus infinity where the data are impossible, never NaN
     * @param low the least value that the number can have
     * @param high the greatest
     * @return the log-likelihood, looked at
     * @throws IllegalArgumentException if the range is empty, the function is not a number or plus infinity somewhere, or the data are
     *     impossible everywhere
     */
    public static ProfileLikelihood of(DoubleUnaryOperator logLikelihood, double low, double high) {
        return of(logLikelihood, low, high, USUAL_STEPS);
    }

    /**
     * Looks at a log-likelihood.
     *
     * @param logLikelihood the natural logarithm of the likelihood by value; minus infinity where the data are impossible, never NaN
     * @param low the least value that the number can have
     * @param high the greatest
     * @param steps steps of the grid, at least 2; the function is called some fifty times more
     * @return the log-likelihood, looked at
     * @throws IllegalArgumentException if the range or the grid is empty, the function is not a number or plus infinity somewhere, or the data are
     *     impossible everywhere
     */
    public static ProfileLikelihood of(DoubleUnaryOperator logLikelihood, double low, double high, int steps) {
        if (!(low < high) || !Double.isFinite(high - low) || steps < 2) {
            throw new IllegalArgumentException("expected a range and at least 2 steps, but found " + low + " to " + high
                    + " in " + steps + " steps");
        }
        return new ProfileLikelihood(logLikelihood, low, high, steps);
    }

    /**
     * Maximises the second number of a log-likelihood out, which gives the profile of the first.
     *
     * @param logLikelihood the log-likelihood of two numbers
     * @param low the least value of the second number
     * @param high its greatest value
     * @return by value of the first number, the highest log-likelihood over the second; minus infinity where the data are impossible
     */
    public static DoubleUnaryOperator over(DoubleBinaryOperator logLikelihood, double low, double high) {
        return first -> {
            try {
                return of(second -> logLikelihood.applyAsDouble(first, second), low, high).maximum.logLikelihood;
            } catch (ImpossibleException impossible) {
                return Double.NEGATIVE_INFINITY;
            }
        };
    }

    /**
     * Where a log-likelihood is highest.
     *
     * @param at the value, to about 8 digits
     * @param logLikelihood its log-likelihood
     * @param atLow whether it is the least value that the number can have
     * @param atHigh whether it is the greatest
     * @param peaks the tops of all peaks that were found, in ascending order; more than one if the data leave several explanations
     * @param standardError 1 / sqrt(observed information), the curvature at the top; empty at the ends of the range and where
     *     the top is flat
     */
    public record Maximum(
            double at,
            double logLikelihood,
            boolean atLow,
            boolean atHigh,
            List<Double> peaks,
            OptionalDouble standardError) {
        /**
         * Copies the peaks.
         *
         * @param at the value
         * @param logLikelihood its log-likelihood
         * @param atLow whether it is the least value
         * @param atHigh whether it is the greatest
         * @param peaks the tops of all peaks
         * @param standardError from the curvature
         */
        public Maximum {
            peaks = ImmutableList.copyOf(peaks);
        }

        /**
         * Tells whether the highest value is an end of the range, where there is no standard error.
         *
         * @return true at either end
         */
        public boolean isAtBoundary() {
            return atLow || atHigh;
        }
    }

    /**
     * Returns the highest point.
     *
     * @return the first of the highest, if several are equal
     */
    public Maximum maximum() {
        return maximum;
    }

    /**
     * Tells whether the data say nothing of the number: they are as likely at every value that was looked at.
     *
     * @return true if no two log-likelihoods differ by more than rounding; the highest point is then any of them
     */
    public boolean isFlat() {
        return points.values().stream().allMatch(this::isHighest);
    }

    private boolean isHighest(double logLikelihood) {
        return maximum.logLikelihood - logLikelihood <= 1e-9 * (1 + Math.abs(maximum.logLikelihood));
    }

    /**
     * Returns the values that make the data as likely as the highest point does, from the least to the greatest that was looked at.
     *
     * @return the highest point alone where there is one; more where the data cannot tell some values apart
     */
    public List<Double> plateau() {
        double from = maximum.at;
        double to = maximum.at;
        for (Map.Entry<Double, Double> point : points.entrySet()) {
            if (isHighest(point.getValue())) {
                from = Math.min(from, point.getKey());
                to = Math.max(to, point.getKey());
            }
        }
        return to - from <= 1e-3 * (high - low) ? ImmutableList.of(maximum.at) : ImmutableList.of(from, to);
    }

    /**
     * Returns the log-likelihood of a value.
     *
     * @param value a value of the range
     * @return the natural logarithm; minus infinity where the data are impossible
     * @throws IllegalArgumentException if the value is outside the range
     */
    public double at(double value) {
        if (!(value >= low && value <= high)) {
            throw new IllegalArgumentException("expected a value from " + low + " to " + high + ", but found " + value);
        }
        return value(value);
    }

    /**
     * Returns the values whose log-likelihood is at most half a quantile of chi-squared below the highest.
     *
     * @param level confidence level, above 0 and below 1
     * @return from the least such value to the greatest; if there are several peaks, {@link #pieces} tells what lies between
     * @throws IllegalArgumentException if the level is outside its range
     */
    public Interval interval(double level) {
        List<Interval> pieces = pieces(level);
        Interval first = pieces.get(0);
        Interval last = pieces.get(pieces.size() - 1);
        return new Interval(
                first.low(), last.high(), level, first.method(), first.lowIsBoundary(), last.highIsBoundary());
    }

    /**
     * Returns the same set of values as {@link #interval}, without gaps in which the log-likelihood is lower.
     *
     * @param level confidence level, above 0 and below 1
     * @return at least one interval, in ascending order
     * @throws IllegalArgumentException if the level is outside its range
     */
    public List<Interval> pieces(double level) {
        double drop = ChiSquared.critical(1, 1 - Interval.requireLevel(level)) / 2;
        return within(drop, level);
    }

    /**
     * Returns the values whose log-likelihood is at most a given amount below the highest, such as ln 10 for a support interval of one unit of LOD.
     *
     * @param drop natural logarithm of how much less likely they make the data, above 0
     * @return from the least such value to the greatest, with the level that it has approximately
     * @throws IllegalArgumentException if the drop is not above 0
     */
    public Interval support(double drop) {
        if (!(drop > 0)) {
            throw new IllegalArgumentException("expected a drop above 0, but found " + drop);
        }
        List<Interval> pieces = within(drop, new ChiSquared(2 * drop, 1).lowerTail());
        Interval last = pieces.get(pieces.size() - 1);
        Interval first = pieces.get(0);
        return new Interval(
                first.low(), last.high(), first.level(), first.method(), first.lowIsBoundary(), last.highIsBoundary());
    }

    private List<Interval> within(double drop, double level) {
        // Relative likelihoods are from 0 to 1 where logarithms may be infinite, which no root finder likes.
        DoubleUnaryOperator above = x -> Math.exp(value(x) - maximum.logLikelihood) - Math.exp(-drop);
        List<Interval> pieces = new ArrayList<>();
        double begin = Double.NaN;
        double before = low;
        boolean wasIn = false;
        for (Map.Entry<Double, Double> point : points.entrySet()) {
            double x = point.getKey();
            boolean in = point.getValue() - maximum.logLikelihood >= -drop;
            if (in && !wasIn) {
                begin = x == low ? low : root(above, before, x);
            } else if (!in && wasIn) {
                pieces.add(piece(begin, root(above, before, x), level));
            }
            wasIn = in;
            before = x;
        }
        if (wasIn) {
            pieces.add(piece(begin, high, level));
        }
        return ImmutableList.copyOf(pieces);
    }

    private Interval piece(double begin, double end, double level) {
        return new Interval(begin, end, level, Interval.Method.PROFILE_LIKELIHOOD, begin == low, end == high);
    }

    private static double root(DoubleUnaryOperator above, double from, double to) {
        double atFrom = above.applyAsDouble(from);
        double atTo = above.applyAsDouble(to);
        if (Math.signum(atFrom)
                == Math.signum(atTo)) { // a point whose likelihood is the limit itself, but for rounding
            return Math.abs(atFrom) < Math.abs(atTo) ? from : to;
        }
        return new BrentSolver(1e-12, 1e-12, 1e-15).findRoot(above, from, to);
    }

    private double look(double x) {
        return points.computeIfAbsent(x, this::value);
    }

    private double value(double x) {
        double found = function.applyAsDouble(x);
        if (Double.isNaN(found) || found == Double.POSITIVE_INFINITY) {
            throw new IllegalArgumentException(
                    "a log-likelihood is a number or minus infinity, but at " + x + " it was " + found);
        }
        return found;
    }

    /** Refines every peak of the grid. */
    private Maximum climb() {
        List<Double> grid = new ArrayList<>(points.keySet());
        if (points.values().stream().allMatch(one -> one == Double.NEGATIVE_INFINITY)) {
            throw new ImpossibleException(low, high);
        }
        List<Double> tops = new ArrayList<>();
        for (int i = 0; i < grid.size(); i++) {
            double here = look(grid.get(i));
            boolean rises = i == 0 || look(grid.get(i - 1)) < here;
            int after = i;
            while (after + 1 < grid.size() && look(grid.get(after + 1)) == here) { // a plateau is one peak
                after++;
            }
            boolean falls = after == grid.size() - 1 || look(grid.get(after + 1)) < here;
            if (rises && falls && here > Double.NEGATIVE_INFINITY) {
                tops.add(
                        top(grid.get(Math.max(0, i - 1)), grid.get(i), grid.get(Math.min(grid.size() - 1, after + 1))));
            }
        }
        double best = tops.get(0);
        for (double top : tops) {
            if (look(top) > look(best)) {
                best = top;
            }
        }
        return new Maximum(best, look(best), best == low, best == high, tops, standardError(best));
    }

    /** The top between two neighbours of a point of the grid, which is an end of the range only if nothing beside it is higher. */
    private double top(double from, double start, double to) {
        double found = PeakSearch.search(this::value, from, start, to);
        double best = look(found) > look(start) ? found : start;
        double tie = look(best) - TIE * (1 + Math.abs(look(best)));
        if (from == low && look(low) >= tie) {
            return low;
        }
        return to == high && look(high) >= tie ? high : best;
    }

    /** From the second derivative by five points, whose distance is fitted to the width of the peak. */
    private OptionalDouble standardError(double at) {
        double room = 0.45 * Math.min(at - low, high - at); // two steps to either side stay inside
        if (room <= 0) {
            return OptionalDouble.empty();
        }
        double step = Math.min(room, 1e-3 * (high - low));
        double error = Double.NaN;
        for (int i = 0; i < 3; i++) {
            double curvature = (-value(at + 2 * step)
                            + 16 * value(at + step)
                            - 30 * value(at)
                            + 16 * value(at - step)
                            - value(at - 2 * step))
                    / (12 * step * step);
            if (!(curvature < 0) || !Double.isFinite(curvature)) {
                return OptionalDouble.empty();
            }
            error = 1 / Math.sqrt(-curvature);
            step = Math.min(room, 0.05 * error);
        }
        return OptionalDouble.of(error);
    }

    /** The data are impossible, whatever the number is. */
    private static final class ImpossibleException extends IllegalArgumentException {
        private static final long serialVersionUID = 1L;

        ImpossibleException(double low, double high) {
            super("the data are impossible at every value from " + low + " to " + high);
        }
    }
}
