package org.geneticsrules.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.evidence.Evidence;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** What a locus says of itself. The models are invented. */
class LocusTest {

    /** Made anew for each test, since making it is part of what is tested. */
    private final Model model = Refusals.valid()
            .evidence(Evidence.of("counted", Grade.BREEDING_DATA, "Counted.", "A source"))
            .locus(
                    "T",
                    locus -> locus.alleles("T", "t", "u")
                            .dominant("T", "t")
                            .dominant("t", "u")
                            .shows("T", "much")
                            .shows("t", "some")
                            .shows("u", "none")
                            .mutation("T", "t", Probability.of(1, 1000), Optional.of("counted"))
                            .mutation("T", "u", Probability.of(1, 5000)))
            .locus(
                    "H",
                    locus -> locus.alleles("H", "h")
                            .expressions("horned", "polled", "neither")
                            .shows("H", "horned")
                            .shows("h", "polled")
                            .absent("neither"))
            .group(LinkageGroup.single(Transmission.Y, "H"))
            .build();

    @Test
    void each_genotype_has_its_place_among_all_of_the_locus() {
        Locus locus = model.locus("T");
        assertEquals(
                List.of("T/T", "T/t", "T/u", "t/t", "t/u", "u/u"),
                locus.pairs().stream().map(AllelePair::toString).toList());
        locus.pairs().forEach(pair -> assertEquals(locus.pairs().indexOf(pair), locus.position(pair), pair.toString()));
        assertEquals(2, locus.position(locus.pair("u", "T")));
    }

    @Test
    void a_genotype_that_stands_where_another_locus_has_none_is_refused() {
        Locus few = model.locus("B"); // three genotypes
        for (AllelePair foreign : model.locus("T").pairs()) {
            IllegalArgumentException refused =
                    assertThrows(IllegalArgumentException.class, () -> few.position(foreign), foreign.toString());
            assertTrue(
                    refused.getMessage().contains("is not a genotype of locus B: [B/B, B/b, b/b]"),
                    refused.getMessage());
        }
    }

    @Test
    void it_tells_how_often_its_alleles_mutate_and_how_that_is_known() {
        Locus locus = model.locus("T");
        assertEquals(Map.of("T", Map.of("t", Probability.of(1, 1000), "u", Probability.of(1, 5000))), locus.mutation());
        assertEquals(Optional.of("counted"), locus.mutationEvidence("T", "t"));
        assertEquals(Optional.empty(), locus.mutationEvidence("T", "u"));
        assertEquals(Optional.empty(), locus.mutationEvidence("t", "T"));
        assertEquals(Map.of(), model.locus("B").mutation());
    }

    @Test
    void it_tells_what_animals_show_that_lack_it() {
        Locus locus = model.locus("H");
        assertEquals(Optional.of("neither"), locus.absent());
        assertEquals("neither", locus.expression(locus.of(), Sex.FEMALE));
        assertEquals("horned", locus.expression(locus.hemizygous("H"), Sex.MALE));
        assertEquals(List.of("/loci/H/absent"), locus.decidedBy(locus.of(), Sex.FEMALE));
        assertEquals(Optional.empty(), model.locus("B").absent());
        assertEquals("H", locus.toString());
    }
}
