package org.geneticsrules.probability;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import org.junit.jupiter.api.Test;

/** Distributions over shared outcomes are the same values as those that list their own. */
class OutcomesTest {

    private static final Outcomes<String> HUES = Outcomes.of(List.of("black", "blue", "brown", "none seen"));

    /** The ratio of recessive epistasis, 9 : 3 : 4, with one hue that cannot occur. */
    private static final Distribution<String> YOUNG = Distribution.ofWeights(HUES, new long[] {9, 0, 3, 4});

    @Test
    void weights_over_shared_outcomes_equal_the_same_chances_listed() {
        Distribution<String> listed = Distribution.ofWeights(Map.of("black", 9, "brown", 3, "none seen", 4));
        assertEquals(listed, YOUNG);
        assertEquals(YOUNG, listed);
        assertEquals(listed.hashCode(), YOUNG.hashCode());
        assertEquals("{black=9/16, brown=3/16, none seen=1/4}", YOUNG.toString());
    }

    @Test
    void outcomes_of_weight_0_are_not_in_the_support() {
        assertEquals(List.of("black", "brown", "none seen"), new ArrayList<>(YOUNG.outcomes()));
        assertEquals(3, YOUNG.asMap().size());
        assertFalse(YOUNG.asMap().containsKey("blue"));
        assertEquals(Probability.ZERO, YOUNG.probability("blue"));
        assertEquals(Probability.ZERO, YOUNG.probability("green"));
        assertEquals(Probability.of(1, 4), YOUNG.probability("none seen"));
    }

    @Test
    void the_map_cannot_be_changed() {
        assertThrows(UnsupportedOperationException.class, () -> YOUNG.asMap().put("black", Probability.ONE));
        assertThrows(UnsupportedOperationException.class, () -> YOUNG.asMap().remove("black"));
        assertThrows(UnsupportedOperationException.class, () -> YOUNG.outcomes().clear());
    }

    @Test
    void reading_past_the_end_is_refused() {
        var walk = Distribution.ofWeights(HUES, new long[] {0, 1, 0, 0})
                .asMap()
                .entrySet()
                .iterator();
        assertEquals(Map.entry("blue", Probability.ONE), walk.next());
        assertThrows(NoSuchElementException.class, walk::next);
    }

    @Test
    void later_changes_of_the_array_change_nothing() {
        long[] weights = {1, 1, 1, 1};
        Distribution<String> even = Distribution.ofWeights(HUES, weights);
        weights[0] = 7;
        assertEquals(Probability.of(1, 4), even.probability("black"));
    }

    @Test
    void weights_beyond_a_long_stay_exact() {
        BigInteger huge = BigInteger.TWO.pow(100);
        Distribution<String> rare =
                Distribution.ofWeights(HUES, new BigInteger[] {BigInteger.ONE, BigInteger.ZERO, huge, huge});
        assertEquals(
                Probability.of(BigInteger.ONE, huge.multiply(BigInteger.TWO).add(BigInteger.ONE)),
                rare.probability("black"));
        assertEquals(3, rare.outcomes().size());
        assertTrue(rare.probabilityOf(hue -> true).isOne());
        assertEquals(YOUNG, Distribution.ofWeights(HUES, new BigInteger[] {
            huge.multiply(BigInteger.valueOf(9)),
            BigInteger.ZERO,
            huge.multiply(BigInteger.valueOf(3)),
            huge.multiply(BigInteger.valueOf(4))
        }));
    }

    @Test
    void wrong_weights_are_refused() {
        assertThrows(IllegalArgumentException.class, () -> Distribution.ofWeights(HUES, new long[] {1, 2}));
        assertThrows(IllegalArgumentException.class, () -> Distribution.ofWeights(HUES, new long[4]));
        assertThrows(IllegalArgumentException.class, () -> Distribution.ofWeights(HUES, new long[] {1, -1, 1, 1}));
        assertThrows(
                ArithmeticException.class,
                () -> Distribution.ofWeights(HUES, new long[] {Long.MAX_VALUE, 1, Long.MAX_VALUE, 3}));
        BigInteger[] zeros = {BigInteger.ZERO, BigInteger.ZERO, BigInteger.ZERO, BigInteger.ZERO};
        assertThrows(IllegalArgumentException.class, () -> Distribution.ofWeights(HUES, zeros));
        zeros[2] = BigInteger.ONE.negate();
        assertThrows(IllegalArgumentException.class, () -> Distribution.ofWeights(HUES, zeros));
    }

    @Test
    void the_same_outcome_twice_is_refused() {
        assertThrows(IllegalArgumentException.class, () -> Outcomes.of(List.of("black", "black")));
    }
}
