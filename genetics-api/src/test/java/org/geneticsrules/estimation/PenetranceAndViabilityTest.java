package org.geneticsrules.estimation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import org.geneticsrules.estimation.Penetrance.Mating;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.statistics.Counts;
import org.geneticsrules.statistics.GoodnessOfFit;
import org.geneticsrules.statistics.Interval;
import org.geneticsrules.statistics.Ratio;
import org.junit.jupiter.api.Test;

class PenetranceAndViabilityTest {

    private static final Probability HALF = Probability.of(1, 2);
    private static final Probability QUARTER = Probability.of(1, 4);

    /** Calculated: the share, and its exact interval. */
    @Test
    void carriers_that_are_known() {
        Estimate found = Penetrance.ofCarriers(8, 10, 0.95);
        assertEquals(0.8, found.value());
        assertEquals(Math.sqrt(0.016), found.standardError().orElseThrow(), 1e-15);
        assertEquals(Interval.Method.CLOPPER_PEARSON, found.interval().method());
        assertEquals(OptionalDouble.empty(), Penetrance.ofCarriers(10, 10, 0.95).standardError());
    }

    /** Calculated: where all matings are of one kind the estimate is affected / (young m), at most 1. */
    @Test
    void young_of_one_kind_of_mating() {
        assertEquals(
                0.6,
                Penetrance.ofYoung(List.of(new Mating(HALF, 30, 100)))
                        .estimate(0.95)
                        .value(),
                1e-7);
        assertEquals(
                0.8,
                Penetrance.ofYoung(List.of(new Mating(QUARTER, 20, 100)))
                        .estimate(0.95)
                        .value(),
                1e-7);
        Estimate most =
                Penetrance.ofYoung(List.of(new Mating(QUARTER, 30, 100))).estimate(0.95);
        assertEquals(1, most.value());
        assertTrue(most.atBoundary() && most.interval().highIsBoundary());
    }

    /** The twin: the likelihood of several kinds of matings on a grid. */
    @Test
    void young_of_several_kinds_of_matings() {
        Penetrance question = Penetrance.ofYoung(List.of(
                new Mating(HALF, 9, 30),
                new Mating(QUARTER, 5, 24),
                new Mating(Probability.ONE, 7, 10),
                new Mating(Probability.ZERO, 0, 5)));
        double best = 0;
        double top = Double.NEGATIVE_INFINITY;
        for (int i = 1; i < 100_000; i++) {
            double k = i / 100_000.0;
            double log = 9 * Math.log(k / 2)
                    + 21 * Math.log(1 - k / 2)
                    + 5 * Math.log(k / 4)
                    + 19 * Math.log(1 - k / 4)
                    + 7 * Math.log(k)
                    + 3 * Math.log(1 - k);
            if (log > top) {
                top = log;
                best = k;
            }
        }
        assertEquals(best, question.estimate(0.95).value(), 1.1e-5);
        assertEquals(top, question.estimate(0.95).logLikelihood(), 1e-8);
    }

    /**
     * From memory: Castle and Little 1910 (Science 32:868). With 1 : 2 : 1 conceived, the homozygotes among the yellow are not seen: their viability is 0. Cuénot's
     * small sample of 1905 would have it otherwise.
     */
    @Test
    void yellow_mice() {
        List<Probability> homozygotes = List.of(QUARTER, Probability.ZERO);
        RelativeViability large = RelativeViability.of(Counts.of(800, 435), Ratio.of(3, 1), homozygotes);
        assertEquals(0, large.estimate(0.95).value());
        assertTrue(large.estimate(0.95).atBoundary());
        assertEquals(1, large.lethal().p());
        assertTrue(large.equal().p() < 1e-14);
        RelativeViability small = RelativeViability.of(Counts.of(263, 100), Ratio.of(3, 1), homozygotes);
        // (2 + w) / (3 + w) = 263 / 363
        assertEquals((3 * 263 - 2 * 363) / (363.0 - 263), small.estimate(0.95).value(), 1e-6);
        assertTrue(small.equal().p() > 0.2 && small.lethal().p() < 0.02);
    }

    /**
     * From memory: Morgan 1910 (Science 32:120), 2459 red females, 1011 red males, 782 white males of 2 : 1 : 1. White-eyed males live 0.77 as well as red
     * males; but red males too are fewer than half the red females, so that the viability of white eyes alone does not make the ratio fit: males live less well besides.
     */
    @Test
    void white_eyed_flies() {
        RelativeViability males =
                RelativeViability.of(Counts.of(1011, 782), Ratio.of(1, 1), List.of(Probability.ZERO, HALF));
        assertEquals(782 / 1011.0, males.estimate(0.95).value(), 1e-6);
        assertTrue(males.estimate(0.95).interval().high() < 0.86);
        assertTrue(males.equal().p() < 1e-6);
        Counts red = Counts.of(2459, 1011);
        assertEquals(
                27.517,
                GoodnessOfFit.of(red, Ratio.of(2, 1)).chiSquared().orElseThrow().statistic(),
                5e-4);
        RelativeViability redMales =
                RelativeViability.of(red, Ratio.of(2, 1), List.of(Probability.ZERO, Probability.of(1, 3)));
        assertEquals(1011 / 1229.5, redMales.estimate(0.95).value(), 1e-6);
    }

    /** Calculated: of one class against another, ln w has the variance 1/x + 1/y. */
    @Test
    void the_standard_error_of_a_relative_viability() {
        Estimate found = RelativeViability.of(Counts.of(300, 80), Ratio.of(3, 1), List.of(Probability.ZERO, QUARTER))
                .estimate(0.95);
        assertEquals(0.8, found.value(), 1e-6);
        assertEquals(
                0.8 * Math.sqrt(1 / 300.0 + 1 / 80.0), found.standardError().orElseThrow(), 1e-4);
        Estimate none = RelativeViability.of(Counts.of(0, 8), Ratio.of(3, 1), List.of(Probability.ZERO, QUARTER))
                .estimate(0.95);
        assertEquals(Double.POSITIVE_INFINITY, none.value());
        assertEquals(Double.POSITIVE_INFINITY, none.interval().high());
    }

    @Test
    void what_is_refused() {
        assertThrows(IllegalArgumentException.class, () -> new Mating(HALF, 3, 2));
        assertThrows(IllegalArgumentException.class, () -> new Mating(Probability.ZERO, 1, 2));
        assertThrows(
                IllegalArgumentException.class, () -> Penetrance.ofYoung(List.of(new Mating(Probability.ZERO, 0, 2))));
        assertThrows(
                IllegalArgumentException.class,
                () -> Penetrance.ofYoung(List.of(new Mating(HALF, 1, 2))).logLikelihood(1.1));
        Counts counts = Counts.of(3, 1);
        Ratio ratio = Ratio.of(3, 1);
        assertThrows(IllegalArgumentException.class, () -> RelativeViability.of(counts, ratio, List.of(HALF)));
        assertThrows(
                IllegalArgumentException.class,
                () -> RelativeViability.of(counts, ratio, List.of(Probability.ZERO, HALF)));
        assertThrows(IllegalArgumentException.class, () -> RelativeViability.of(counts, ratio, ratio.shares()));
        assertThrows(
                IllegalArgumentException.class,
                () -> RelativeViability.of(counts, ratio, List.of(Probability.ZERO, Probability.ZERO)));
        assertThrows(
                IllegalArgumentException.class,
                () -> RelativeViability.of(counts, Ratio.of(1, 0), List.of(HALF, Probability.ZERO)));
    }
}
