package org.geneticsrules.cross;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.cross.Detection.Never;
import org.geneticsrules.cross.Detection.Reached;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.junit.jupiter.api.Test;

/** Test matings by hand: every number is calculated from Mendelian segregation. */
class DetectionTest {

    private static final Model MODEL = Model.builder(
                    "test-mating",
                    "1.0.0",
                    Catalogue.builder("test-mating.traits", "1.0.0")
                            .trait("coat", "coloured", "white")
                            .trait("hue", "black", "brown", "none")
                            .build())
            .locus(
                    "A",
                    locus -> locus.alleles("A", "a")
                            .dominant("A", "a")
                            .shows("A", "full")
                            .shows("a", "none"))
            .locus(
                    "B",
                    locus -> locus.alleles("B", "b")
                            .dominant("B", "b")
                            .shows("B", "black")
                            .shows("b", "brown"))
            .trait(
                    "coat",
                    rule -> rule.when(Condition.where("A", "none"), "white").otherwise("coloured"))
            .trait(
                    "hue",
                    rule -> rule.when(Condition.where("A", "none"), "none")
                            .when(Condition.where("A", "full").and("B", "black"), "black")
                            .when(Condition.where("A", "full").and("B", "brown"), "brown"))
            .population(
                    "even",
                    population -> population
                            .frequency("A", "A", Probability.of(1, 2))
                            .frequency("A", "a", Probability.of(1, 2)))
            .build();

    private static final CompiledModel COMPILED = CompiledModel.of(MODEL);
    private static final View COAT = View.of(List.of("coat"));
    private static final Set<Phenotype> WHITE = Set.of(Phenotype.of("coat", "white"));
    private static final Probability FIVE_PERCENT = Probability.of(1, 20);
    private static final LitterSize KIT = LitterSize.of(1);

    private static Parent parent(String genotype) {
        return Parent.among(GenotypeSet.parse(MODEL, genotype, OmittedLoci.UNKNOWN));
    }

    private static TestMating carrier(Mate mate) {
        return TestMating.of(COMPILED, Sex.MALE, parent("A/a"), mate);
    }

    @Test
    void daughters_of_one_dam_who_may_be_free_or_not() {
        Parent dam = parent("A/-").from(MODEL.populations().get("even")); // A/A 1/3, A/a 2/3
        // daughters that are coloured: of a free dam A/a with 1/2, of a carrier dam A/a with 2/3
        Mate coloured = Mate.ownYoung(dam).seen(Sighting.of(Phenotype.of("coat", "coloured")));
        Probability ofFree = Probability.of(7, 8); // 1/2 + 1/2 x 3/4
        Probability ofCarrier = Probability.of(5, 6); // 1/3 + 2/3 x 3/4
        Map<Probability, Probability> sisters = new LinkedHashMap<>();
        sisters.put(ofFree, Probability.of(1, 3));
        sisters.put(ofCarrier, Probability.of(2, 3));
        assertEquals(
                Optional.of(Detection.of(Distribution.of(sisters))),
                carrier(coloured.asSibs()).byManyMates(COAT, WHITE, KIT));
        Probability mean = Probability.of(61, 72); // each by a dam of her own
        assertEquals(
                Optional.of(Detection.of(Distribution.certain(mean))),
                carrier(coloured).byManyMates(COAT, WHITE, KIT));
    }

    @Test
    void one_of_two_looks_is_sign_enough() {
        TestMating test = TestMating.of(COMPILED, Sex.FEMALE, parent("A/a B/b"), Mate.of(parent("a/a b/b")));
        View hue = View.of(List.of("hue"));
        Set<Phenotype> signs = test.proofs(hue, parent("A/A B/B"));
        assertEquals(Set.of(Phenotype.of("hue", "brown"), Phenotype.of("hue", "none")), signs);
        Detection both = test.byOneMate(hue, signs, KIT).orElseThrow();
        assertEquals(Distribution.certain(Probability.of(1, 4)), both.step());
        // one of the two loci only: the other may be anything, and then no look proves both
        assertEquals(
                Set.of(),
                TestMating.of(COMPILED, Sex.FEMALE, parent("A/a B/b"), Mate.of(parent("a/a b/b")))
                        .proofs(hue, parent("A/a B/-")));
    }

    @Test
    void a_miss_falls_to_its_limit_and_no_further() {
        Detection daughter = carrier(Mate.ownYoung(parent("A/A")))
                .byOneMate(COAT, WHITE, KIT)
                .orElseThrow();
        assertEquals(Probability.of(1, 2), daughter.limit());
        assertEquals(new Never(Probability.of(1, 2)), daughter.fewest(FIVE_PERCENT));
        assertEquals(new Never(Probability.of(1, 2)), daughter.fewest(Probability.of(1, 2)));
        assertEquals(new Reached(14, daughter.missed(14)), daughter.fewest(Probability.of(51, 100)));
        assertEquals(new Reached(0, Probability.ONE), daughter.fewest(Probability.ONE));
    }

    @Test
    void the_young_of_other_animals_as_mates() {
        // a daughter of two carriers that is coloured carries with 2/3
        Mate coloured = Mate.youngOf(parent("A/a"), parent("A/a")).seen(Sighting.of(Phenotype.of("coat", "coloured")));
        assertEquals(
                Distribution.certain(Probability.of(5, 6)),
                carrier(coloured).byManyMates(COAT, WHITE, KIT).orElseThrow().step());
    }

    @Test
    void litters_of_a_size_that_varies() {
        LitterSize sizes = LitterSize.named("one or three", Distribution.ofWeights(Map.of(1, 1, 3, 1)));
        assertEquals(
                Distribution.certain(Probability.of(5, 16)), // half of 1/2 and 1/8
                carrier(Mate.of(parent("a/a")))
                        .byOneMate(COAT, WHITE, sizes)
                        .orElseThrow()
                        .step());
    }

    /** Calculated: certain ends, where no logarithm helps. */
    @Test
    void steps_that_show_everything_or_nothing() {
        Detection always = Detection.of(Distribution.certain(Probability.ZERO));
        assertEquals(new Reached(1, Probability.ZERO), always.fewest(Probability.ZERO));
        Detection never = Detection.of(Distribution.certain(Probability.ONE));
        assertEquals(new Never(Probability.ONE), never.fewest(FIVE_PERCENT));
        assertEquals(new Reached(0, Probability.ONE), never.fewest(Probability.ONE));
        Detection half = Detection.of(Distribution.ofWeights(Map.of(Probability.ZERO, 1, Probability.ONE, 1)));
        assertEquals(new Reached(1, Probability.of(1, 2)), half.fewest(Probability.of(1, 2)));
        assertEquals(new Never(Probability.of(1, 2)), half.fewest(FIVE_PERCENT));
    }

    @Test
    void no_such_animal_or_mate_is_no_detection() {
        Mate none = Mate.youngOf(parent("A/A"), parent("A/A")).seen(Sighting.of(Phenotype.of("coat", "white")));
        assertEquals(Optional.empty(), carrier(none).byOneMate(COAT, WHITE, KIT));
        assertEquals(Set.of(), carrier(none).proofs(COAT, parent("A/A")));
    }

    @Test
    void an_uncertain_animal_needs_a_population() {
        ProblemsException refusal = assertThrows(
                ProblemsException.class,
                () -> carrier(Mate.ownYoung(parent("A/-"))).byOneMate(COAT, WHITE, KIT));
        assertTrue(
                refusal.getMessage().contains("the other parent of the mate is only partly known at A"),
                refusal::getMessage);
    }

    @Test
    void what_cannot_be_answered_exactly_is_refused_with_the_number_of_steps() {
        Detection rare = Detection.of(Distribution.certain(Probability.of(999_999, 1_000_000)));
        TooLargeException refusal = assertThrows(TooLargeException.class, () -> rare.fewest(FIVE_PERCENT));
        assertTrue(refusal.getMessage().contains("for about 2995733 kits, litters or mates"), refusal::getMessage);
        assertThrows(TooLargeException.class, () -> rare.missed(1_000_000));
        assertThrows(IllegalArgumentException.class, () -> rare.missed(-1));
        assertThrows(
                IllegalArgumentException.class,
                () -> carrier(Mate.of(parent("a/a"))).byOneMate(COAT, Set.of(Phenotype.of("hue", "none")), KIT));
    }
}
