package org.geneticsrules.statistics;

import java.util.function.DoubleUnaryOperator;

/** Brent's search for the top of a function with one peak in an interval (Brent 1973, Algorithms for Minimization without Derivatives, chapter 5). */
final class PeakSearch {

    /** The share of an interval at which the golden section divides it. */
    private static final double GOLDEN = (3 - Math.sqrt(5)) / 2;

    /** A top is flat, so half the digits of a double are all that can be told apart. */
    private static final double RELATIVE = 1e-9;

    private static final int MOST_STEPS = 100;

    private PeakSearch() {}

    /**
     * Returns where the top is.
     *
     * @param function may be minus infinity, except at the start
     * @param from begin of the interval
     * @param start a point at which the function is no lower than at both ends
     * @param to its end
     */
    static double search(DoubleUnaryOperator function, double from, double start, double to) {
        double a = from;
        double b = to;
        double x = start;
        double fx = function.applyAsDouble(x);
        double second = x;
        double fSecond = fx;
        double third = x;
        double fThird = fx;
        double step = 0;
        double before = 0;
        for (int i = 0; i < MOST_STEPS; i++) {
            double middle = (a + b) / 2;
            double tolerance = RELATIVE * Math.abs(x) + 1e-12 * (to - from);
            if (Math.abs(x - middle) <= 2 * tolerance - (b - a) / 2) {
                break;
            }
            // A parabola through the three best points; not a number where one of them is minus infinity.
            double r = (x - second) * (fx - fThird);
            double q = (x - third) * (fx - fSecond);
            double p = (x - third) * q - (x - second) * r;
            double down = 2 * (q - r);
            double parabola = -p / down;
            boolean good = Double.isFinite(parabola)
                    && Math.abs(parabola) < Math.abs(before / 2)
                    && x + parabola > a
                    && x + parabola < b;
            if (good) {
                before = step;
                step = parabola;
                if (x + step - a < 2 * tolerance || b - x - step < 2 * tolerance) {
                    step = Math.copySign(tolerance, middle - x);
                }
            } else {
                before = (x < middle ? b : a) - x;
                step = GOLDEN * before;
            }
            double u = x + (Math.abs(step) >= tolerance ? step : Math.copySign(tolerance, step));
            double fu = function.applyAsDouble(u);
            if (fu >= fx) {
                if (u < x) {
                    b = x;
                } else {
                    a = x;
                }
                third = second;
                fThird = fSecond;
                second = x;
                fSecond = fx;
                x = u;
                fx = fu;
            } else {
                if (u < x) {
                    a = u;
                } else {
                    b = u;
                }
                if (fu >= fSecond || second == x) {
                    third = second;
                    fThird = fSecond;
                    second = u;
                    fSecond = fu;
                } else if (fu >= fThird || third == x || third == second) {
                    third = u;
                    fThird = fu;
                }
            }
        }
        return x;
    }
}
