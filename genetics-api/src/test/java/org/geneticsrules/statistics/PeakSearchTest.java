package org.geneticsrules.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/**
 * The search of a peak by parabolas and golden sections (Brent 1973, <i>Algorithms for Minimization without Derivatives</i>, chapter 5, from
 * memory). Each look may cost the chance of a whole pedigree, so how many it takes is part of what is promised: golden sections alone take
 * log(1e-9) / log(0.618) = 43 looks.
 */
class PeakSearchTest {

    private int looks;

    private double search(DoubleUnaryOperator function, double from, double start, double to) {
        looks = 0;
        return PeakSearch.search(
                x -> {
                    looks++;
                    assertTrue(x >= from && x <= to, () -> x + " is outside of " + from + " to " + to);
                    return function.applyAsDouble(x);
                },
                from,
                start,
                to);
    }

    private void finds(DoubleUnaryOperator function, double from, double start, double to, double peak, int most) {
        assertEquals(peak, search(function, from, start, to), 1e-7 * Math.max(1, Math.abs(peak)));
        assertTrue(looks <= most, looks + " looks for the peak at " + peak + ", expected at most " + most);
    }

    @Test
    void a_parabola_is_found_at_once_where_rounding_lets_it() {
        finds(x -> -(x - 0.3) * (x - 0.3), 0, 0.5, 1, 0.3, 6);
        finds(x -> 5 - 7 * (x + 2) * (x + 2), -10, -9, 3, -2, 26);
        finds(x -> -(x - 0.3) * (x - 0.3), 0, 0.3, 1, 0.3, 6);
    }

    /** The log-likelihood of a proportion, which is steep at the ends, where it is minus infinity. */
    @Test
    void likelihoods_of_proportions_take_few_looks() {
        int all = 0;
        for (int successes = 1; successes < 40; successes++) {
            int found = successes;
            double peak = found / 40.0;
            DoubleUnaryOperator log = x -> found * Math.log(x) + (40 - found) * Math.log(1 - x);
            for (double start : new double[] {peak / 2, peak, (1 + peak) / 2}) {
                finds(log, 0, start, 1, peak, 31);
                all += looks;
            }
        }
        assertTrue(all <= 2040, all + " looks for 117 peaks");
    }

    /** No parabola fits a cusp: half of the steps are golden sections, and none is wasted. */
    @Test
    void a_cusp_is_found_by_golden_sections() {
        finds(x -> -Math.abs(x - 0.7), 0, 0.1, 1, 0.7, 34);
        finds(x -> -Math.sqrt(Math.abs(x - 0.2)), 0, 0.9, 1, 0.2, 34);
    }

    /** Of a function that rises all the way the end is the peak, which is come near to and never passed. */
    @Test
    void a_peak_at_an_end_is_come_near_to() {
        finds(x -> x, 0, 0.5, 1, 1, 44);
        finds(x -> -Math.exp(x), -1, 0.5, 1, -1, 44);
    }
}
