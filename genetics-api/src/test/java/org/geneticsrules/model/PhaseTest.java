package org.geneticsrules.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.junit.jupiter.api.Test;

class PhaseTest {

    /** Loci A, B, C linked in the order A-C-B, and D alone. */
    private static final Model MODEL = model();

    private static Model model() {
        ModelBuilder builder = Model.builder(
                "test.phase", "1", Catalogue.builder("test.none", "1").build());
        for (String id : List.of("A", "B", "C", "D")) {
            builder.locus(
                    id,
                    locus -> locus.alleles(id + "1", id + "2")
                            .dominant(id + "1", id + "2")
                            .shows(id + "1", "high")
                            .shows(id + "2", "low"));
        }
        Probability tenth = Probability.of(1, 10);
        return builder.group(LinkageGroup.autosomal("g", List.of("A", "C", "B"), List.of(tenth, tenth)))
                .build();
    }

    /** Alleles by number, those of one strand first: {@code A12} is A1 on it and A2 on the other. */
    private static Phase phase(String... loci) {
        Map<String, Phase.Strands> strands = new LinkedHashMap<>();
        for (String locus : loci) {
            strands.put(locus.substring(0, 1), strands(locus));
        }
        return Phase.of(MODEL, strands);
    }

    private static Phase.Strands strands(String locus) {
        Map<String, Allele> alleles = MODEL.locus(locus.substring(0, 1)).alleles();
        List<Allele> declared = new ArrayList<>(alleles.values());
        return new Phase.Strands(declared.get(locus.charAt(1) - '1'), declared.get(locus.charAt(2) - '1'));
    }

    @Test
    void strands_have_no_order() {
        assertEquals(phase("A12", "B12"), phase("A21", "B21"));
        assertEquals(phase("A12", "B12").hashCode(), phase("B21", "A21").hashCode());
        assertNotEquals(phase("A12", "B12"), phase("A12", "B21"));
        assertEquals(Optional.of(strands("B21")), phase("A21", "B12").at("B"));
    }

    @Test
    void loci_are_kept_in_map_order() {
        assertEquals(
                List.of("A", "C", "B"),
                new ArrayList<>(phase("B12", "A12", "C12").strands().keySet()));
    }

    @Test
    void what_is_no_phase_is_left_out() {
        assertEquals(Phase.unknown(), phase());
        assertEquals(Phase.unknown(), phase("A12"));
        assertEquals(Phase.unknown(), phase("A12", "D12"));
        assertEquals(Phase.unknown(), phase("A12", "B11"));
        assertEquals(phase("A12", "B12"), phase("A12", "B12", "C22", "D21"));
        assertEquals(Optional.empty(), phase("A12", "B12", "C22").at("C"));
    }

    @Test
    void a_part_is_canonical_by_itself() {
        Phase whole = phase("A12", "B12", "C21");
        assertEquals(phase("B21", "C12"), whole.restrictedTo(MODEL, List.of("B", "C", "D")));
        assertEquals(
                Optional.of(strands("C12")),
                whole.restrictedTo(MODEL, List.of("B", "C")).at("C"));
        assertEquals(Phase.unknown(), whole.restrictedTo(MODEL, List.of("A")));
        assertEquals(whole, whole.restrictedTo(MODEL, List.of("C", "B", "A")));
    }

    @Test
    void a_phase_agrees_with_its_genotype() {
        AllelePair a = MODEL.locus("A").pair("A1", "A2");
        AllelePair b = MODEL.locus("B").pair("B1", "B2");
        Phase phase = phase("A12", "B21");
        assertEquals("[A1 B2]/[A2 B1]", Genotype.of(MODEL, List.of(b, a), phase).toString());
        assertThrows(IllegalArgumentException.class, () -> Genotype.of(MODEL, List.of(a), phase));
        AllelePair other = MODEL.locus("B").pair("B1", "B1");
        assertThrows(IllegalArgumentException.class, () -> Genotype.of(MODEL, List.of(a, other), phase));
    }

    @Test
    void a_changed_pair_gives_up_its_phase() {
        Genotype genotype = Genotype.parse(MODEL, "[A1 B1 C1]/[A2 B2 C2]");
        AllelePair same = MODEL.locus("C").pair("C1", "C2");
        assertEquals("[A1 B1]/[A2 B2] C1/C2", genotype.with(same).toString());
    }
}
