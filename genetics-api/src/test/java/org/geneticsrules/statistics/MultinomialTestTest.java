package org.geneticsrules.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.TooLargeException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MultinomialTestTest {

    /** The twin: every order in which animals can fall into classes is gone through, with exact chances. */
    private static final class Twin {
        private final List<Ratio> ratios;
        private final Map<List<Integer>, Probability> outcomes = new HashMap<>();

        Twin(List<Probability> weights, List<Ratio> ratios, int animals) {
            this.ratios = ratios;
            for (int m = 0; m < ratios.size(); m++) {
                place(m, new int[ratios.get(m).size()], animals, weights.get(m));
            }
        }

        private void place(int ratio, int[] counts, int left, Probability chance) {
            if (left == 0) {
                outcomes.merge(Arrays.stream(counts).boxed().toList(), chance, Probability::plus);
                return;
            }
            for (int c = 0; c < counts.length; c++) {
                counts[c]++;
                place(
                        ratio,
                        counts,
                        left - 1,
                        chance.times(ratios.get(ratio).shares().get(c)));
                counts[c]--;
            }
        }

        Probability p(List<Integer> observed) {
            Probability chance = outcomes.get(observed);
            return outcomes.values().stream()
                    .filter(one -> one.compareTo(chance) <= 0)
                    .reduce(Probability.ZERO, Probability::plus);
        }
    }

    @ParameterizedTest
    @CsvSource({"2, 3, 1", "6, 0, 0", "0, 0, 6", "0, 6, 0", "3, 2, 1", "4, 1, 1", "1, 1, 4"})
    void every_order_of_animals_gives_the_same_p(int a, int b, int c) {
        Ratio ratio = Ratio.of(9, 3, 4);
        Ratio other = Ratio.of(1, 2, 1);
        List<Probability> weights = List.of(Probability.of(2, 3), Probability.of(1, 3));
        List<Integer> observed = List.of(a, b, c);
        Probability alone = new Twin(List.of(Probability.ONE), List.of(ratio), 6).p(observed);
        Probability mixed = new Twin(weights, List.of(ratio, other), 6).p(observed);
        Counts counts = Counts.of(a, b, c);
        assertEquals(alone.toDouble(), MultinomialTest.of(ratio).test(counts).p(), 1e-13);
        MultinomialTest.Result found =
                MultinomialTest.mixture(weights, List.of(ratio, other)).test(counts);
        assertEquals(mixed.toDouble(), found.p(), 1e-13);
        assertTrue(found.exact());
        assertEquals(28, found.outcomes());
    }

    /** Ties count: with a 1:1 ratio, 2 of 8 is as far off as 6 of 8. Calculated: 2 (1 + 8 + 28) / 256. */
    @Test
    void outcomes_as_likely_as_the_observed_one_count() {
        assertEquals(
                74 / 256.0,
                MultinomialTest.of(Ratio.of(1, 1)).test(Counts.of(2, 6)).p(),
                1e-14);
        assertEquals(1, MultinomialTest.of(Ratio.of(1, 1)).test(Counts.of(4, 4)).p(), 1e-14);
    }

    @Test
    void what_a_ratio_makes_impossible() {
        MultinomialTest test = MultinomialTest.of(Ratio.of(2, 1, 1, 0));
        MultinomialTest.Result ruledOut = test.test(Counts.of(2, 1, 1, 1));
        assertTrue(ruledOut.isImpossible());
        assertEquals(0, ruledOut.p());
        assertEquals(15, test.outcomes(4));
        assertEquals(
                MultinomialTest.of(Ratio.of(2, 1, 1)).test(Counts.of(1, 2, 1)).p(),
                test.test(Counts.of(1, 2, 1, 0)).p(),
                1e-15);
        // What one parent cannot have, another may.
        List<Probability> half = List.of(Probability.of(1, 2), Probability.of(1, 2));
        MultinomialTest mixture = MultinomialTest.mixture(half, List.of(Ratio.of(1, 0), Ratio.of(3, 1)));
        assertEquals(
                0.5 * Math.pow(0.75, 3), Math.exp(mixture.test(Counts.of(3, 1)).chance()) / 4 / 0.25, 1e-12);
        assertFalse(mixture.test(Counts.of(3, 1)).isImpossible());
        assertEquals(5, mixture.outcomes(4));
    }

    @Test
    void too_many_outcomes_are_refused_or_drawn() {
        MultinomialTest test = MultinomialTest.of(Ratio.of(9, 3, 3, 1)).within(1000);
        Counts counts = Counts.of(20, 9, 8, 3);
        TooLargeException refused = assertThrows(TooLargeException.class, () -> test.test(counts));
        assertEquals(12_341, refused.estimate());
        MultinomialTest.Result drawn = test.sampling(40_000, 7).test(counts);
        double exact = test.within(1e6).test(counts).p();
        assertFalse(drawn.exact());
        assertEquals(40_000, drawn.outcomes());
        assertEquals(exact, drawn.p(), 4 * drawn.standardError());
        assertTrue(drawn.standardError() > 0 && drawn.standardError() < 0.003);
        assertEquals(drawn, test.sampling(40_000, 7).test(counts));
        // p is never 0: the observed outcome is one of those that are possible.
        assertEquals(
                1 / 101.0, test.sampling(100, 1).test(Counts.of(0, 0, 0, 40)).p(), 1e-15);
        assertThrows(IllegalArgumentException.class, () -> test.sampling(0, 1));
    }

    @Test
    void whoever_watches_may_end_it() {
        MultinomialTest test = MultinomialTest.of(Ratio.of(9, 3, 3, 1)).watched(() -> {
            throw new CancellationException("over");
        });
        assertThrows(CancellationException.class, () -> test.test(Counts.of(20, 10, 10, 5)));
    }

    @Test
    void weights_and_ratios_that_do_not_belong_together() {
        List<Probability> half = List.of(Probability.of(1, 2), Probability.of(1, 2));
        assertThrows(IllegalArgumentException.class, () -> MultinomialTest.mixture(half, List.of(Ratio.of(1, 1))));
        assertThrows(
                IllegalArgumentException.class,
                () -> MultinomialTest.mixture(half, List.of(Ratio.of(1, 1), Ratio.of(1, 1, 1))));
        assertThrows(
                IllegalArgumentException.class,
                () -> MultinomialTest.mixture(half.subList(0, 1), List.of(Ratio.of(1, 1))));
        assertThrows(
                IllegalArgumentException.class,
                () -> MultinomialTest.of(Ratio.of(1, 1)).test(Counts.of(1, 1, 1)));
    }
}
