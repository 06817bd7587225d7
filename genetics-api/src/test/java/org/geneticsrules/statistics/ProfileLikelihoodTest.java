package org.geneticsrules.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProfileLikelihoodTest {

    private static DoubleUnaryOperator binomial(int successes, int others) {
        return p -> (successes == 0 ? 0 : successes * Math.log(p)) + (others == 0 ? 0 : others * Math.log(1 - p));
    }

    /** Calculated: the estimate is x/n, the curvature there n / (p (1 - p)), and the ends solve their equation. */
    @ParameterizedTest
    @CsvSource({"12, 88", "1, 999999", "50, 50", "499999, 500001", "3, 4", "1, 1"})
    void a_proportion(int successes, int others) {
        DoubleUnaryOperator log = binomial(successes, others);
        ProfileLikelihood found = ProfileLikelihood.of(log, 0, 1);
        double n = successes + others;
        double p = successes / n;
        assertEquals(p, found.maximum().at(), 1e-7 * Math.max(p, 1e-3));
        double error = Math.sqrt(p * (1 - p) / n);
        assertEquals(error, found.maximum().standardError().orElseThrow(), 1e-3 * error);
        Interval interval = found.interval(0.95);
        double limit = log.applyAsDouble(p) - 3.841458820694124 / 2;
        assertEquals(limit, log.applyAsDouble(interval.low()), 1e-5);
        assertEquals(limit, log.applyAsDouble(interval.high()), 1e-5);
        assertTrue(interval.low() < p && p < interval.high());
        assertFalse(interval.lowIsBoundary() || interval.highIsBoundary());
    }

    @Test
    void what_says_nothing_is_told_from_what_says_little() {
        ProfileLikelihood nothing = ProfileLikelihood.of(r -> -7.5, 0, 0.5);
        assertTrue(nothing.isFlat());
        assertEquals(List.of(0.0, 0.5), nothing.plateau());
        ProfileLikelihood little = ProfileLikelihood.of(r -> -7.5 + 1e-4 * r, 0, 0.5);
        assertFalse(little.isFlat());
        assertEquals(List.of(0.5), little.plateau());
        ProfileLikelihood part = ProfileLikelihood.of(r -> -Math.max(0, r - 0.3), 0, 1);
        assertFalse(part.isFlat());
        assertEquals(0, part.plateau().get(0), 1e-12);
        assertEquals(0.3, part.plateau().get(1), 1e-7);
        assertFalse(ProfileLikelihood.of(r -> r == 0 ? Double.NEGATIVE_INFINITY : 0, 0, 1)
                .isFlat());
    }

    /** The limit at the end is 0, and beside it rounding leaves less than a tenth of a billionth of a thousandth. */
    @Test
    void a_top_above_the_end_by_rounding_is_the_end() {
        ProfileLikelihood found = ProfileLikelihood.of(p -> p == 0 ? 0 : 5e-14 - p, 0, 1);
        assertEquals(0, found.maximum().at());
        assertTrue(found.maximum().atLow());
        assertEquals(OptionalDouble.empty(), found.maximum().standardError());
        assertFalse(
                ProfileLikelihood.of(p -> p == 0 ? 0 : 1e-9 - p, 0, 1).maximum().atLow());
    }

    /** Calculated: with none of n, the interval ends where n ln(1 - p) = -q/2. */
    @Test
    void an_estimate_at_the_end_of_the_range() {
        ProfileLikelihood found = ProfileLikelihood.of(binomial(0, 40), 0, 0.5);
        assertEquals(0, found.maximum().at());
        assertTrue(found.maximum().atLow() && found.maximum().isAtBoundary());
        assertEquals(OptionalDouble.empty(), found.maximum().standardError());
        Interval interval = found.interval(0.95);
        assertTrue(interval.lowIsBoundary());
        assertEquals(-Math.expm1(-3.841458820694124 / 2 / 40), interval.high(), 1e-10);
        ProfileLikelihood upper = ProfileLikelihood.of(binomial(30, 10), 0, 0.5);
        assertTrue(upper.maximum().atHigh());
        assertTrue(upper.interval(0.95).highIsBoundary());
    }

    /** Phase unknown, five recombinants of ten: r = 0.3 and the other phase mirror one another about 1/2. */
    @Test
    void several_peaks_are_found_and_the_interval_has_a_gap() {
        DoubleUnaryOperator log =
                r -> Math.log(Math.pow(r, 3) * Math.pow(1 - r, 57) + Math.pow(r, 57) * Math.pow(1 - r, 3));
        ProfileLikelihood found = ProfileLikelihood.of(log, 0, 1);
        assertEquals(2, found.maximum().peaks().size());
        assertEquals(0.05, found.maximum().peaks().get(0), 1e-7);
        assertEquals(0.95, found.maximum().peaks().get(1), 1e-7);
        List<Interval> pieces = found.pieces(0.95);
        assertEquals(2, pieces.size());
        assertEquals(pieces.get(0).low(), found.interval(0.95).low());
        assertEquals(pieces.get(1).high(), found.interval(0.95).high());
        assertEquals(1 - pieces.get(0).low(), pieces.get(1).high(), 1e-8);
    }

    @Test
    void a_second_number_is_maximised_out() {
        // A normal sample of mean 3 and variance 4, n = 10: the profile of the mean is -n/2 ln(4 + (3 - m)^2), up to a
        // constant.
        DoubleUnaryOperator profile = ProfileLikelihood.over(
                (mean, variance) -> -5 * Math.log(variance) - 5 * (4 + (3 - mean) * (3 - mean)) / variance, 0.01, 100);
        ProfileLikelihood found = ProfileLikelihood.of(profile, -5, 10);
        assertEquals(3, found.maximum().at(), 1e-5);
        double expected = 2 * Math.sqrt(Math.expm1(3.841458820694124 / 10));
        assertEquals(3 + expected, found.interval(0.95).high(), 1e-5);
        assertEquals(
                Double.NEGATIVE_INFINITY,
                ProfileLikelihood.over((a, b) -> Double.NEGATIVE_INFINITY, 0, 1).applyAsDouble(1));
    }

    /** One unit of LOD is ln 10; of a proportion with none of n, that is at 1 - 10^(-1/n). */
    @Test
    void a_support_interval() {
        ProfileLikelihood found = ProfileLikelihood.of(binomial(0, 20), 0, 0.5);
        Interval support = found.support(Math.log(10));
        assertEquals(1 - Math.pow(10, -1 / 20.0), support.high(), 1e-10);
        assertEquals(new ChiSquared(2 * Math.log(10), 1).lowerTail(), support.level());
        assertThrows(IllegalArgumentException.class, () -> found.support(0));
    }

    @Test
    void data_that_say_nothing() {
        ProfileLikelihood flat = ProfileLikelihood.of(x -> -3, 0, 0.5);
        assertEquals(1, flat.maximum().peaks().size());
        Interval all = flat.interval(0.95);
        assertTrue(all.lowIsBoundary() && all.highIsBoundary());
        assertEquals(-3, flat.at(0.25));
    }

    @Test
    void data_that_are_impossible_on_a_part_of_the_range() {
        ProfileLikelihood found =
                ProfileLikelihood.of(x -> x < 0.3 ? Double.NEGATIVE_INFINITY : 5 * Math.log(1 - x), 0, 1);
        assertEquals(0.3, found.maximum().at(), 1e-6);
        assertEquals(0.3, found.interval(0.95).low(), 1e-6);
    }

    @Test
    void what_is_no_log_likelihood() {
        assertThrows(IllegalArgumentException.class, () -> ProfileLikelihood.of(x -> Double.NaN, 0, 1));
        assertThrows(IllegalArgumentException.class, () -> ProfileLikelihood.of(x -> -1 / x * 0, 0, 1));
        assertThrows(IllegalArgumentException.class, () -> ProfileLikelihood.of(x -> x, 1, 1));
        assertThrows(IllegalArgumentException.class, () -> ProfileLikelihood.of(x -> x, 0, 1, 1));
        assertThrows(
                IllegalArgumentException.class,
                () -> ProfileLikelihood.of(x -> x, 0, 1).at(2));
        assertThrows(
                IllegalArgumentException.class,
                () -> ProfileLikelihood.of(x -> x, 0, 1).interval(1));
        String said = assertThrows(
                        IllegalArgumentException.class,
                        () -> ProfileLikelihood.of(x -> Double.NEGATIVE_INFINITY, 0, 0.5))
                .getMessage();
        assertTrue(said.contains("impossible at every value from 0.0 to 0.5"), said);
    }
}
