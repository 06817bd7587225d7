package org.geneticsrules.simulation;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;
import org.geneticsrules.probability.Probability;

/**
 * Counts of what was drawn, held to exact chances. What is impossible must never be drawn. A share of n draws is within d of its chance with
 * all but a chance of 2 exp(-n D), where D is the divergence of the two (Chernoff 1952; Hoeffding 1963, from memory); {@value #MOST} for n D
 * leaves less than 1e-19 for each share, so that a million of them fail together less than once in ten million million runs.
 */
final class Shares<T> {

    private static final double MOST = 45;

    private final Map<T, Long> counts = new LinkedHashMap<>();
    private long all;

    void add(T one) {
        counts.merge(one, 1L, Long::sum);
        all++;
    }

    long of(T one) {
        return counts.getOrDefault(one, 0L);
    }

    void agreeWith(Map<T, Probability> exact, Supplier<String> what) {
        counts.keySet()
                .forEach(one -> assertTrue(
                        exact.containsKey(one) && !exact.get(one).isZero(),
                        () -> "impossible, but drawn: " + one + " of " + what.get()));
        exact.forEach((one, chance) -> {
            double divergence = divergence(of(one), chance.toDouble());
            assertTrue(
                    divergence < MOST,
                    () -> one + " has the chance " + chance + ", but was drawn " + of(one) + " times of " + all + ": "
                            + what.get());
        });
    }

    /** n D of a count from its chance. */
    private double divergence(long count, double chance) {
        double share = (double) count / all;
        double yes = count == 0 ? 0 : share * Math.log(share / chance);
        double no = count == all ? 0 : (1 - share) * Math.log((1 - share) / (1 - chance));
        return all * (yes + no);
    }
}
