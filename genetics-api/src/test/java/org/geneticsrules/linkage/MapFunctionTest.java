package org.geneticsrules.linkage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.probability.Probability;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Distances and fractions. The functions are those of Haldane 1919 (J. Genet. 8:299) and Kosambi 1944 (Ann. Eugen. 12:172), both
 * cited from memory; the values are calculated from their formulas.
 */
class MapFunctionTest {

    /** Calculated: d = -50 ln(1 - 2r) and d = 25 ln((1 + 2r) / (1 - 2r)), to four decimals. */
    @ParameterizedTest
    @CsvSource({
        "HALDANE, 1/10, 11.1572",
        "HALDANE, 1/5, 25.5413",
        "HALDANE, 3/10, 45.8145",
        "KOSAMBI, 1/10, 10.1366",
        "KOSAMBI, 1/5, 21.1824",
        "KOSAMBI, 3/10, 34.6574"
    })
    void distance_of_a_fraction(MapFunction function, String fraction, double distance) {
        assertEquals(distance, function.centiMorgans(Probability.parse(fraction)), 0.00005);
    }

    /** Calculated with fifty digits from r = (1 - exp(-d/50)) / 2 and r = tanh(d/50) / 2, to twelve decimals. */
    @ParameterizedTest
    @CsvSource({
        "HALDANE, 1, 0.009900663347",
        "HALDANE, 10, 0.090634623461",
        "HALDANE, 50, 0.316060279414",
        "HALDANE, 100, 0.432332358382",
        "HALDANE, 0.000001, 0.00000001",
        "KOSAMBI, 1, 0.009998666880",
        "KOSAMBI, 10, 0.098687660112",
        "KOSAMBI, 50, 0.380797077978",
        "KOSAMBI, 100, 0.482013790038",
        "KOSAMBI, 0.000001, 0.00000001"
    })
    void fraction_of_a_distance_has_twelve_decimals(MapFunction function, BigDecimal distance, BigDecimal fraction) {
        assertEquals(Probability.from(fraction), function.fraction(distance));
    }

    @ParameterizedTest
    @EnumSource(MapFunction.class)
    void distances_at_both_ends(MapFunction function) {
        assertEquals(Probability.ZERO, function.fraction(BigDecimal.ZERO));
        assertEquals(Probability.ZERO, function.fraction(new BigDecimal("1e-400")));
        assertEquals(Probability.of(1, 2), function.fraction(new BigDecimal("1e400")));
        assertEquals(0, function.centiMorgans(Probability.ZERO));
        assertEquals(Double.POSITIVE_INFINITY, function.centiMorgans(Probability.of(1, 2)));
    }

    @ParameterizedTest
    @EnumSource(MapFunction.class)
    void what_is_outside_the_range_is_refused_with_the_value(MapFunction function) {
        Probability more = Probability.of(51, 100);
        refused("-0.1", () -> function.fraction(new BigDecimal("-0.1")));
        refused("51/100", () -> function.centiMorgans(more));
        refused("51/100", () -> function.across(more, Probability.ZERO));
        refused("51/100", () -> function.across(Probability.ZERO, more));
    }

    private static void refused(String value, Runnable action) {
        IllegalArgumentException refusal = assertThrows(IllegalArgumentException.class, action::run);
        assertTrue(String.valueOf(refusal.getMessage()).endsWith("but was " + value), refusal.getMessage());
    }

    /** Calculated: r + s - 2rs and (r + s) / (1 + 4rs) for r = 1/10 and s = 1/5. */
    @Test
    void fraction_across_two_intervals() {
        Probability r = Probability.of(1, 10);
        Probability s = Probability.of(1, 5);
        assertEquals(Probability.of(26, 100), MapFunction.HALDANE.across(r, s));
        assertEquals(Probability.of(30, 108), MapFunction.KOSAMBI.across(r, s));
    }

    @Test
    void functions_are_named_by_words() {
        assertEquals(List.of("haldane", "kosambi"), MapFunction.words());
        assertEquals(Optional.of(MapFunction.KOSAMBI), MapFunction.of("kosambi"));
        assertEquals(Optional.empty(), MapFunction.of("Kosambi"));
    }
}
