package org.geneticsrules.probability;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class DistributionTest {

    private static Distribution<String> coats() {
        Map<String, Long> weights = new LinkedHashMap<>();
        weights.put("black", 9L);
        weights.put("brown", 3L);
        weights.put("none", 4L);
        return Distribution.ofWeights(weights);
    }

    @Test
    void weights_become_chances_in_declared_order() {
        assertEquals("{black=9/16, brown=3/16, none=1/4}", coats().toString());
        assertEquals(List.of("black", "brown", "none"), List.copyOf(coats().outcomes()));
        assertEquals(
                List.of(9L, 3L, 4L),
                coats().ratio().stream().map(BigInteger::longValue).toList());
    }

    @Test
    void order_does_not_count_for_equality() {
        Map<String, BigInteger> weights = new LinkedHashMap<>();
        weights.put("none", BigInteger.valueOf(8));
        weights.put("black", BigInteger.valueOf(18));
        weights.put("brown", BigInteger.valueOf(6));
        assertEquals(coats(), Distribution.ofWeights(weights));
        assertEquals(coats().hashCode(), Distribution.ofWeights(weights).hashCode());
    }

    @Test
    void an_outcome_of_chance_0_is_not_listed() {
        Map<String, Integer> weights = new LinkedHashMap<>();
        weights.put("never", 0);
        weights.put("always", 5);
        assertEquals(Distribution.certain("always"), Distribution.ofWeights(weights));
        assertEquals(
                Distribution.certain("always"),
                Distribution.of(Map.of("never", Probability.ZERO, "always", Probability.ONE)));
        assertEquals(Probability.ZERO, Distribution.certain("always").probability("never"));
    }

    @Test
    void chances_that_do_not_sum_to_1_are_refused_with_their_sum() {
        IllegalArgumentException less = assertThrows(
                IllegalArgumentException.class,
                () -> Distribution.of(Map.of("a", Probability.of(1, 2), "b", Probability.of(1, 3))));
        assertTrue(less.getMessage().contains("5/6"), less.getMessage());
        IllegalArgumentException more = assertThrows(
                IllegalArgumentException.class,
                () -> Distribution.of(Map.of("a", Probability.of(3, 4), "b", Probability.of(1, 2))));
        assertTrue(more.getMessage().contains("5/4"), more.getMessage());
        assertThrows(IllegalArgumentException.class, () -> Distribution.of(Map.of()));
    }

    @Test
    void weights_that_are_negative_or_all_0_are_refused() {
        IllegalArgumentException negative =
                assertThrows(IllegalArgumentException.class, () -> Distribution.ofWeights(Map.of("a", 3, "b", -1)));
        assertTrue(negative.getMessage().contains("b has -1"), negative.getMessage());
        assertThrows(IllegalArgumentException.class, () -> Distribution.ofWeights(Map.of("a", 0)));
        assertThrows(IllegalArgumentException.class, () -> Distribution.ofWeights(Map.of()));
    }

    @Test
    void an_event_that_cannot_happen_conditions_to_nothing() {
        assertEquals(Optional.empty(), coats().given(coat -> coat.equals("blue")));
        assertEquals(
                Optional.of(Distribution.ofWeights(Map.of("black", 3, "brown", 1))),
                coats().given(coat -> !coat.equals("none")));
    }

    /** Calculated exactly: the unaffected sib of an affected animal carries with 2/3, after n unaffected young as listed. */
    @Test
    void carrier_after_unaffected_young_by_an_affected_mate() {
        List<Probability> expected = List.of(
                Probability.of(2, 3),
                Probability.of(1, 2),
                Probability.of(1, 3),
                Probability.of(1, 5),
                Probability.of(1, 9),
                Probability.of(1, 17),
                Probability.of(1, 33));
        Distribution<String> prior = Distribution.ofWeights(Map.of("carrier", 2, "clear", 1));
        for (int n = 0; n < expected.size(); n++) {
            Probability young = Probability.of(1, 2).pow(n);
            Distribution<List<Object>> joint = prior.flatMap(sib -> Distribution.of(
                            sib.equals("carrier")
                                    ? Map.of(true, young, false, young.complement())
                                    : Map.of(true, Probability.ONE))
                    .map(unaffected -> List.<Object>of(sib, unaffected)));
            assertEquals(
                    expected.get(n),
                    joint.given(outcome -> outcome.get(1).equals(true))
                            .orElseThrow()
                            .probabilityOf(outcome -> outcome.get(0).equals("carrier")));
        }
    }

    @Test
    void what_was_given_is_copied_and_what_is_returned_cannot_be_changed() {
        Map<String, Integer> weights = new LinkedHashMap<>(Map.of("a", 1));
        Distribution<String> copy = Distribution.ofWeights(weights);
        weights.put("b", 1);
        assertEquals(Distribution.certain("a"), copy);
        assertThrows(UnsupportedOperationException.class, () -> copy.asMap().put("b", Probability.ONE));
        assertThrows(UnsupportedOperationException.class, () -> copy.ratio().clear());
    }
}
