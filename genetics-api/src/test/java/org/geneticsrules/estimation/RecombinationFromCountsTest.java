package org.geneticsrules.estimation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.geneticsrules.estimation.IntercrossLinkage.Phase;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.statistics.Counts;
import org.geneticsrules.statistics.Interval;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Recombination fractions of published counts, and of a listing of gametes. */
class RecombinationFromCountsTest {

    private static IntercrossLinkage intercross(Phase phase, long... counts) {
        return new IntercrossLinkage(Counts.of(counts), phase);
    }

    /** Published: Fisher and Balmukand 1928 (J. Genet. 20:79), Fisher 1958: starchy and base leaf of maize. */
    @Test
    void maize_in_repulsion() {
        IntercrossLinkage maize = intercross(Phase.REPULSION, 1997, 906, 904, 32);
        Estimate found = maize.estimate(0.95);
        assertEquals(0.188977, found.value(), 5e-7);
        assertEquals(0.035712, found.value() * found.value(), 5e-7);
        assertEquals(0.015447, found.standardError().orElseThrow(), 1.1e-6);
        double ofT = 2 * found.value() * found.standardError().orElseThrow(); // t is the square of r
        assertEquals(0.005838, ofT, 5e-7);
        assertEquals(0.188800, maize.productRatio().orElseThrow(), 5e-7);
        assertFalse(found.atBoundary());
        assertTrue(found.interval().contains(0.188977));
        assertTrue(maize.linkage().p() < 1e-10);
    }

    /** From memory: Bateson, Saunders and Punnett, two counts of sweet peas. */
    @Test
    void sweet_peas_in_coupling() {
        IntercrossLinkage large = intercross(Phase.COUPLING, 4831, 390, 393, 1338);
        assertEquals(0.120052, large.estimate(0.95).value(), 5e-7);
        assertEquals(0.004204, large.estimate(0.95).standardError().orElseThrow(), 5e-7);
        assertEquals(3371.59, large.independence().chiSquared().orElseThrow().statistic(), 5e-3);
        IntercrossLinkage small = intercross(Phase.COUPLING, 284, 21, 21, 55);
        assertEquals(0.128043, small.estimate(0.95).value(), 5e-7);
        assertEquals(0.129819, small.productRatio().orElseThrow(), 5e-7);
    }

    /** The twin: gametes of both parents are listed, and each of the 16 unions gets its class. */
    private static double listed(Phase phase, double r, int... counts) {
        double parental = (1 - r) / 2;
        double recombinant = r / 2;
        double coupled = phase == Phase.COUPLING ? parental : recombinant;
        double repelled = phase == Phase.COUPLING ? recombinant : parental;
        double[] gametes = {coupled, repelled, repelled, coupled}; // AB, Ab, aB, ab
        double[] classes = new double[4];
        for (int egg = 0; egg < 4; egg++) {
            for (int sperm = 0; sperm < 4; sperm++) {
                classes[egg & sperm] +=
                        gametes[egg] * gametes[sperm]; // a recessive shows where both have it: 2 is a, 1 is b
            }
        }
        double log = 0;
        for (int c = 0; c < 4; c++) {
            log += counts[c] == 0 ? 0 : counts[c] * Math.log(classes[c]);
        }
        return log;
    }

    @ParameterizedTest
    @CsvSource({
        "COUPLING, 66, 8, 9, 17",
        "REPULSION, 50, 24, 23, 3",
        "REPULSION, 50, 24, 23, 0",
        "COUPLING, 30, 0, 0, 10",
        "COUPLING, 30, 12, 14, 0",
        "REPULSION, 10, 1, 1, 10",
        "COUPLING, 0, 5, 5, 1"
    })
    void the_closed_form_is_the_top_of_a_listing(Phase phase, int a, int b, int c, int d) {
        IntercrossLinkage question = intercross(phase, a, b, c, d);
        DoubleUnaryOperator twin = r -> listed(phase, r, a, b, c, d);
        double best = 0;
        for (int i = 0; i <= 100_000; i++) {
            double r = 0.5 * i / 100_000;
            assertEquals(
                    twin.applyAsDouble(r), i % 997 == 0 ? question.logLikelihood(r) : twin.applyAsDouble(r), 1e-10);
            best = twin.applyAsDouble(r) > twin.applyAsDouble(best) ? r : best;
        }
        assertEquals(best, question.estimate(0.95).value(), 6e-6);
    }

    /**
     * From memory: Rao 1973; Dempster, Laird and Rubin 1977. Their EM sequence for 125, 18, 20, 34 leads to the root that the quadratic gives at once; here t is
     * (1 - r)^2.
     */
    @Test
    void counting_genes_again_and_again_leads_to_the_closed_form() {
        double[] printed = {0.608247423, 0.624321050, 0.626488879};
        double t = 0.5;
        for (int i = 0; i < 60; i++) {
            double hidden = 125 * t / (2 + t);
            t = (hidden + 34) / (hidden + 34 + 18 + 20);
            if (i < printed.length) {
                assertEquals(printed[i], t, 1e-9);
            }
        }
        assertEquals(0.6268214979, t, 5e-11);
        double r = intercross(Phase.COUPLING, 125, 18, 20, 34).estimate(0.95).value();
        assertEquals(t, (1 - r) * (1 - r), 1e-14);
    }

    @Test
    void estimates_at_the_ends() {
        Estimate none = intercross(Phase.REPULSION, 50, 25, 25, 0).estimate(0.95);
        assertEquals(0, none.value());
        assertTrue(none.atBoundary() && none.interval().lowIsBoundary());
        assertEquals(OptionalDouble.empty(), none.standardError());
        assertTrue(none.notes().get(0).contains("least value"), none.notes().get(0));
        Estimate complete = intercross(Phase.COUPLING, 30, 0, 0, 10).estimate(0.95);
        assertEquals(0, complete.value());
        Estimate free = intercross(Phase.COUPLING, 30, 20, 20, 1).estimate(0.95);
        assertEquals(0.5, free.value());
        assertTrue(free.interval().highIsBoundary());
        assertEquals(1, intercross(Phase.COUPLING, 30, 20, 20, 1).linkage().p());
        assertEquals(
                OptionalDouble.empty(), intercross(Phase.COUPLING, 3, 0, 1, 0).productRatio());
        assertEquals(0, intercross(Phase.REPULSION, 3, 1, 1, 0).productRatio().orElseThrow());
        assertEquals(0, intercross(Phase.COUPLING, 3, 0, 1, 1).productRatio().orElseThrow());
    }

    /** How often it holds the truth is counted in {@link CoverageTest}. */
    @Test
    void an_exact_interval_of_an_intercross() {
        IntercrossLinkage cross = intercross(Phase.COUPLING, 27, 2, 1, 8);
        Estimate exact = cross.exact(0.95);
        assertEquals(cross.estimate(0.95).value(), exact.value());
        assertTrue(exact.interval().contains(exact.value()));
        assertTrue(exact.interval().low() < cross.estimate(0.95).interval().low());
        assertEquals(Interval.Method.EXACT_TEST, exact.interval().method());
        // With no recombinant of n, the chance that none is found is that of n young in the outer classes: ((1 +
        // t)/2)^n.
        double high =
                intercross(Phase.COUPLING, 30, 0, 0, 10).exact(0.95).interval().high();
        assertEquals(0.025, Math.pow((1 + (1 - high) * (1 - high)) / 2, 40), 1e-9);
        TooLargeException refused = assertThrows(
                TooLargeException.class,
                () -> intercross(Phase.COUPLING, 4831, 390, 393, 1338).exact(0.95));
        assertTrue(refused.getMessage().contains("ask for the profile interval"), refused.getMessage());
    }

    @Test
    void a_test_cross() {
        TestCross cross = new TestCross(12, 100);
        assertEquals(0.12, cross.exact(0.95).value());
        assertEquals(
                Math.sqrt(0.12 * 0.88 / 100), cross.exact(0.95).standardError().orElseThrow(), 1e-15);
        assertTrue(cross.exact(0.95).interval().low()
                < cross.profile(0.95).interval().low());
        assertTrue(cross.exact(0.95).interval().high()
                > cross.profile(0.95).interval().high());
        Estimate mistaken = new TestCross(40, 41).exact(0.95);
        assertEquals(0.5, mistaken.value());
        assertEquals(0.5, mistaken.interval().low());
        assertTrue(mistaken.notes().stream().anyMatch(note -> note.contains("more recombinants")));
    }

    /** Published, textbook (Griffiths et al.): v, ct and cv of Drosophila. The coincidence is printed as 8/12. */
    @Test
    void three_loci() {
        ThreePointCross flies = new ThreePointCross(580 + 592, 89 + 94, 45 + 40, 3 + 5);
        assertEquals(1448, flies.young());
        assertEquals(191, flies.firstInterval().recombinants());
        assertEquals(93, flies.secondInterval().recombinants());
        assertEquals(268, flies.outer().recombinants());
        assertEquals(0.652142, flies.coincidence().orElseThrow(), 5e-7);
        assertEquals(1 - 0.652142, flies.interference().orElseThrow(), 5e-7);
        assertFalse(flies.isOrderDoubtful());
        assertTrue(new ThreePointCross(100, 5, 9, 5).isOrderDoubtful());
        assertEquals(OptionalDouble.empty(), new ThreePointCross(10, 0, 0, 0).coincidence());
        assertEquals("1/181", flies.doubles().toString());
    }

    @Test
    void what_is_no_cross() {
        assertThrows(IllegalArgumentException.class, () -> intercross(Phase.COUPLING, 1, 2, 3));
        assertThrows(
                IllegalArgumentException.class,
                () -> intercross(Phase.COUPLING, 9, 3, 3, 1).logLikelihood(0.6));
        assertThrows(IllegalArgumentException.class, () -> new TestCross(5, 4));
        assertThrows(IllegalArgumentException.class, () -> new TestCross(0, 0));
        assertThrows(IllegalArgumentException.class, () -> new TestCross(1, 4).logLikelihood(-0.1));
        assertThrows(IllegalArgumentException.class, () -> new ThreePointCross(0, 0, 0, 0));
        assertThrows(IllegalArgumentException.class, () -> new ThreePointCross(5, -1, 0, 0));
    }
}
