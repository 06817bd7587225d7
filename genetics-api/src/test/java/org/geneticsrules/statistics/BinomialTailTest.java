package org.geneticsrules.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Tails of binomials against the sum of their terms. */
class BinomialTailTest {

    private static double summed(int from, int trials, double chance) {
        return IntStream.rangeClosed(from, trials)
                .mapToDouble(x -> {
                    double ways = 1;
                    for (int i = 0; i < x; i++) {
                        ways *= (trials - i) / (i + 1.0);
                    }
                    return ways * Math.pow(chance, x) * Math.pow(1 - chance, trials - x);
                })
                .sum();
    }

    @Test
    void tails_are_sums_of_terms() {
        for (int trials : new int[] {1, 2, 7, 20}) {
            for (int x = 0; x <= trials; x++) {
                for (double chance : new double[] {0, 0.05, 0.25, 0.5, 0.9, 1}) {
                    double over = summed(x, trials, chance);
                    double under = 1 - summed(x + 1, trials, chance);
                    assertEquals(over, BinomialTail.atLeast(x, trials, chance), 1e-12);
                    assertEquals(
                            Math.min(1, 2 * Math.min(over, under)), BinomialTail.twoSided(x, trials, chance), 1e-12);
                }
            }
        }
        assertEquals(Math.pow(0.25, 20), BinomialTail.atLeast(20, 20, 0.25), 1e-24);
    }

    @Test
    void what_is_no_chance_or_no_count_is_refused() {
        assertThrows(IllegalArgumentException.class, () -> BinomialTail.atLeast(3, 2, 0.5));
        assertThrows(IllegalArgumentException.class, () -> BinomialTail.atLeast(1, 2, 1.5));
        assertThrows(IllegalArgumentException.class, () -> BinomialTail.twoSided(1, 2, Double.NaN));
    }
}
