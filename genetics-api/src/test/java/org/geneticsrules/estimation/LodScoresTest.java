package org.geneticsrules.estimation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.geneticsrules.estimation.LodScores.Verdict;
import org.junit.jupiter.api.Test;

/** Scores, calculated from their definition (Morton 1955, Am. J. Hum. Genet. 7:277: 3 for linkage, -2 against). */
class LodScoresTest {

    private static double lod(double likelihood, int young) {
        return Math.log10(likelihood / Math.pow(0.5, young));
    }

    @Test
    void a_family_of_known_phase() {
        LodScores scores = LodScores.of(List.of(new LinkageFamily("one", 1, 9, true)));
        assertEquals(lod(0.1 * Math.pow(0.9, 9), 10), scores.at(0.1), 1e-12);
        assertEquals(0.1, scores.estimate(0.95).value(), 1e-7);
        assertEquals(scores.at(0.1), scores.highest(), 1e-12);
        assertEquals(Double.NEGATIVE_INFINITY, scores.at(0));
        assertEquals(0, scores.at(0.5));
    }

    /** One of the young of a parent of unknown phase is as likely at any fraction: that is no estimate of 0. */
    @Test
    void what_says_nothing_is_no_estimate() {
        Estimate found =
                LodScores.of(List.of(new LinkageFamily("one kit", 0, 1, false))).estimate(0.95);
        assertTrue(found.flat());
        assertFalse(found.atBoundary());
        assertTrue(found.standardError().isEmpty());
        assertTrue(found.interval().lowIsBoundary() && found.interval().highIsBoundary());
        assertTrue(
                found.notes().get(0).startsWith("these records say nothing about the number"),
                found.notes().toString());
        assertFalse(LodScores.of(List.of(new LinkageFamily("two kits", 0, 2, false)))
                .estimate(0.95)
                .flat());
    }

    /** By listing both phases, each with every order of young being one product. */
    @Test
    void a_family_of_unknown_phase() {
        LodScores scores = LodScores.of(List.of(new LinkageFamily("one", 7, 1, false)));
        double r = 0.2;
        double likelihood = (Math.pow(r, 7) * (1 - r) + r * Math.pow(1 - r, 7)) / 2;
        assertEquals(lod(likelihood, 8), scores.at(r), 1e-12);
        assertEquals(
                scores.at(0.01),
                LodScores.of(List.of(new LinkageFamily("other", 1, 7, false))).at(0.01),
                1e-12);
        // None or all recombinant: at r = 0 one of two phases fits, which is as good as one of the young less.
        assertEquals(
                lod(0.5, 5),
                LodScores.of(List.of(new LinkageFamily("five", 0, 5, false))).at(0),
                1e-12);
    }

    @Test
    void families_add_up_and_those_that_say_nothing_are_named() {
        LodScores scores = LodScores.of(List.of(
                new LinkageFamily("known", 1, 9, true),
                new LinkageFamily("one kit", 0, 1, false),
                new LinkageFamily("unknown", 6, 0, false),
                new LinkageFamily("empty", 0, 0, true)));
        assertEquals(List.of("one kit", "empty"), scores.uninformative());
        assertEquals(4, scores.families().size());
        assertEquals(scores.at("known", 0.1) + scores.at("unknown", 0.1), scores.at(0.1), 1e-12);
        assertEquals(0, scores.at("one kit", 0.1), 1e-15);
        assertTrue(scores.estimate(0.95).notes().get(0).contains("one kit, empty"));
        assertTrue(new LinkageFamily("x", 1, 1, false).isInformative());
        assertEquals(List.of(0.0, 0.25, 0.5), List.copyOf(scores.curve(2).keySet()));
        assertEquals(scores.at(0.25), scores.curve(2).get(0.25));
    }

    @Test
    void verdicts_by_convention() {
        LodScores linked = LodScores.of(List.of(new LinkageFamily("ten", 0, 10, true)));
        assertEquals(10 * Math.log10(2), linked.highest(), 1e-12); // 3.0103
        assertEquals(Verdict.FOR_LINKAGE, linked.verdict(0));
        assertEquals(Verdict.INCONCLUSIVE, linked.verdict(0.2));
        LodScores free = LodScores.of(List.of(new LinkageFamily("twenty", 10, 10, true)));
        assertEquals(Verdict.AGAINST_LINKAGE, free.verdict(0.05));
        assertEquals(Verdict.INCONCLUSIVE, free.verdict(0.4));
        assertEquals(0, free.highest(), 1e-12);
        assertTrue(free.estimate(0.95).atBoundary());
        assertEquals(1, free.linkage().p());
        // One unit of support below a top at 0 of n young: 1 - 10^(-1/n).
        assertEquals(1 - Math.pow(10, -0.1), linked.oneUnitOfSupport().high(), 1e-9);
    }

    @Test
    void when_no_family_says_anything() {
        LodScores nothing = LodScores.of(List.of(new LinkageFamily("one kit", 1, 0, false)));
        assertTrue(nothing.estimate(0.95).notes().contains("no family says anything of linkage."));
        assertEquals(0, nothing.highest(), 1e-15);
    }

    @Test
    void what_is_refused() {
        LinkageFamily family = new LinkageFamily("one", 1, 2, true);
        assertThrows(IllegalArgumentException.class, () -> new LinkageFamily("one", -1, 2, true));
        assertThrows(IllegalArgumentException.class, () -> LodScores.of(List.of(family, family)));
        assertThrows(IllegalArgumentException.class, () -> LodScores.of(List.of()));
        LodScores scores = LodScores.of(List.of(family));
        assertThrows(IllegalArgumentException.class, () -> scores.at(0.51));
        assertThrows(IllegalArgumentException.class, () -> scores.at("two", 0.1));
        assertThrows(IllegalArgumentException.class, () -> scores.curve(0));
    }
}
