package org.geneticsrules.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.TooLargeException;
import org.junit.jupiter.api.Test;

/** Where ranges begin and end: what is just allowed, what is just refused, and how often whoever watches is asked. */
class LimitsTest {

    private static final DoubleUnaryOperator HILL = x -> -(x - 0.25) * (x - 0.25) * 1e4;

    @Test
    void an_interval_holds_both_its_ends() {
        Interval interval = new Interval(0.2, 0.4, 0.95, Interval.Method.WILSON, false, false);
        for (double in : new double[] {0.2, 0.3, 0.4}) {
            assertTrue(interval.contains(in));
        }
        for (double out : new double[] {0.19, 0.41, Double.NaN}) {
            assertFalse(interval.contains(out));
        }
        assertTrue(new Interval(0.2, 0.2, 0.95, Interval.Method.WILSON, false, false).contains(0.2));
        assertThrows(
                IllegalArgumentException.class,
                () -> new Interval(0.4, 0.2, 0.95, Interval.Method.WILSON, false, false));
        for (double level : new double[] {0, 1, Double.NaN}) {
            assertThrows(
                    IllegalArgumentException.class,
                    () -> new Interval(0.2, 0.4, level, Interval.Method.WILSON, false, false));
        }
        assertEquals("inverted exact test, exact", Interval.Method.EXACT_TEST.words());
    }

    @Test
    void counts_sum_to_no_more_than_doubles_hold() {
        long most = 1L << 53;
        assertEquals(most, new Counts(ImmutableMap.of("a", most - 1, "b", 1L)).total());
        assertThrows(IllegalArgumentException.class, () -> new Counts(ImmutableMap.of("a", most - 1, "b", 2L)));
        assertEquals(1, new Counts(ImmutableMap.of("a", 0L, "b", 1L)).total());
        String none = assertThrows(IllegalArgumentException.class, () -> Ratio.of(0, 0))
                .getMessage();
        assertTrue(none.contains("not all 0"), none);
        assertEquals(List.of(Probability.ZERO, Probability.ONE), Ratio.of(0, 2).shares());
    }

    @Test
    void a_likelihood_may_be_asked_at_both_ends_and_not_beyond() {
        ProfileLikelihood likelihood = ProfileLikelihood.of(HILL, 0, 1, 2);
        assertEquals(-625, likelihood.at(0), 1e-9);
        assertEquals(-5625, likelihood.at(1), 1e-9);
        assertThrows(IllegalArgumentException.class, () -> likelihood.at(-1e-9));
        assertThrows(IllegalArgumentException.class, () -> likelihood.at(1 + 1e-9));
        assertThrows(IllegalArgumentException.class, () -> ProfileLikelihood.of(HILL, 0, 1, 1));
        assertThrows(IllegalArgumentException.class, () -> ProfileLikelihood.of(HILL, 1, 1, 2));
        assertThrows(IllegalArgumentException.class, () -> ProfileLikelihood.of(HILL, 0, Double.POSITIVE_INFINITY, 2));
        assertThrows(
                IllegalArgumentException.class,
                () -> ProfileLikelihood.of(HILL, -Double.MAX_VALUE, Double.MAX_VALUE, 2)); // as wide as infinity
        assertThrows(IllegalArgumentException.class, () -> likelihood.support(0));
        assertTrue(likelihood.support(1e-6).contains(0.25));
    }

    @Test
    void a_maximum_says_at_which_end_it_is() {
        ProfileLikelihood.Maximum inside = ProfileLikelihood.of(HILL, 0, 1).maximum();
        assertEquals(0.25, inside.at(), 1e-9);
        assertFalse(inside.isAtBoundary());
        ProfileLikelihood.Maximum low = ProfileLikelihood.of(HILL, 0.5, 1).maximum();
        assertTrue(low.isAtBoundary() && low.atLow() && !low.atHigh());
        ProfileLikelihood.Maximum high = ProfileLikelihood.of(HILL, 0, 0.2).maximum();
        assertTrue(high.isAtBoundary() && high.atHigh() && !high.atLow());
        assertEquals(0.2, high.at());
        // 1 / sqrt(2 10^4), also where the maximum is near an end
        assertEquals(Math.sqrt(0.5) / 100, inside.standardError().orElseThrow(), 1e-8);
        assertEquals(
                Math.sqrt(0.5) / 100,
                ProfileLikelihood.of(HILL, 0.2499, 1).maximum().standardError().orElseThrow(),
                1e-6);
    }

    /** Of a range that says nothing below a quarter and falls from there, the end is told and not a point of the plain. */
    @Test
    void a_top_that_is_flat_at_an_end_is_that_end() {
        DoubleUnaryOperator plain = x -> x <= 0.25 ? 0 : -(x - 0.25) * 100;
        assertEquals(0, ProfileLikelihood.of(plain, 0, 1).maximum().at());
        assertEquals(
                1,
                ProfileLikelihood.of(x -> plain.applyAsDouble(1 - x), 0, 1)
                        .maximum()
                        .at());
    }

    @Test
    void proportions_at_the_ends_and_levels_near_nothing() {
        assertThrows(IllegalArgumentException.class, () -> BinomialInterval.clopperPearson(5, 4, 0.95));
        assertThrows(IllegalArgumentException.class, () -> BinomialInterval.clopperPearson(0, 0, 0.95));
        for (double level : new double[] {1e-4, 0.5, 0.95, 1 - 1e-9}) {
            double tail = (1 - level) / 2;
            assertEquals(
                    Math.cbrt(tail),
                    BinomialInterval.clopperPearson(3, 3, level).low(),
                    1e-12);
            assertEquals(
                    1 - Math.cbrt(tail),
                    BinomialInterval.clopperPearson(0, 3, level).high(),
                    1e-12);
        }
        for (int of : new int[] {0, 3, 5}) {
            Interval wilson = BinomialInterval.wilson(of, 5, 0.95);
            assertEquals(of == 0, wilson.low() == 0);
            assertEquals(of == 5, wilson.high() == 1);
            assertEquals(of == 0, wilson.lowIsBoundary());
            assertEquals(of == 5, wilson.highIsBoundary());
        }
    }

    /** An expectation of exactly 5, or exactly 1, is not below it. */
    @Test
    void small_expectations_are_below_their_limits() {
        assertEquals(
                List.of(), GoodnessOfFit.of(Counts.of(16, 4), Ratio.of(3, 1)).small());
        assertEquals(
                List.of("2"), GoodnessOfFit.of(Counts.of(16, 3), Ratio.of(3, 1)).small());
        assertEquals(
                List.of(), GoodnessOfFit.of(Counts.of(3, 1), Ratio.of(3, 1)).verySmall());
        assertEquals(
                List.of("2"), GoodnessOfFit.of(Counts.of(3, 0), Ratio.of(3, 1)).verySmall());
    }

    /** 100 animals of three classes have 5151 outcomes. */
    @Test
    void outcomes_up_to_the_limit_are_listed() {
        MultinomialTest test = MultinomialTest.of(Ratio.of(1, 1, 1));
        Counts counts = Counts.of(40, 30, 30);
        assertTrue(test.within(5151).test(counts).exact());
        assertThrows(TooLargeException.class, () -> test.within(5150).test(counts));
        assertFalse(test.within(5150).sampling(1, 7).test(counts).exact());
        assertThrows(IllegalArgumentException.class, () -> test.sampling(0, 7));
        // a mixture of which neither part allows the third class
        MultinomialTest.Result never = MultinomialTest.mixture(
                        List.of(Probability.of(1, 2), Probability.of(1, 2)),
                        List.of(Ratio.of(1, 1, 0), Ratio.of(1, 2, 0)))
                .test(Counts.of(1, 1, 1));
        assertTrue(never.isImpossible());
        assertEquals(0, never.p());
    }

    @Test
    void whoever_watches_is_asked_now_and_then() {
        int[] asked = new int[1];
        MultinomialTest watched = MultinomialTest.of(Ratio.of(1, 1, 1)).watched(() -> asked[0]++);
        Counts counts = Counts.of(40, 30, 30);
        watched.test(counts);
        assertEquals(1, asked[0]); // of 5151 outcomes the 4096th
        asked[0] = 0;
        watched.within(1).sampling(640, 7).test(counts);
        assertEquals(10, asked[0]);
    }
}
