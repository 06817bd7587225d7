package org.geneticsrules.planning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.statistics.Statistics;
import org.geneticsrules.planning.KitsNeeded.Design;
import org.geneticsrules.planning.KitsNeeded.Standing;
import org.geneticsrules.testing.Once;

/** How many kits it takes, held to the list of all sequences of kits. */
@Once
class ReachLaws {

    /** Eighths, so that distributions of two models are often the same. */
    private static final int PARTS = 8;

    /** A drawn mixture: weights and distributions. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    private record Drawn(double[] weights, double[][] chances) {
        Mixture mixture() {
            List<Double> of = new ArrayList<>();
            for (double one : weights) {
                of.add(one);
            }
            return Mixture.of(of, List.of(chances));
        }

        /** The chance of a sequence. */
        double of(int[] sequence) {
            double sum = 0;
            for (int a = 0; a < weights.length; a++) {
                double product = weights[a];
                for (int kit : sequence) {
                    product *= chances[a][kit];
                }
                sum += product;
            }
            return sum;
        }
    }

    private static Drawn draw(SplittableRandom random, int classes) {
        int parts = 1 + random.nextInt(3);
        double[] weights = shares(random, parts, true);
        double[][] chances = new double[parts][];
        for (int a = 0; a < parts; a++) {
            chances[a] = shares(random, classes, false);
        }
        return new Drawn(weights, chances);
    }

    private static double[] shares(SplittableRandom random, int count, boolean positive) {
        double[] shares = new double[count];
        for (int i = 0; i < PARTS; i++) {
            shares[positive && i < count ? i : random.nextInt(count)] += 1.0 / PARTS;
        }
        return shares;
    }

    @Property(tries = 150)
    void chances_are_those_of_all_sequences(@ForAll long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int classes = 2 + random.nextInt(2);
        Drawn one = draw(random, classes);
        Drawn other = draw(random, classes);
        double bar = 1.05 + 3 * random.nextDouble();
        double start = random.nextBoolean() ? 0 : random.nextDouble() - 0.5;
        Reach reach =
                new Reach(List.of(one.mixture(), other.mixture()), new double[] {start, 0}, Math.log(bar), () -> {});
        for (int n = 0; n <= 5; n++) {
            double expected = 0;
            for (int code = 0; code < Math.pow(classes, n); code++) {
                int[] sequence = new int[n];
                int left = code;
                for (int k = 0; k < n; k++) {
                    sequence[k] = left % classes;
                    left /= classes;
                }
                double p = one.of(sequence);
                // a ratio at the bar but for rounding reaches it
                expected += p > 0 && p * Math.exp(start) >= bar * other.of(sequence) * (1 - 1e-9) ? p : 0;
            }
            assertEquals(expected, reach.chances(n)[0][1], 1e-9, "seed " + seed + ", " + n + " kits");
            assertTrue(expected <= reach.atMost(0, 1, n) + 1e-9, "seed " + seed);
        }
        Statistics.collect(reach.limit(0, 1) > 0.99 ? "sure" : reach.limit(0, 1) < 0.01 ? "hopeless" : "between");
        Statistics.coverage(coverage -> {
            coverage.check("sure").count(count -> count > 10);
            coverage.check("between").count(count -> count > 2);
        });
    }

    /** What is said to be never reached is not reached by any number tried here, and what is reached is reached first there. */
    @Property(tries = 150)
    void never_is_never_and_smallest_is_smallest(@ForAll long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Drawn one = draw(random, 2);
        Drawn other = draw(random, 2);
        Reach reach = new Reach(List.of(one.mixture(), other.mixture()), new double[2], Math.log(3), () -> {});
        List<String> met = new ArrayList<>();
        for (KitsNeeded needed : reach.search(Design.COUPLE, 1, 1, List.of(0.5, 0.9))) {
            int most = needed.standing() == Standing.REACHED
                    ? needed.kits().orElseThrow() - 1
                    : needed.standing() == Standing.NEVER ? 80 : 0;
            for (int n = 0; n <= most; n += most > 80 ? 7 : 1) {
                assertTrue(
                        reach.chances(n)[needed.truth()][needed.rival()] < needed.sureness(),
                        "seed " + seed + ": " + needed);
            }
            if (needed.standing() == Standing.REACHED) {
                assertTrue(needed.reached() >= needed.sureness() - 1e-9);
            } else {
                assertTrue(
                        needed.standing() == Standing.NOT_FOUND || needed.limit() < needed.sureness(),
                        "seed " + seed + ": " + needed);
            }
            met.add(needed.standing().words());
        }
        Statistics.label("reached").collect(met.contains("reached"));
        Statistics.label("never").collect(met.contains("never"));
        Statistics.label("reached").coverage(coverage -> coverage.check(true).count(count -> count > 10));
        Statistics.label("never").coverage(coverage -> coverage.check(true).count(count -> count > 10));
    }
}
