package org.geneticsrules.probability;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Sums that may exceed 1, ratios in lowest terms, decimals at the ends of their range, and equality. */
class SumsAndRatiosTest {

    @Test
    void a_total_is_told_even_where_it_is_no_chance() {
        Probability half = Probability.of(1, 2);
        assertEquals("0", Probability.total(List.of()));
        assertEquals("1/2", Probability.total(List.of(half)));
        assertEquals("1", Probability.total(List.of(half, half)));
        assertEquals("5/4", Probability.total(List.of(half, Probability.of(3, 4))));
        assertEquals("3", Probability.total(List.of(half, half, Probability.ONE, Probability.ONE)));
    }

    @Test
    void a_ratio_has_no_common_divisor() {
        Map<String, Probability> chances = new LinkedHashMap<>();
        chances.put("a", Probability.of(1, 2));
        chances.put("b", Probability.of(1, 6));
        chances.put("c", Probability.of(1, 3));
        assertEquals(
                List.of(BigInteger.valueOf(3), BigInteger.ONE, BigInteger.TWO),
                Distribution.of(chances).ratio());
        assertEquals(List.of(BigInteger.ONE), Distribution.certain("a").ratio());
    }

    @Test
    void distributions_are_equal_if_all_their_chances_are() {
        Distribution<String> even = Distribution.ofWeights(Map.of("a", 1, "b", 1));
        assertEquals(even, Distribution.ofWeights(Map.of("b", 2, "a", 2)));
        assertEquals(
                even.hashCode(), Distribution.ofWeights(Map.of("b", 2, "a", 2)).hashCode());
        assertNotEquals(even, Distribution.ofWeights(Map.of("a", 1, "b", 2)));
        assertNotEquals(even, Distribution.certain("a"));
        assertNotEquals("a", Distribution.certain("a"));
    }

    @Test
    void shared_outcomes_need_one_weight_each() {
        Outcomes<String> outcomes = Outcomes.of(List.of("a", "b"));
        assertEquals("[a, b]", outcomes.toString());
        assertThrows(
                IllegalArgumentException.class,
                () -> Distribution.ofWeights(outcomes, new BigInteger[] {BigInteger.ONE}));
        assertThrows(IllegalArgumentException.class, () -> Distribution.ofWeights(outcomes, new long[] {1, 2, 3}));
    }

    @Test
    void decimals_may_have_no_digit_and_a_thousand_but_no_more() {
        assertEquals("1", Probability.of(3, 4).toDecimal(0));
        assertEquals(1002, Probability.of(1, 3).toDecimal(1000).length());
        assertThrows(IllegalArgumentException.class, () -> Probability.ONE.toDecimal(-1));
        assertThrows(IllegalArgumentException.class, () -> Probability.ONE.toDecimal(1001));
    }

    @Test
    void decimals_are_read_exactly_whatever_their_scale() {
        assertEquals(Probability.ONE, Probability.from(new BigDecimal("1")));
        assertEquals(Probability.ONE, Probability.from(new BigDecimal("1.000")));
        assertEquals(Probability.of(1, 10), Probability.from(new BigDecimal("0.10")));
        assertEquals(Probability.ZERO, Probability.from(new BigDecimal("0E+3")));
    }
}
