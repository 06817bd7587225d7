package org.geneticsrules.probability;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ProbabilityTest {

    @Test
    void fractions_are_kept_in_lowest_terms() {
        assertEquals(Probability.of(1, 4), Probability.of(2, 8));
        assertEquals("1/4", Probability.of(2, 8).toString());
        assertSame(Probability.ZERO, Probability.of(0, 7));
        assertSame(Probability.ONE, Probability.of(7, 7));
        assertNotEquals(Probability.of(1, 4), Probability.of(1, 3));
        assertNotEquals(Probability.of(1, 4), "1/4");
    }

    @ParameterizedTest
    @CsvSource({"-1, 4", "5, 4", "1, 0", "0, 0", "1, -4", "-1, -4"})
    void what_is_not_between_0_and_1_is_refused_with_the_operands(long numerator, long denominator) {
        IllegalArgumentException refused =
                assertThrows(IllegalArgumentException.class, () -> Probability.of(numerator, denominator));
        assertTrue(refused.getMessage().endsWith(numerator + "/" + denominator), refused.getMessage());
    }

    @ParameterizedTest
    @CsvSource({
        "3/4, 3/4",
        "' 6 / 8 ', 3/4",
        "0.75, 3/4",
        ".75, 3/4",
        "75 %, 3/4",
        "75%, 3/4",
        "0.1, 1/10",
        "12.5 %, 1/8",
        "0, 0",
        "1, 1",
        "100 %, 1",
        "1.0, 1"
    })
    void a_fraction_a_decimal_and_a_percentage_are_read_exactly(String text, String expected) {
        assertEquals(expected, Probability.parse(text).toString());
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "%", "three quarters", "3/", "/4", "3/4/5", "-0.5", "1e-3", "0,75", "3/4 %", "."})
    void what_is_no_probability_is_refused_with_examples(String text) {
        IllegalArgumentException refused = assertThrows(IllegalArgumentException.class, () -> Probability.parse(text));
        assertTrue(refused.getMessage().contains("3/4, 0.75 or 75 %"), refused.getMessage());
        assertTrue(refused.getMessage().contains("\"" + text + "\""), refused.getMessage());
    }

    @ParameterizedTest
    @ValueSource(strings = {"4/3", "1.01", "101 %", "1/0"})
    void a_number_out_of_range_is_refused(String text) {
        assertThrows(IllegalArgumentException.class, () -> Probability.parse(text));
    }

    @Test
    void a_text_of_very_many_digits_is_refused_before_it_is_worked_on() {
        assertThrows(IllegalArgumentException.class, () -> Probability.parse("1/" + "9".repeat(401)));
        assertEquals(400, Probability.parse("1/" + "9".repeat(400)).toString().length() - 2);
    }

    @Test
    void a_decimal_is_taken_as_written() {
        assertEquals(Probability.of(1, 10), Probability.from(new BigDecimal("0.1")));
        assertEquals(Probability.of(1, 10), Probability.from(new BigDecimal("0.1000")));
        assertEquals(Probability.ONE, Probability.from(new BigDecimal("1E0")));
        assertThrows(IllegalArgumentException.class, () -> Probability.from(new BigDecimal("1E1")));
        assertThrows(IllegalArgumentException.class, () -> Probability.from(new BigDecimal("-0.1")));
    }

    /** Calculated exactly: at least one recessive kit, at 1/4 each. */
    @ParameterizedTest
    @CsvSource({"4, 0.683594", "6, 0.822021", "8, 0.899887"})
    void at_least_one_recessive_kit_of_n(int n, String expected) {
        assertEquals(expected, Probability.of(1, 4).atLeastOnceIn(n).toDecimal(6));
    }

    /**
     * Calculated exactly: chance that a test mating of a carrier misses, at the smallest number of young below 5 %, 1 % and 0.1 %,
     * by a homozygous recessive mate and by a known carrier.
     */
    @ParameterizedTest
    @CsvSource({
        "1/2, 0.05, 5",
        "1/2, 0.01, 7",
        "1/2, 0.001, 10",
        "3/4, 0.05, 11",
        "3/4, 0.01, 17",
        "3/4, 0.001, 25",
        "7/8, 0.05, 23",
        "7/8, 0.01, 35",
        "7/8, 0.001, 52"
    })
    void young_needed_in_a_test_mating(String miss, String alpha, int n) {
        Probability each = Probability.parse(miss);
        assertTrue(each.pow(n).compareTo(Probability.parse(alpha)) <= 0);
        assertTrue(each.pow(n - 1).compareTo(Probability.parse(alpha)) > 0);
    }

    @Test
    void decimals_are_rounded_half_even_and_never_in_exponents() {
        assertEquals("0.1875", Probability.of(3, 16).toDecimal(4));
        assertEquals("0.12", Probability.of(1, 8).toDecimal(2));
        assertEquals("0.38", Probability.of(3, 8).toDecimal(2));
        assertEquals("0", Probability.of(1, 2).toDecimal(0));
        assertEquals("0.0000000000", Probability.of(1, 1L << 50).toDecimal(10));
        assertThrows(IllegalArgumentException.class, () -> Probability.ONE.toDecimal(-1));
        assertThrows(IllegalArgumentException.class, () -> Probability.ONE.toDecimal(1001));
    }

    @Test
    void a_negative_number_of_trials_is_refused() {
        assertThrows(IllegalArgumentException.class, () -> Probability.ONE.pow(-1));
        assertThrows(IllegalArgumentException.class, () -> Probability.ONE.atLeastOnceIn(-1));
    }

    @Test
    void events_that_cannot_exclude_each_other_cannot_be_added() {
        assertThrows(IllegalArgumentException.class, () -> Probability.of(2, 3).plus(Probability.of(1, 2)));
        assertThrows(IllegalArgumentException.class, () -> Probability.of(1, 2).dividedBy(Probability.of(1, 3)));
    }
}
