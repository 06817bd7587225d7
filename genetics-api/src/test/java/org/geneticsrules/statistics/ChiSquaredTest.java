package org.geneticsrules.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChiSquaredTest {

    /** Published: NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.7.4. */
    @ParameterizedTest
    @CsvSource({
        "1, 3.841, 6.635",
        "2, 5.991, 9.210",
        "3, 7.815, 11.345",
        "4, 9.488, 13.277",
        "5, 11.070, 15.086",
        "8, 15.507, 20.090",
        "10, 18.307, 23.209"
    })
    void critical_values(int degrees, double atFive, double atOne) {
        assertEquals(atFive, ChiSquared.critical(degrees, 0.05), 5.1e-4);
        assertEquals(atOne, ChiSquared.critical(degrees, 0.01), 5.1e-4);
        assertEquals(0.05, new ChiSquared(ChiSquared.critical(degrees, 0.05), degrees).p(), 1e-12);
    }

    /** Calculated: with two degrees of freedom the upper tail is exp(-x / 2). */
    @ParameterizedTest
    @CsvSource({"0", "0.1", "3", "60"})
    void two_degrees_of_freedom_are_an_exponential(double x) {
        assertEquals(Math.exp(-x / 2), new ChiSquared(x, 2).p(), 1e-14 * Math.exp(-x / 2) + 1e-300);
        assertEquals(-Math.expm1(-x / 2), new ChiSquared(x, 2).lowerTail(), 1e-15);
    }

    @ParameterizedTest
    @CsvSource({"0.999999", "0.5", "1e-10"})
    void critical_values_in_the_tails(double p) {
        assertEquals(-2 * Math.log(p), ChiSquared.critical(2, p), 1e-9);
    }

    @Test
    void sums_of_independent_statistics() {
        assertEquals(new ChiSquared(5, 4), new ChiSquared(2, 1).plus(new ChiSquared(3, 3)));
    }

    @Test
    void no_such_statistic() {
        assertThrows(IllegalArgumentException.class, () -> new ChiSquared(-0.1, 1));
        assertThrows(IllegalArgumentException.class, () -> new ChiSquared(Double.NaN, 1));
        assertThrows(IllegalArgumentException.class, () -> new ChiSquared(1, 0));
        assertThrows(IllegalArgumentException.class, () -> ChiSquared.critical(0, 0.05));
        assertThrows(IllegalArgumentException.class, () -> ChiSquared.critical(1, 1));
    }
}
