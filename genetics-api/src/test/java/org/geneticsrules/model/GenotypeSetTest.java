package org.geneticsrules.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class GenotypeSetTest {

    private static final Model MODEL = Refusals.valid().build();

    private static GenotypeSet set(String text) {
        return GenotypeText.of(MODEL).parse(text, OmittedLoci.UNKNOWN).genotypes();
    }

    private static Genotype genotype(String text) {
        return Genotype.parse(MODEL, text);
    }

    @Test
    void sets_of_genotypes_combine_as_sets() {
        GenotypeSet carriers = set("C/-").and(set("c/-"));
        assertEquals(set("C/c"), carriers);
        assertEquals(set("C/-"), set("C/C").or(set("C/c")));
        assertEquals(set("c/c"), GenotypeSet.all(MODEL).minus(set("C/-")));
        assertTrue(set("C/C").and(set("c/c")).isEmpty());
        assertEquals(BigInteger.valueOf(9), GenotypeSet.all(MODEL).size());
        assertEquals(BigInteger.valueOf(6), set("C/-").size());
    }

    @Test
    void a_set_holds_full_genotypes() {
        assertTrue(set("C/-").contains(genotype("B/b C/c")));
        assertFalse(set("C/-").contains(genotype("B/b c/c")));
        assertThrows(IllegalArgumentException.class, () -> set("C/-").contains(genotype("C/c")));
    }

    @Test
    void a_set_of_one_genotype_is_as_known_as_the_genotype() {
        assertEquals(set("C/c"), GenotypeSet.of(MODEL, genotype("C/c")));
        assertEquals(BigInteger.ONE, GenotypeSet.of(MODEL, genotype("C/c B/b")).size());
    }

    @Test
    void boxes_list_every_locus_in_model_order() {
        List<Map<String, List<AllelePair>>> boxes = set("C/c").boxes();
        assertEquals(1, boxes.size());
        assertEquals(List.of("B", "C"), List.copyOf(boxes.get(0).keySet()));
        assertEquals(3, boxes.get(0).get("B").size());
        assertEquals("[C/c]", boxes.get(0).get("C").toString());
    }

    @Test
    void a_set_that_is_no_product_prints_its_boxes_in_words() {
        GenotypeSet either = set("C/c").or(set("b/b"));
        assertEquals(Optional.empty(), GenotypeText.of(MODEL).print(either));
        assertEquals("C: C/c | B: b/b, C: C/C or c/c", either.toString());
        GenotypeSet homozygotes = set("C/C").or(set("c/c"));
        assertEquals(Optional.empty(), GenotypeText.of(MODEL).print(homozygotes));
        GenotypeSet none = set("C/C").and(set("c/c"));
        assertEquals("nothing", none.toString());
        assertEquals("C/-", set("C/C").or(set("C/c")).toString());
    }

    @Test
    void sets_of_different_models_differ() {
        Model other = Refusals.valid().title("Another").build();
        assertNotEquals(GenotypeSet.all(MODEL), GenotypeSet.all(other));
    }

    @Test
    void a_genotype_keeps_model_order_and_covers_each_locus_once() {
        AllelePair b = MODEL.locus("B").pair("B", "b");
        AllelePair c = MODEL.locus("C").pair("c", "C");
        Genotype both = Genotype.of(MODEL, List.of(c, b));
        assertEquals("B/b C/c", both.toString());
        assertEquals(Optional.of(c), both.pair("C"));
        assertEquals(Optional.empty(), both.pair("D"));
        assertEquals("C/c", both.restrictedTo(List.of("C", "D")).toString());
        assertEquals("B/b c/c", both.with(MODEL.locus("C").pair("c", "c")).toString());
        assertThrows(IllegalArgumentException.class, () -> Genotype.of(MODEL, List.of(c, c)));
        assertThrows(IllegalArgumentException.class, () -> genotype("B/b").with(c));
    }

    @Test
    void a_genotype_of_another_models_locus_is_refused() {
        Model other = Refusals.valid()
                .locus("D", locus -> locus.alleles("D").shows("D", "x"))
                .build();
        AllelePair foreign = other.locus("D").pair("D", "D");
        assertThrows(IllegalArgumentException.class, () -> Genotype.of(MODEL, List.of(foreign)));
    }
}
