package org.geneticsrules.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.problem.ProblemsException;
import org.junit.jupiter.api.Test;

/** What an animal may carry at one locus, and genotypes made of it. */
class AllelePairTest {

    private final Model model = Refusals.valid()
            .locus(
                    "O",
                    locus -> locus.alleles("B", "b")
                            .shows("B", "x")
                            .shows("B/b", "z")
                            .shows("b", "y"))
            .locus("H", locus -> locus.alleles("H").shows("H", "has").absent("has not"))
            .group(LinkageGroup.single(Transmission.X, "O"))
            .group(LinkageGroup.single(Transmission.Y, "H"))
            .build();

    @Test
    void pairs_are_of_one_kind_each() {
        Locus locus = model.locus("O");
        AllelePair pure = locus.pair("B", "B");
        AllelePair mixed = locus.pair("b", "B");
        AllelePair single = locus.hemizygous("B");
        AllelePair none = model.locus("H").of();
        assertTrue(pure.isHomozygous() && !pure.isHeterozygous() && !pure.isHemizygous());
        assertTrue(!mixed.isHomozygous() && mixed.isHeterozygous() && !mixed.isHemizygous());
        assertTrue(!single.isHomozygous() && !single.isHeterozygous() && single.isHemizygous());
        assertFalse(none.isHomozygous() || none.isHeterozygous() || none.isHemizygous());
        assertEquals(List.of(), none.alleles());
    }

    @Test
    void pairs_are_the_same_if_they_hold_the_same_alleles_of_one_locus() {
        Locus locus = model.locus("O");
        assertEquals(locus.pair("b", "B"), locus.pair("B", "b"));
        assertNotEquals(locus.pair("B", "B"), locus.pair("B", "b"));
        assertNotEquals(locus.pair("B", "B"), locus.hemizygous("B"));
        assertNotEquals(locus.pair("B", "b"), model.locus("B").pair("B", "b"));
        assertNotEquals(locus.pair("B", "b"), "B/b");
        Model again = Refusals.valid().build();
        assertEquals(again.locus("B").pair("B", "b"), model.locus("B").pair("B", "b"));
        assertEquals(
                again.locus("B").pair("B", "b").hashCode(),
                model.locus("B").pair("B", "b").hashCode());
        HashSet<AllelePair> all = new HashSet<>();
        model.loci().values().forEach(each -> all.addAll(each.pairs()));
        assertEquals(3 + 3 + 5 + 2, all.size());
    }

    @Test
    void a_genotype_gives_the_place_of_its_pair_at_each_locus_of_the_model() {
        Genotype genotype = Genotype.parse(model, "c/c B:b/B");
        assertEquals(List.of("B", "C", "O", "H"), List.copyOf(model.loci().keySet()));
        assertEquals(1, genotype.position(0)); // B/b after B/B
        assertEquals(2, genotype.position(1)); // c/c is the last
        assertEquals(Genotype.UNKNOWN, genotype.position(2));
        assertThrows(IndexOutOfBoundsException.class, () -> genotype.position(4));
        assertEquals(genotype, Genotype.parse(model, "B:B/b c/c"));
        assertEquals(genotype.hashCode(), Genotype.parse(model, "B:B/b c/c").hashCode());
        assertNotEquals(genotype, Genotype.parse(model, "B:B/b C/c"));
        assertEquals(Optional.empty(), genotype.pair("O"));
    }

    @Test
    void mistakes_in_a_text_are_told_in_the_order_in_which_they_stand() {
        List<String> places =
                assertThrows(ProblemsException.class, () -> Genotype.parse(model, "C/c c/c Q:x/y C/C"))
                        .problems()
                        .stream()
                        .map(problem -> problem.code() + " "
                                + problem.position().orElseThrow().column())
                        .toList();
        assertEquals(List.of("locus-twice 5", "unknown-locus 9", "locus-twice 15"), places);
    }
}
