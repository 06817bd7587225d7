package org.geneticsrules.estimation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.LocusBuilder;
import org.geneticsrules.model.Model;
import org.geneticsrules.statistics.Counts;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.junit.jupiter.api.Test;

class GeneCountingTest {

    private static Locus locus(Transmission transmission, Consumer<LocusBuilder> describe) {
        return Model.builder(
                        "one",
                        "1",
                        Catalogue.builder("one.traits", "1")
                                .trait("any", "there")
                                .build())
                .locus("L", describe)
                .group(LinkageGroup.single(transmission, "L"))
                .trait("any", rule -> rule.when(Condition.always(), "there"))
                .build()
                .locus("L");
    }

    private static Locus abo() {
        return locus(
                Transmission.AUTOSOMAL,
                one -> one.alleles("A", "B", "O")
                        .dominant("A", "O")
                        .dominant("B", "O")
                        .shows("A", "A")
                        .shows("B", "B")
                        .shows("A/B", "AB")
                        .shows("O", "O"));
    }

    private static Locus dominant() {
        return locus(
                Transmission.AUTOSOMAL,
                one -> one.alleles("C", "c")
                        .dominant("C", "c")
                        .shows("C", "pigment")
                        .shows("c", "albino"));
    }

    private static Counts counts(Object... namesAndNumbers) {
        Map<String, Long> counts = new LinkedHashMap<>();
        for (int i = 0; i < namesAndNumbers.length; i += 2) {
            counts.put((String) namesAndNumbers[i], ((Integer) namesAndNumbers[i + 1]).longValue());
        }
        return new Counts(counts);
    }

    /** Published: Clarke et al. 1959, in Lange. */
    @Test
    void blood_groups() {
        GeneCounting found = GeneCounting.of(abo(), counts("A", 186, "B", 38, "AB", 13, "O", 284));
        assertEquals(0.213591, found.frequencies().get("A"), 5e-7);
        assertEquals(0.050145, found.frequencies().get("B"), 5e-7);
        assertEquals(0.736264, found.frequencies().get("O"), 5e-7);
        assertTrue(found.iterations() < 100);
        Estimate a = found.estimate("A", 0.95);
        // The profile of the others is about as wide as two standard errors to either side.
        double error = a.standardError().orElseThrow();
        assertEquals(a.value() - 1.96 * error, a.interval().low(), 0.1 * error);
        assertEquals(a.value() + 1.96 * error, a.interval().high(), 0.1 * error);
        assertEquals(1, found.fit().orElseThrow().degreesOfFreedom());
    }

    /** The twin: all frequencies on a grid, with the chances of blood groups written out. */
    @Test
    void blood_groups_on_a_grid() {
        double bestA = 0;
        double bestB = 0;
        double best = Double.NEGATIVE_INFINITY;
        for (int i = 1; i < 500; i++) {
            for (int j = 1; i + j < 500; j++) {
                double a = i / 500.0;
                double b = j / 500.0;
                double o = 1 - a - b;
                double log = 30 * Math.log(a * a + 2 * a * o)
                        + 14 * Math.log(b * b + 2 * b * o)
                        + 5 * Math.log(2 * a * b)
                        + 40 * Math.log(o * o);
                if (log > best) {
                    best = log;
                    bestA = a;
                    bestB = b;
                }
            }
        }
        GeneCounting found = GeneCounting.of(abo(), counts("A", 30, "B", 14, "AB", 5, "O", 40));
        assertEquals(bestA, found.frequencies().get("A"), 0.002);
        assertEquals(bestB, found.frequencies().get("B"), 0.002);
        double top = found.estimate("B", 0.95).logLikelihood();
        assertTrue(top >= best && top < best + 0.01);
    }

    /** Calculated: q = sqrt(recessives / n), its standard error sqrt((1 - q^2) / 4n). */
    @Test
    void one_dominant_allele_leaves_nothing_to_test() {
        GeneCounting found = GeneCounting.of(dominant(), counts("pigment", 84, "albino", 16));
        assertEquals(0.4, found.frequencies().get("c"), 1e-12);
        assertEquals(
                Math.sqrt(0.84 / 400), found.estimate("c", 0.95).standardError().orElseThrow(), 1e-9);
        assertEquals(
                found.estimate("c", 0.95).standardError().orElseThrow(),
                found.estimate("C", 0.95).standardError().orElseThrow(),
                1e-12);
        assertEquals(Optional.empty(), found.fit());
    }

    @Test
    void an_allele_that_nobody_shows() {
        GeneCounting found = GeneCounting.of(dominant(), counts("pigment", 30, "albino", 0));
        Estimate none = found.estimate("c", 0.95);
        assertEquals(0, none.value()); // to which counting comes but slowly
        assertTrue(none.interval().lowIsBoundary());
        assertEquals(OptionalDouble.empty(), none.standardError());
        // n ln(1 - q^2) = -1.92
        assertEquals(
                Math.sqrt(-Math.expm1(-3.841458820694124 / 60)), none.interval().high(), 1e-6);
    }

    /** Published: MN in Lange. From memory: the tiger moth of Ford. */
    @Test
    void genotypes_that_can_be_told_apart() {
        HardyWeinberg mn = new HardyWeinberg(119, 76, 13);
        assertEquals(0.754808, mn.frequency().toDouble(), 5e-7);
        assertEquals(0.03442, mn.chiSquared().orElseThrow().statistic(), 5e-6);
        assertEquals(1, mn.chiSquared().orElseThrow().degreesOfFreedom());
        HardyWeinberg moth = new HardyWeinberg(1469, 138, 5);
        assertEquals(0.954094, moth.frequency().toDouble(), 5e-7);
        assertEquals(0.83095, moth.chiSquared().orElseThrow().statistic(), 5e-6);
        GeneCounting counted = GeneCounting.of(
                locus(
                        Transmission.AUTOSOMAL,
                        one -> one.alleles("M", "N")
                                .shows("M", "M")
                                .shows("M/N", "MN")
                                .shows("N", "N")),
                counts("M", 119, "MN", 76, "N", 13));
        assertEquals(mn.frequency().toDouble(), counted.frequencies().get("M"), 1e-12);
        assertEquals(0.03442, counted.fit().orElseThrow().statistic(), 5e-6);
    }

    /** The twin: every way to draw pairs from the alleles, one after another. */
    @Test
    void the_exact_test_lists_all_pairings() {
        for (int[] row : new int[][] {{3, 1, 2}, {1, 4, 1}, {0, 2, 4}, {4, 1, 0}, {2, 4, 0}}) {
            int first = 2 * row[0] + row[1];
            int second = 2 * row[2] + row[1];
            double[] byHeterozygotes = new double[row[0] + row[1] + row[2] + 1];
            pair(first, second, 0, 1, byHeterozygotes);
            double p = 0;
            for (double chance : byHeterozygotes) {
                p += chance <= byHeterozygotes[row[1]] * (1 + 1e-9) ? chance : 0;
            }
            assertEquals(p, new HardyWeinberg(row[0], row[1], row[2]).exactP(), 1e-12);
        }
    }

    private static void pair(int first, int second, int heterozygotes, double chance, double[] found) {
        double left = first + second;
        if (left == 0) {
            found[heterozygotes] += chance;
            return;
        }
        double pairs = left * (left - 1);
        if (first > 1) {
            pair(first - 2, second, heterozygotes, chance * first * (first - 1) / pairs, found);
        }
        if (second > 1) {
            pair(first, second - 2, heterozygotes, chance * second * (second - 1) / pairs, found);
        }
        if (first > 0 && second > 0) {
            pair(first - 1, second - 1, heterozygotes + 1, chance * 2 * first * second / pairs, found);
        }
    }

    @Test
    void deficits_of_heterozygotes() {
        assertEquals(1, new HardyWeinberg(50, 0, 50).heterozygoteDeficit().orElseThrow(), 1e-12);
        assertEquals(-1, new HardyWeinberg(0, 10, 0).heterozygoteDeficit().orElseThrow(), 1e-12);
        assertEquals(0, new HardyWeinberg(25, 50, 25).heterozygoteDeficit().orElseThrow(), 1e-12);
        HardyWeinberg fixed = new HardyWeinberg(10, 0, 0);
        assertEquals(OptionalDouble.empty(), fixed.heterozygoteDeficit());
        assertEquals(Optional.empty(), fixed.chiSquared());
        assertEquals(1, fixed.exactP());
        assertTrue(new HardyWeinberg(5_000_000, 0, 5_000_000).exactP() < 1e-300);
    }

    @Test
    void what_is_refused() {
        Locus locus = dominant();
        String unknown = assertThrows(
                        IllegalArgumentException.class,
                        () -> GeneCounting.of(locus, counts("pigment", 1, "albinos", 2)))
                .getMessage();
        assertTrue(unknown.contains("albinos") && unknown.contains("[pigment, albino]"), unknown);
        assertThrows(IllegalArgumentException.class, () -> GeneCounting.of(locus, counts("pigment", 1)));
        Locus linked = locus(
                Transmission.X,
                one -> one.alleles("C", "c")
                        .dominant("C", "c")
                        .shows("C", "pigment")
                        .shows("c", "albino"));
        assertThrows(IllegalArgumentException.class, () -> GeneCounting.of(linked, counts("pigment", 1, "albino", 2)));
        GeneCounting found = GeneCounting.of(locus, counts("pigment", 1, "albino", 2));
        assertThrows(IllegalArgumentException.class, () -> found.estimate("x", 0.95));
        assertThrows(IllegalArgumentException.class, () -> new HardyWeinberg(0, 0, 0));
        assertThrows(IllegalArgumentException.class, () -> new HardyWeinberg(1, -1, 0));
        assertThrows(IllegalArgumentException.class, () -> new HardyWeinberg(20_000_000, 0, 0));
    }
}
