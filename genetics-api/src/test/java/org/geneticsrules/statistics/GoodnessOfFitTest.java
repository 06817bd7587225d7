package org.geneticsrules.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.probability.Probability;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Counts that were published, against the ratios that they were published for. */
class GoodnessOfFitTest {

    private static GoodnessOfFit mendel(long dominant, long recessive) {
        return GoodnessOfFit.of(Counts.of(dominant, recessive), Ratio.of(3, 1));
    }

    private static double statistic(GoodnessOfFit test) {
        return test.chiSquared().orElseThrow().statistic();
    }

    /** Published: Mendel 1866 (Bateson's translation 1902); the statistics are calculated. */
    @ParameterizedTest
    @CsvSource({
        "5474, 1850, 0.26288",
        "6022, 2001, 0.01500",
        "705, 224, 0.39074",
        "882, 299, 0.06351",
        "428, 152, 0.45057",
        "651, 207, 0.34965",
        "787, 277, 0.60652"
    })
    void peas_of_one_character(long dominant, long recessive, double expected) {
        assertEquals(expected, statistic(mendel(dominant, recessive)), 5e-6);
    }

    /** Calculated; Fisher 1936 (Ann. Sci. 1:115, from memory) prints 2.1389. */
    @Test
    void seven_characters_of_peas_together() {
        ChiSquared sum = GoodnessOfFit.sum(List.of(
                mendel(5474, 1850),
                mendel(6022, 2001),
                mendel(705, 224),
                mendel(882, 299),
                mendel(428, 152),
                mendel(651, 207),
                mendel(787, 277)));
        assertEquals(2.13887, sum.statistic(), 5e-6);
        assertEquals(7, sum.degreesOfFreedom());
        assertEquals(0.95176, sum.p(), 5e-6);
        assertEquals(1 - 0.95176, sum.lowerTail(), 5e-6);
        assertEquals(0.60815, mendel(5474, 1850).chiSquared().orElseThrow().p(), 5e-6);
        assertEquals(0.90253, mendel(6022, 2001).chiSquared().orElseThrow().p(), 5e-6);
    }

    /** Published: Mendel 1866. */
    @Test
    void peas_of_two_characters() {
        GoodnessOfFit test = GoodnessOfFit.of(Counts.of(315, 108, 101, 32), Ratio.of(9, 3, 3, 1));
        assertEquals(0.47002, statistic(test), 5e-6);
        assertEquals(0.92543, test.chiSquared().orElseThrow().p(), 5e-6);
        assertEquals(List.of(312.75, 104.25, 104.25, 34.75), test.expected());
        assertEquals(List.of(), test.small());
    }

    /** From memory: Mendel 1866; Fisher 1936 prints 5.1733. The second ratio is that of ten selfed offspring, as Fisher reckoned. */
    @Test
    void peas_whose_offspring_were_grown() {
        long[][] counts = {{372, 193}, {353, 166}, {64, 36}, {71, 29}, {60, 40}, {65, 35}, {67, 33}, {72, 28}};
        List<GoodnessOfFit> tests = new ArrayList<>();
        for (long[] one : counts) {
            tests.add(GoodnessOfFit.of(Counts.of(one), Ratio.of(2, 1)));
        }
        assertEquals(5.17331, GoodnessOfFit.sum(tests).statistic(), 5e-6);
        assertEquals(8, GoodnessOfFit.sum(tests).degreesOfFreedom());
        Probability missed = Probability.of(3, 4).pow(10);
        Probability heterozygous = Probability.of(2, 3).times(missed.complement());
        assertEquals("0.6291", heterozygous.toDecimal(4));
        Ratio seen = new Ratio(List.of(heterozygous, heterozygous.complement()));
        // Six characters were judged by ten selfed offspring each; they fit the wrong ratio better than the right one.
        assertTrue(statistic(GoodnessOfFit.of(Counts.of(399, 201), seen))
                > statistic(GoodnessOfFit.of(Counts.of(399, 201), Ratio.of(2, 1))));
    }

    /**
     * Published: Cuénot, in Morgan 1907 (albino mice). From memory: Castle and Little 1910 (Science 32:868) and Cuénot 1905 (yellow mice, whose
     * homozygotes die).
     */
    @ParameterizedTest
    @CsvSource({
        "198, 72, 3, 1, 0.4000",
        "800, 435, 2, 1, 1.9838",
        "800, 435, 3, 1, 68.8327",
        "263, 100, 2, 1, 5.4669",
        "263, 100, 3, 1, 1.2571"
    })
    void mice(long first, long second, long a, long b, double expected) {
        assertEquals(expected, statistic(GoodnessOfFit.of(Counts.of(first, second), Ratio.of(a, b))), 5e-5);
    }

    /** From memory: Bateson, Saunders and Punnett, sweet peas whose loci are linked. */
    @ParameterizedTest
    @CsvSource({"4831, 390, 393, 1338, 3371.59, 0.005", "284, 21, 21, 55, 134.728, 0.0005"})
    void linked_loci_do_not_fit_independence(long a, long b, long c, long d, double expected, double within) {
        assertEquals(expected, statistic(GoodnessOfFit.of(Counts.of(a, b, c, d), Ratio.of(9, 3, 3, 1))), within);
    }

    /** From memory: Morgan 1910 (Science 32:120). The class that cannot occur adds no degree of freedom. */
    @Test
    void a_class_of_chance_zero() {
        GoodnessOfFit flies = GoodnessOfFit.of(Counts.of(2459, 1011, 782, 0), Ratio.of(2, 1, 1, 0));
        assertEquals(128.98, statistic(flies), 0.005);
        assertEquals(2, flies.degreesOfFreedom());
        assertEquals(List.of(), flies.impossible());
        Map<String, Long> named = new LinkedHashMap<>();
        named.put("red females", 2459L);
        named.put("red males", 1011L);
        named.put("white males", 782L);
        named.put("white females", 1L);
        GoodnessOfFit ruledOut = GoodnessOfFit.of(new Counts(named), Ratio.of(2, 1, 1, 0));
        assertEquals(List.of("white females"), ruledOut.impossible());
        assertEquals(Optional.empty(), ruledOut.chiSquared());
        assertEquals(Optional.empty(), ruledOut.g());
        assertThrows(IllegalArgumentException.class, () -> GoodnessOfFit.sum(List.of(flies, ruledOut)));
    }

    /** Calculated from the definition, 2 sum of o ln(o/e), with a class in which nobody is. */
    @Test
    void g_is_twice_the_log_likelihood_ratio() {
        GoodnessOfFit test = GoodnessOfFit.of(Counts.of(10, 0, 2), Ratio.of(2, 1, 1));
        assertEquals(
                2 * (10 * Math.log(10 / 6.0) + 2 * Math.log(2 / 3.0)),
                test.g().orElseThrow().statistic(),
                1e-12);
        assertEquals(List.of("2", "3"), test.small());
        assertEquals(List.of(), test.verySmall());
        assertEquals(
                List.of("2"),
                GoodnessOfFit.of(Counts.of(10, 0), Ratio.of(11, 1)).verySmall());
    }

    @Test
    void numbers_that_were_estimated_cost_a_degree_of_freedom() {
        Counts counts = Counts.of(10, 5, 2);
        assertEquals(
                1,
                new GoodnessOfFit(counts, Ratio.of(2, 1, 1), 1)
                        .chiSquared()
                        .orElseThrow()
                        .degreesOfFreedom());
        assertEquals(Optional.empty(), new GoodnessOfFit(counts, Ratio.of(2, 1, 1), 2).chiSquared());
        assertEquals(
                Optional.empty(), GoodnessOfFit.of(Counts.of(3), Ratio.of(1)).chiSquared());
        assertThrows(IllegalArgumentException.class, () -> new GoodnessOfFit(counts, Ratio.of(2, 1, 1), -1));
    }

    @Test
    void a_perfect_fit_has_statistic_zero() {
        assertEquals(0, statistic(GoodnessOfFit.of(Counts.of(7, 7, 7), Ratio.of(1, 1, 1))), 1e-15);
        assertEquals(
                1,
                GoodnessOfFit.of(Counts.of(30, 10), Ratio.of(3, 1))
                        .g()
                        .orElseThrow()
                        .p(),
                1e-7);
    }

    @ParameterizedTest
    @CsvSource({"-1, 4, is 0 or more", "0, 0, nothing was counted", "9007199254740992, 1, 2^53"})
    void counts_that_are_none(long a, long b, String expected) {
        String said = assertThrows(IllegalArgumentException.class, () -> Counts.of(a, b))
                .getMessage();
        assertTrue(said.contains(expected), said);
    }

    @Test
    void arguments_that_do_not_belong_together() {
        Counts three = Counts.of(1, 2, 3);
        assertThrows(IllegalArgumentException.class, () -> GoodnessOfFit.of(three, Ratio.of(3, 1)));
        assertThrows(IllegalArgumentException.class, Counts::of);
        assertThrows(IllegalArgumentException.class, () -> Ratio.of(0, 0));
        assertThrows(IllegalArgumentException.class, () -> Ratio.of(3, -1));
        assertThrows(IllegalArgumentException.class, Ratio::of);
        assertThrows(IllegalArgumentException.class, () -> new Ratio(List.of(Probability.of(1, 2))));
        assertThrows(IllegalArgumentException.class, () -> GoodnessOfFit.sum(List.of()));
    }
}
