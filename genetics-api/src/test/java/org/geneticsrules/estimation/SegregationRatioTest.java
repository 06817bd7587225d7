package org.geneticsrules.estimation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.geneticsrules.probability.Probability;
import org.junit.jupiter.api.Test;

class SegregationRatioTest {

    /** Published: Crow's cystic fibrosis sibships, in Lange, Table 2.3: siblings, affected, probands, families. */
    private static final int[][] CROW = {
        {10, 3, 1, 1}, {9, 3, 1, 1}, {8, 4, 1, 1}, {7, 3, 2, 1}, {7, 3, 1, 1}, {7, 2, 1, 1}, {7, 1, 1, 1}, {6, 2, 1, 1},
        {6, 1, 1, 1}, {5, 3, 3, 1}, {5, 3, 2, 1}, {5, 2, 1, 5}, {5, 1, 1, 2}, {4, 3, 2, 1}, {4, 3, 1, 2}, {4, 2, 1, 4},
        {4, 1, 1, 6}, {3, 2, 2, 3}, {3, 2, 1, 3}, {3, 1, 1, 10}, {2, 2, 2, 2}, {2, 2, 1, 4}, {2, 1, 1, 18}, {1, 1, 1, 9}
    };

    private static List<Sibship> crow() {
        List<Sibship> families = new ArrayList<>();
        for (int[] row : CROW) {
            families.add(new Sibship(row[0], row[1], row[2], row[3]));
        }
        return families;
    }

    @Test
    void published_estimates() {
        List<Sibship> families = crow();
        assertEquals(80, families.stream().mapToLong(Sibship::families).sum());
        assertEquals(Probability.of(124, 269), SegregationRatio.naive(families));
        assertEquals(0.460967, SegregationRatio.naive(families).toDouble(), 5e-7);
        assertEquals(77 / 222.0, SegregationRatio.singlesExcluded(families).orElseThrow(), 1e-15);
        assertEquals(
                0.339646, SegregationRatio.truncated(families).estimate(0.95).value(), 5e-7);
        assertEquals(
                0.267949, SegregationRatio.withProbands(families).estimate(0.95).value(), 5e-7);
        assertEquals(
                0.359382, SegregationRatio.probandProbability(families, 0.95).value(), 5e-7);
    }

    @Test
    void one_quarter_is_not_rejected_once_ascertainment_is_allowed_for() {
        Probability quarter = Probability.of(1, 4);
        assertTrue(SegregationRatio.unselected(crow()).test(quarter).p() < 1e-10);
        assertTrue(SegregationRatio.truncated(crow()).test(quarter).p() < 0.02);
        assertTrue(SegregationRatio.withProbands(crow()).test(quarter).p() > 0.5);
    }

    /** Calculated: all affected are probands where pi is 1; where pi is near 0, one animal of each family is left out and the rest counted. */
    @Test
    void the_ends_of_what_probands_can_be() {
        List<Sibship> all = List.of(Sibship.of(3, 1, 8), Sibship.of(4, 2, 5), Sibship.of(5, 1, 4));
        assertEquals(
                SegregationRatio.truncated(all).estimate(0.95).value(),
                SegregationRatio.withProbands(all, Probability.ONE)
                        .estimate(0.95)
                        .value(),
                1e-8);
        List<Sibship> single = List.of(new Sibship(3, 1, 1, 8), new Sibship(4, 2, 1, 5), new Sibship(5, 1, 1, 4));
        double affected = 5; // 8 + 10 + 4 less 17
        double young = 24 + 20 + 20 - 17;
        assertEquals(
                affected / young,
                SegregationRatio.withProbands(single, Probability.ZERO)
                        .estimate(0.95)
                        .value(),
                1e-8);
        // The limit is one: a small pi is nearly none.
        assertEquals(
                affected / young,
                SegregationRatio.withProbands(single, Probability.of(1, 1_000_000))
                        .estimate(0.95)
                        .value(),
                1e-5);
    }

    /** The twin: every litter of three is listed, animal by animal, and those without affected are thrown away. */
    @Test
    void listing_litters() {
        DoubleUnaryOperator twin = p -> {
            double[] byAffected = new double[4];
            for (int litter = 0; litter < 8; litter++) {
                int affected = Integer.bitCount(litter);
                byAffected[affected] += Math.pow(p, affected) * Math.pow(1 - p, 3.0 - affected);
            }
            double noticed = byAffected[1] + byAffected[2] + byAffected[3];
            return 20 * Math.log(byAffected[1] / noticed)
                    + 7 * Math.log(byAffected[2] / noticed)
                    + Math.log(byAffected[3] / noticed);
        };
        double best = 0.001;
        for (int i = 1; i < 100_000; i++) {
            double p = i / 100_000.0;
            best = twin.applyAsDouble(p) > twin.applyAsDouble(best) ? p : best;
        }
        Estimate found = SegregationRatio.truncated(
                        List.of(Sibship.of(3, 1, 20), Sibship.of(3, 2, 7), Sibship.of(3, 3, 1)))
                .estimate(0.95);
        assertEquals(best, found.value(), 1.1e-5);
        assertEquals(twin.applyAsDouble(best), found.logLikelihood(), 1e-8);
    }

    @Test
    void estimates_at_the_ends() {
        Estimate least = SegregationRatio.truncated(List.of(Sibship.of(4, 1, 6), Sibship.of(1, 1, 2)))
                .estimate(0.95);
        assertEquals(0, least.value());
        assertTrue(least.atBoundary());
        assertEquals(
                1,
                SegregationRatio.truncated(List.of(Sibship.of(4, 4, 6)))
                        .estimate(0.95)
                        .value());
        assertEquals(
                0.25,
                SegregationRatio.unselected(List.of(Sibship.of(4, 0, 1), Sibship.of(4, 2, 1)))
                        .estimate(0.95)
                        .value(),
                1e-8);
    }

    /** One affected in each, who may be single by chance whatever is inherited: nothing is likelier than 0, however many such families there are. */
    @Test
    void single_affected_lead_to_the_end_whatever_the_rounding() {
        for (int young = 2; young <= 9; young++) {
            for (int families = 2; families <= 7; families++) {
                List<Sibship> all = List.of(new Sibship(young, 1, 1, families));
                for (SegregationRatio asked :
                        List.of(SegregationRatio.truncated(all), SegregationRatio.withProbands(all))) {
                    Estimate found = asked.estimate(0.95);
                    assertEquals(0, found.value(), all::toString);
                    assertTrue(found.atBoundary(), all::toString);
                    assertTrue(found.standardError().isEmpty(), all::toString);
                }
            }
        }
    }

    @Test
    void what_is_refused() {
        List<Sibship> clear = List.of(Sibship.of(4, 0, 1));
        assertThrows(IllegalArgumentException.class, () -> SegregationRatio.truncated(clear));
        assertThrows(IllegalArgumentException.class, () -> SegregationRatio.singlesExcluded(clear));
        assertThrows(IllegalArgumentException.class, () -> SegregationRatio.withProbands(clear));
        assertThrows(IllegalArgumentException.class, () -> SegregationRatio.naive(List.of()));
        assertThrows(IllegalArgumentException.class, () -> new Sibship(3, 4, 1, 1));
        assertThrows(IllegalArgumentException.class, () -> new Sibship(3, 2, 3, 1));
        assertThrows(
                IllegalArgumentException.class,
                () -> SegregationRatio.unselected(clear).test(Probability.ONE));
    }
}
