package org.geneticsrules.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.BigInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BinomialIntervalTest {

    /** P(X >= least) of a binomial distribution by its definition, as an exact sum of fractions over one denominator. */
    private static double upperTail(int least, int trials, double chance) {
        BigDecimal p = new BigDecimal(chance);
        BigDecimal q = BigDecimal.ONE.subtract(p);
        BigDecimal sum = BigDecimal.ZERO;
        BigInteger ways = BigInteger.ONE;
        for (int x = 0; x <= trials; x++) {
            if (x >= least) {
                sum = sum.add(new BigDecimal(ways).multiply(p.pow(x)).multiply(q.pow(trials - x)));
            }
            ways = ways.multiply(BigInteger.valueOf(trials - x)).divide(BigInteger.valueOf(x + 1));
        }
        return sum.doubleValue();
    }

    @ParameterizedTest
    @CsvSource({"0, 1, 0.95", "1, 1, 0.95", "1, 40, 0.95", "3, 12, 0.9", "6, 12, 0.99", "30, 31, 0.95", "1, 60, 0.999"})
    void exact_ends_are_where_the_tails_have_their_share(int successes, int trials, double level) {
        Interval found = BinomialInterval.clopperPearson(successes, trials, level);
        double tail = (1 - level) / 2;
        if (successes > 0) {
            assertEquals(tail, upperTail(successes, trials, found.low()), 1e-11 * tail);
        }
        if (successes < trials) {
            assertEquals(1 - tail, upperTail(successes + 1, trials, found.high()), 1e-11);
        }
        assertEquals(successes == 0, found.lowIsBoundary());
        assertEquals(successes == trials, found.highIsBoundary());
        assertEquals(Interval.Method.CLOPPER_PEARSON, found.method());
    }

    /** Calculated: with none of n, the upper end is 1 - tail^(1/n). */
    @Test
    void none_of_many() {
        Interval none = BinomialInterval.clopperPearson(0, 10, 0.95);
        assertEquals(0, none.low());
        assertEquals(1 - Math.pow(0.025, 0.1), none.high(), 1e-13);
        Interval ofMany = BinomialInterval.clopperPearson(1, 1_000_000, 0.95);
        assertEquals(-Math.log1p(-0.025) / 1e6, ofMany.low(), 1e-15); // 1 - 0.975^(1/n)
    }

    /** From memory: Newcombe 1998 (Stat. Med. 17:857), 81 of 263, score interval 0.2553 to 0.3662, exact 0.2527 to 0.3676. */
    @Test
    void a_published_worked_value() {
        Interval wilson = BinomialInterval.wilson(81, 263, 0.95);
        assertEquals(0.2553, wilson.low(), 5e-5);
        assertEquals(0.3662, wilson.high(), 5e-5);
        Interval exact = BinomialInterval.clopperPearson(81, 263, 0.95);
        assertEquals(0.2527, exact.low(), 5e-5);
        assertEquals(0.3676, exact.high(), 5e-5);
    }

    /** By the definition: at both ends (x/n - p)^2 = z^2 p (1 - p) / n. */
    @ParameterizedTest
    @CsvSource({"1, 40", "20, 40", "39, 40", "7, 9"})
    void score_ends_solve_their_equation(int successes, int trials) {
        Interval found = BinomialInterval.wilson(successes, trials, 0.95);
        for (double p : new double[] {found.low(), found.high()}) {
            double off = (double) successes / trials - p;
            assertEquals(ChiSquared.critical(1, 0.05), off * off / (p * (1 - p) / trials), 1e-9);
        }
    }

    @Test
    void no_such_proportion() {
        assertThrows(IllegalArgumentException.class, () -> BinomialInterval.clopperPearson(3, 2, 0.95));
        assertThrows(IllegalArgumentException.class, () -> BinomialInterval.wilson(-1, 2, 0.95));
        assertThrows(IllegalArgumentException.class, () -> BinomialInterval.wilson(0, 0, 0.95));
        String said = assertThrows(IllegalArgumentException.class, () -> BinomialInterval.wilson(1, 2, 95))
                .getMessage();
        assertTrue(said.contains("95"), said);
    }
}
