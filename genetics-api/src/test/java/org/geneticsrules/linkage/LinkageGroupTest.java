package org.geneticsrules.linkage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

class LinkageGroupTest {

    /**
     * Three loci of the fly in the order v-ct-cv, as counted in a three-point test cross of 1448 young: parental 580 + 592, single
     * crossovers 89 + 94 and 45 + 40, double 3 + 5 (published, Griffiths et al., An Introduction to Genetic Analysis, whose fractions
     * are 191/1448 and 93/1448).
     */
    private static final LinkageGroup FLY = LinkageGroup.of(
            "fly",
            Transmission.AUTOSOMAL,
            List.of("v", "ct", "cv"),
            new Recombination.Crossovers(Map.of(
                    "none", Probability.of(1172, 1448),
                    "v-ct", Probability.of(183, 1448),
                    "ct-cv", Probability.of(85, 1448),
                    "v-ct ct-cv", Probability.of(8, 1448))));

    @Test
    void a_table_of_crossovers_has_the_fractions_that_its_patterns_add_up_to() {
        Map<Integer, Probability> patterns = FLY.patterns(Sex.FEMALE);
        assertEquals(Probability.of(191, 1448), sum(patterns, 0b01, 0b11));
        assertEquals(Probability.of(93, 1448), sum(patterns, 0b10, 0b11));
        // Two crossovers between the outer loci are not seen as recombination.
        assertEquals(Probability.of(268, 1448), sum(patterns, 0b01, 0b10));
        // Coincidence: doubles found over doubles expected without interference (calculated 0.652142).
        double coincidence = sum(patterns, 0b11).toDouble() / (191.0 / 1448 * 93 / 1448);
        assertEquals(0.652142, coincidence, 0.0000005);
    }

    private static Probability sum(Map<Integer, Probability> patterns, Integer... sets) {
        Probability sum = Probability.ZERO;
        for (Integer set : sets) {
            sum = sum.plus(patterns.getOrDefault(set, Probability.ZERO));
        }
        return sum;
    }

    @Test
    void intervals_recombine_independently_by_fractions_of_the_parent() {
        LinkageGroup group = LinkageGroup.of(
                "g",
                Transmission.AUTOSOMAL,
                List.of("A", "B", "C"),
                new Recombination.Fractions(
                        List.of(Probability.of(1, 10), Probability.of(1, 4)),
                        List.of(Probability.ZERO, Probability.of(1, 2))));
        assertEquals(
                Map.of(
                        0b00, Probability.of(27, 40),
                        0b01, Probability.of(3, 40),
                        0b10, Probability.of(9, 40),
                        0b11, Probability.of(1, 40)),
                group.patterns(Sex.FEMALE));
        assertEquals(Probability.of(1, 2), group.patterns(Sex.MALE).get(0b10));
        assertEquals(Probability.ZERO, group.patterns(Sex.MALE).get(0b11));
    }

    @Test
    void a_single_locus_has_nothing_to_recombine() {
        LinkageGroup single = LinkageGroup.single(Transmission.X, "O");
        assertEquals("O", single.id());
        assertEquals(List.of(), single.intervals());
        assertEquals(Map.of(0, Probability.ONE), single.patterns(Sex.FEMALE));
        assertEquals("/groups/O", single.pointer());
    }

    @Test
    void patterns_are_read_by_the_names_of_intervals() {
        assertEquals(Optional.of(0), FLY.recombining("none"));
        assertEquals(Optional.of(0b11), FLY.recombining("v-ct ct-cv"));
        assertEquals(Optional.empty(), FLY.recombining("ct-cv v-ct"));
        assertEquals(Optional.empty(), FLY.recombining("v-cv"));
        assertEquals(Optional.empty(), FLY.recombining(""));
        LinkageGroup spaced =
                LinkageGroup.autosomal("g", List.of("a b", "c", "d e"), List.of(Probability.ZERO, Probability.ZERO));
        assertEquals(Optional.of(0b11), spaced.recombining("a b-c c-d e"));
        assertEquals(Optional.of(0b10), spaced.recombining("c-d e"));
    }

    @Test
    void a_table_that_names_no_interval_is_refused() {
        LinkageGroup wrong = LinkageGroup.of(
                "g",
                Transmission.AUTOSOMAL,
                List.of("A", "B"),
                new Recombination.Crossovers(Map.of("none", Probability.of(1, 2), "A-C", Probability.of(1, 2))));
        IllegalArgumentException refused =
                assertThrows(IllegalArgumentException.class, () -> wrong.patterns(Sex.FEMALE));
        assertEquals("\"A-C\" is no pattern of the intervals [A-B]", refused.getMessage());
    }

    @Test
    void the_patterns_of_too_many_intervals_are_not_listed() {
        List<String> loci = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            loci.add("L" + i);
        }
        LinkageGroup long40 = LinkageGroup.autosomal("long", loci, Collections.nCopies(39, Probability.of(1, 10)));
        TooLargeException refused = assertThrows(TooLargeException.class, () -> long40.patterns(Sex.MALE));
        assertTrue(refused.estimate() > refused.limit());
    }
}
