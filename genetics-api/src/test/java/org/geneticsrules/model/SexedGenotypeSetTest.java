package org.geneticsrules.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** Sets of genotypes where the sexes differ. */
class SexedGenotypeSetTest {

    /** Horns, dominant in males and recessive in females, on an autosome; O on the X; H on the Y. */
    private static final Model MODEL = Model.builder(
                    "test.sexes", "1", Catalogue.builder("test.none", "1").build())
            .locus(
                    "P",
                    locus -> locus.alleles("P", "p")
                            .expressions("horned", "polled")
                            .in(Sex.FEMALE, dominance("P", "p"))
                            .in(Sex.MALE, dominance("p", "P")))
            .locus(
                    "O",
                    locus -> locus.alleles("O", "o")
                            .shows("O", "orange")
                            .shows("o", "black")
                            .shows("O/o", "both"))
            .locus("H", locus -> locus.alleles("H").shows("H", "present").absent("lacking"))
            .group(LinkageGroup.single(Transmission.X, "O"))
            .group(LinkageGroup.single(Transmission.Y, "H"))
            .build();

    /** P makes polled, p horned. */
    private static Consumer<DominanceBuilder> dominance(String over, String under) {
        return dominance -> dominance.dominant(over, under).shows("P", "polled").shows("p", "horned");
    }

    private static GenotypeSet showing(String locus, String expression) {
        return GenotypeSet.all(MODEL).showing(Condition.where(locus, expression));
    }

    private static GenotypeSet set(String text) {
        return GenotypeSet.parse(MODEL, text, OmittedLoci.UNKNOWN);
    }

    @Test
    void nothing_known_is_every_genotype_of_either_sex() {
        GenotypeSet all = GenotypeSet.all(MODEL);
        assertEquals(Set.of(Sex.FEMALE, Sex.MALE), all.sexes());
        assertEquals(BigInteger.valueOf(3 * 3 + 3 * 2), all.size());
        assertEquals(BigInteger.valueOf(9), all.of(Sex.FEMALE).size());
        assertEquals(Set.of(Sex.MALE), all.of(Sex.MALE).sexes());
        assertTrue(all.of(Sex.MALE).of(Sex.FEMALE).isEmpty());
        assertEquals(Set.of(), all.minus(all).sexes());
    }

    @Test
    void a_look_allows_to_each_sex_what_it_shows() {
        GenotypeSet horned = showing("P", "horned");
        assertEquals(
                List.of(MODEL.locus("P").pair("p", "p")), horned.of(Sex.FEMALE).pairs("P"));
        assertEquals(
                List.of(MODEL.locus("P").pair("P", "p"), MODEL.locus("P").pair("p", "p")),
                horned.of(Sex.MALE).pairs("P"));
        assertEquals(GenotypeSet.all(MODEL).minus(horned), showing("P", "polled"));
    }

    @Test
    void a_look_that_only_one_sex_has_tells_the_sex() {
        assertEquals(Set.of(Sex.FEMALE), showing("O", "both").sexes());
        assertEquals(Set.of(Sex.FEMALE), showing("H", "lacking").sexes());
        assertEquals(set("H"), showing("H", "present"));
        assertEquals(set("O/O").or(set("O/Y")), showing("O", "orange"));
    }

    @Test
    void a_condition_may_name_the_sex() {
        Condition orangeHobs = Condition.where("sex", "male").and("O", Allowed.allBut("black", "both"));
        assertEquals(set("O/Y"), GenotypeSet.all(MODEL).showing(orangeHobs));
    }

    @Test
    void boxes_say_which_sexes_they_are_of() {
        List<GenotypeSet.Box> boxes = showing("P", "horned").sexedBoxes();
        assertEquals(
                List.of(Set.of(Sex.FEMALE), Set.of(Sex.MALE)),
                boxes.stream().map(GenotypeSet.Box::sexes).toList());
        assertEquals("[O/Y, o/Y]", boxes.get(1).at("O").toString());
        assertEquals("[H]", boxes.get(1).at("H").toString());
        assertThrows(IllegalArgumentException.class, () -> boxes.get(0).at("Q"));
    }

    @Test
    void boxes_are_of_both_sexes_where_only_dominance_differs() {
        Model model = Model.builder(
                        "test.horns", "1", Catalogue.builder("test.none", "1").build())
                .locus(
                        "P",
                        locus -> locus.alleles("P", "p")
                                .expressions("horned", "polled")
                                .in(Sex.FEMALE, dominance("P", "p"))
                                .in(Sex.MALE, dominance("p", "P")))
                .build();
        List<GenotypeSet.Box> boxes = GenotypeSet.all(model).sexedBoxes();
        assertEquals(
                List.of(new GenotypeSet.Box(
                        Set.of(Sex.FEMALE, Sex.MALE),
                        Map.of("P", model.locus("P").pairs()))),
                boxes);
        assertEquals(List.of(boxes.get(0).pairs()), GenotypeSet.all(model).boxes());
        assertEquals(BigInteger.valueOf(6), GenotypeSet.all(model).size());
    }

    @Test
    void a_genotype_belongs_to_a_set_with_a_sex_that_it_can_have() {
        Genotype either = Genotype.of(MODEL, List.of(MODEL.locus("P").pair("P", "p")));
        Genotype female = Genotype.parse(MODEL, "P/p O/o");
        Genotype male = Genotype.parse(MODEL, "P/p O/Y H");
        GenotypeSet horned = showing("P", "horned");
        assertFalse(horned.contains(female));
        assertTrue(horned.contains(male));
        assertFalse(horned.contains(male, Sex.FEMALE));
        assertTrue(showing("P", "polled").contains(female));
        // A female need not say that she has no Y.
        assertTrue(showing("P", "polled").contains(female.restrictedTo(List.of("P", "O"))));
        assertThrows(IllegalArgumentException.class, () -> horned.contains(either));
        assertThrows(IllegalArgumentException.class, () -> horned.contains(male.restrictedTo(List.of("P", "O"))));
    }

    @Test
    void where_the_sex_does_not_matter_it_is_not_kept() {
        Model model = Refusals.valid().build();
        GenotypeSet all = GenotypeSet.all(model);
        assertEquals(all, all.of(Sex.MALE));
        assertEquals(Set.of(Sex.FEMALE, Sex.MALE), all.sexes());
        assertEquals(Set.of(Sex.FEMALE, Sex.MALE), all.sexedBoxes().get(0).sexes());
    }
}
