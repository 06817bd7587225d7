package org.geneticsrules.cross;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.explanation.MatingExplanation;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.model.Viability;
import org.geneticsrules.probability.Approximation;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sighting;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** Yellow mice, of whom the pure ones die before birth, and a colour beside: what litters tell, by hand. */
class LitterTest {

    private static final Probability HALF = Probability.of(1, 2);
    private static final Model MODEL = model();
    private static final CompiledModel COMPILED = CompiledModel.of(MODEL);
    private static final View COAT = View.of(List.of("coat"));
    private static final Phenotype YELLOW = Phenotype.of("coat", "yellow");
    private static final Phenotype WILD = Phenotype.of("coat", "wild");

    private static Model model() {
        return builder().build();
    }

    private static ModelBuilder builder() {
        Catalogue catalogue = Catalogue.builder("mice", "1")
                .trait("coat", "yellow", "wild")
                .trait("eye", "dark", "red")
                .build();
        return Model.builder("yellow", "1", catalogue)
                .locus(
                        "A",
                        locus -> locus.alleles("Y", "a")
                                .shows("Y", "dies")
                                .shows("Y/a", "yellow")
                                .shows("a", "wild"))
                .locus(
                        "P",
                        locus -> locus.alleles("P", "p")
                                .dominant("P", "p")
                                .shows("P", "dark")
                                .shows("p", "red"))
                .trait(
                        "coat",
                        rule -> rule.when(Condition.where("A", "yellow", "dies"), "yellow")
                                .when(Condition.where("A", "wild"), "wild"))
                .trait(
                        "eye",
                        rule -> rule.when(Condition.where("P", "dark"), "dark").otherwise("red"))
                .viability(Viability.lethal("pure", "A", "dies"))
                .population(
                        "even",
                        population -> population
                                .frequency("A", "Y", HALF)
                                .frequency("A", "a", HALF)
                                .frequency("P", "P", HALF)
                                .frequency("P", "p", HALF));
    }

    private static Parent parent(String genotype) {
        return Parent.among(GenotypeSet.parse(MODEL, genotype, OmittedLoci.UNKNOWN))
                .from(MODEL.populations().get("even"));
    }

    private static UncertainCross cross(String sire, String dam) {
        return UncertainCross.of(COMPILED, parent(sire), parent(dam));
    }

    /** Hardy-Weinberg among those who live: 2 yellow to 1 wild, so a dam of whom nothing is known has Y with 2/3. */
    @Test
    void animals_that_die_are_no_parents() {
        assertEquals(
                Optional.of(Distribution.ofWeights(ImmutableMap.of(HALF, 2, Probability.ZERO, 1))),
                cross("a/a P/P", "A:? P/P").chance(COAT, YELLOW, List.of()));
        assertTrue(cross("Y/Y P/P", "a/a P/P").isContradictory());
        assertFalse(cross("Y/a P/P", "a/a P/P").isContradictory());
        assertEquals(Set.of(), cross("Y/Y P/P", "a/a P/P").possible(List.of("coat")));
    }

    /**
     * A kit that is looked at has been born, whatever the next is counted among. The dam is Y/a or a/a as 2 : 1; a yellow kit is 2/3 of
     * those born of the one and 1/2 of those of the other, so that the odds are 8 : 3 after it.
     */
    @Test
    void a_kit_that_was_seen_has_been_born() {
        UncertainCross cross = cross("Y/a P/P", "A:? P/P");
        List<Sighting> one = List.of(Sighting.of(YELLOW));
        Map<Probability, Integer> conceived = ImmutableMap.of(Probability.of(3, 4), 8, HALF, 3);
        assertEquals(
                Optional.of(Distribution.ofWeights(conceived)),
                cross.chance(COAT.among(Census.CONCEIVED), YELLOW, one));
        Map<Probability, Integer> born = ImmutableMap.of(Probability.of(2, 3), 8, HALF, 3);
        assertEquals(Optional.of(Distribution.ofWeights(born)), cross.chance(COAT.among(Census.BORN), YELLOW, one));
        Map<Probability, Integer> before = ImmutableMap.of(Probability.of(3, 4), 2, HALF, 1);
        assertEquals(
                Optional.of(Distribution.ofWeights(before)),
                cross.chance(COAT.among(Census.CONCEIVED), YELLOW, List.of()));
        // 8/11 x 2/3 + 3/11 x 1/2
        assertEquals(Optional.of(Probability.of(41, 66)), cross.next(COAT.among(Census.BORN), YELLOW, one));
        assertEquals(Set.of(Probability.of(2, 3), HALF), cross.possibleChances(YELLOW));
    }

    /** The share lost: a quarter of the kits of two yellows, none of others; the dam is yellow in two of three. */
    @Test
    void how_many_are_lost_is_a_mean() {
        UncertainCross cross = cross("Y/a P/P", "A:? P/P");
        assertEquals(Optional.of(Probability.of(1, 6)), cross.lostShare(Census.BORN));
        assertEquals(Optional.of(Probability.of(1, 6)), cross.lostShare(Census.SCORED));
        assertEquals(Optional.of(Probability.ZERO), cross.lostShare(Census.CONCEIVED));
    }

    @Test
    void a_male_without_access_has_no_share() {
        Parent free = parent("a/a P/P");
        Parent yellow = parent("Y/a P/P");
        Parent dam = parent("a/a P/P");
        for (boolean perKit : new boolean[] {false, true}) {
            Sires sires = new Sires(List.of(yellow, free), List.of(Probability.ZERO, Probability.ONE), perKit);
            UncertainCross cross = UncertainCross.of(COMPILED, sires, dam);
            assertEquals(Optional.of(Distribution.certain(WILD)), cross.probable(COAT));
            assertEquals(Optional.of(Distribution.certain(Probability.ZERO)), cross.chance(COAT, YELLOW, List.of()));
            Approximation<Phenotype> close = cross.approximate(COAT).orElseThrow();
            assertFalse(close.isPossible(YELLOW));
            assertEquals(1, close.chance(WILD));
        }
        Sires both = Sires.perKit(List.of(yellow, free), List.of(Probability.of(1, 5), Probability.of(4, 5)));
        UncertainCross shared = UncertainCross.of(COMPILED, both, dam);
        assertEquals(Optional.of(Distribution.ofWeights(ImmutableMap.of(YELLOW, 1, WILD, 9))), shared.probable(COAT));
        assertEquals(0.1, shared.approximate(COAT).orElseThrow().chance(YELLOW), 1e-15);
        assertEquals(Optional.of(Distribution.certain(Probability.of(1, 10))), shared.chance(COAT, YELLOW, List.of()));
        UncertainCross either = UncertainCross.of(COMPILED, Sires.oneOf(both.males(), both.access()), dam);
        assertEquals(
                Optional.of(Distribution.ofWeights(ImmutableMap.of(HALF, 1, Probability.ZERO, 4))),
                either.chance(COAT, YELLOW, List.of()));
        assertEquals("Y/a P/P or a/a P/P \u00d7 a/a P/P", either.toString());
    }

    /** Parents that are tied at two loci always have kits here, so who is lost does not bear on the eyes of those that are left. */
    @Test
    void losses_that_bear_on_nothing_are_not_cited() {
        GenotypeSet tied = GenotypeSet.of(MODEL, Genotype.parse(MODEL, "Y/a P/P"))
                .or(GenotypeSet.of(MODEL, Genotype.parse(MODEL, "a/a p/p")));
        UncertainCross cross = UncertainCross.of(
                COMPILED,
                parent("Y/a p/p"),
                Parent.among(tied).from(MODEL.populations().get("even")));
        MatingExplanation eyes = cross.explain(List.of("eye")).orElseThrow();
        assertFalse(eyes.statements().contains("/viability/pure"), eyes.statements()::toString);
        assertTrue(cross.explain(List.of("coat")).orElseThrow().statements().contains("/viability/pure"));
        // Y/a P/P weighs 1/2 x 1/4 and a/a p/p 1/4 x 1/4, so the kits are dark as 2 : 1
        assertEquals(
                Optional.of(Distribution.ofWeights(
                        ImmutableMap.of(Phenotype.of("eye", "dark"), 2, Phenotype.of("eye", "red"), 1))),
                cross.probable(List.of("eye")));
    }

    @Test
    void a_population_is_asked_for_where_it_matters() {
        Parent known = Parent.among(GenotypeSet.parse(MODEL, "Y/a P/P", OmittedLoci.UNKNOWN));
        Parent open = Parent.among(GenotypeSet.parse(MODEL, "Y/a", OmittedLoci.UNKNOWN));
        UncertainCross cross = UncertainCross.of(COMPILED, open, known);
        assertEquals(Map.of(), cross.missingFrequencies(List.of("coat")));
        assertEquals(Map.of("sire", List.of("P")), cross.missingFrequencies(List.of("eye")));
        assertEquals(Map.of(), cross.missingFrequencies(Census.BORN));
        assertEquals(
                Map.of("sire", List.of("P"), "dam", List.of("P")),
                UncertainCross.of(COMPILED, open, open).missingFrequencies(List.of("eye", "coat")));
        ProblemsException refused = assertThrows(ProblemsException.class, () -> cross.probable(List.of("eye")));
        assertEquals(
                "the sire is only partly known at P, and no population is named; expected a full genotype there, or a"
                        + " population such as even [population-needed]",
                refused.problems().get(0).toString());
        assertEquals(
                Set.of("eye: dark"),
                Set.copyOf(cross.possible(List.of("eye")).stream()
                        .map(Object::toString)
                        .toList()));
        assertEquals(
                Optional.of(Distribution.ofWeights(ImmutableMap.of(YELLOW, 2, WILD, 1))),
                cross.probable(List.of("coat")));
    }

    @Test
    void whoever_is_to_be_weighed_needs_frequencies() {
        Parent open = Parent.among(GenotypeSet.parse(MODEL, "P/-", OmittedLoci.UNKNOWN));
        Parent known = Parent.among(GenotypeSet.parse(MODEL, "Y/a P/P", OmittedLoci.UNKNOWN));
        UncertainCross cross = UncertainCross.of(COMPILED, known, open);
        assertEquals(Map.of("dam", List.of("A")), cross.missingFrequencies(Census.BORN));
        assertEquals(Map.of("dam", List.of("A", "P")), cross.missingFrequencies(List.of("coat", "eye")));
        for (Executable question : List.<Executable>of(
                () -> cross.probable(List.of("coat")),
                () -> cross.explain(List.of("coat")),
                () -> cross.lostShare(Census.BORN))) {
            ProblemsException refused = assertThrows(ProblemsException.class, question);
            assertTrue(
                    refused.getMessage().startsWith("the dam is only partly known at A, and no population is named"),
                    refused.getMessage());
        }
        // a contradiction needs no frequencies, since there is no such animal
        UncertainCross none =
                UncertainCross.of(COMPILED, Parent.among(GenotypeSet.parse(MODEL, "Y/Y", OmittedLoci.UNKNOWN)), known);
        assertEquals(Map.of(), none.missingFrequencies(List.of("coat", "eye")));
        assertEquals(Optional.empty(), none.probable(List.of("eye")));
    }

    /** A population of red eyes only, which says nothing of the coat. */
    @Test
    void a_population_may_lack_a_locus_or_rule_an_animal_out() {
        Model model = builder()
                .population(
                        "red", red -> red.frequency("P", "P", Probability.ZERO).frequency("P", "p", Probability.ONE))
                .build();
        CompiledModel compiled = CompiledModel.of(model);
        Parent dark = Parent.among(GenotypeSet.parse(model, "P/-", OmittedLoci.UNKNOWN))
                .from(model.populations().get("red"));
        Parent any = Parent.among(GenotypeSet.parse(model, "P:?", OmittedLoci.UNKNOWN))
                .from(model.populations().get("red"));
        assertEquals(Optional.empty(), UncertainCross.of(compiled, dark, any).probable(List.of("eye")));
        assertEquals(
                Optional.of(Distribution.certain(Phenotype.of("eye", "red"))),
                UncertainCross.of(compiled, any, any).probable(List.of("eye")));
        ProblemsException refused = assertThrows(
                ProblemsException.class,
                () -> UncertainCross.of(compiled, any, any).probable(List.of("coat")));
        assertEquals(2, refused.problems().size());
        assertTrue(
                refused.getMessage()
                        .contains(
                                "the sire is only partly known at A, and population \"red\" gives no frequencies there"),
                refused.getMessage());
    }

    @Test
    void a_dam_that_was_seen_to_be_a_male_is_none() {
        Sighting male = Sighting.of(Phenotype.of("sex", "male"));
        Parent yellow = parent("Y/a P/P");
        assertTrue(UncertainCross.of(COMPILED, yellow, yellow.seen(male)).isContradictory());
        assertFalse(UncertainCross.of(COMPILED, yellow.seen(male), yellow).isContradictory());
    }
}
