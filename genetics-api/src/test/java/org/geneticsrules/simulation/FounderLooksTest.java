package org.geneticsrules.simulation;

import static org.geneticsrules.simulation.SimulationTest.COMPILED;
import static org.geneticsrules.simulation.SimulationTest.codes;
import static org.geneticsrules.simulation.SimulationTest.simulation;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Confusion;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.junit.jupiter.api.Test;

/** Parents that are known by their looks, and looks and tests of parents or kits alone. */
class FounderLooksTest {

    private static final PlannedLook OF_PARENTS = PlannedLook.at("hue").of(Whom.FOUNDERS);
    private static final PlannedLook OF_KITS = PlannedLook.at("hue").of(Whom.KITS);

    private static Founder seen(String hue) {
        return Founder.from(COMPILED.model(), "kennel").seen(Sighting.of(Phenotype.of("hue", hue)));
    }

    private static String pair(DrawnAnimal animal, String locus) {
        return animal.genotype().pair(locus).orElseThrow().toString();
    }

    /** Black or brown animals are C/C or C/c as 49 : 42, and of such as are black B/B and B/b are as 36 : 48 (p² : 2pq). */
    @Test
    void of_dominant_looks_carriers_are_as_frequent_as_hardy_and_weinberg_say() {
        Simulation drawing = simulation().looking(OF_PARENTS, OF_KITS);
        Shares<String> carriers = new Shares<>();
        drawing.litters(seen("black"), seen("brown"), LitterSize.of(1), Census.BORN)
                .limit(3_000)
                .forEach(litter -> {
                    DrawnAnimal sire = litter.sire(0);
                    assertEquals("b/b", pair(litter.dam(), "B"));
                    carriers.add(pair(sire, "C") + " " + pair(sire, "B"));
                });
        carriers.agreeWith(
                Map.of(
                        "C/C B/B", Probability.of(7 * 3, 13 * 7),
                        "C/C B/b", Probability.of(7 * 4, 13 * 7),
                        "C/c B/B", Probability.of(6 * 3, 13 * 7),
                        "C/c B/b", Probability.of(6 * 4, 13 * 7)),
                () -> "black sires");
    }

    /** With one white animal in three called black, black ones are 0.91 x 0.84 = 0.7644, and white ones called so 0.09 / 3 = 0.03. */
    @Test
    void a_recorded_look_may_be_a_misnamed_one() {
        Simulation drawing = simulation()
                .looking(OF_PARENTS)
                .misreading(Confusions.of(
                        List.of(new Confusion("hue", "white", "black", Optional.empty(), Probability.of(1, 3)))));
        Pedigree plan = Pedigree.builder("plan", "1")
                .add(Individual.of("hob", Sex.MALE))
                .add(Individual.of("jill", Sex.FEMALE))
                .add(Individual.of("kit"))
                .add(Litter.of("litter", "jill", "hob", "kit"))
                .build();
        Shares<String> truly = new Shares<>();
        drawing.from("kennel")
                .pedigrees(plan, Map.of("hob", seen("black")))
                .limit(4_000)
                .forEach(drawn -> {
                    DrawnAnimal hob = drawn.animal("hob");
                    assertEquals(
                            "[hue: black]", hob.observations().get(0).looks().toString());
                    assertTrue(drawn.animal("kit").observations().isEmpty());
                    truly.add(hob.state(0, "hue").orElseThrow());
                });
        truly.agreeWith(
                Map.of("black", Probability.of(7644, 7944), "white", Probability.of(300, 7944)), () -> "called black");
    }

    /** Pale on the X with 1/4: males are with 1/4 and females with 1/16, so of pale animals 4 in 5 are males. */
    @Test
    void a_look_says_something_of_a_sex_that_is_not_stated() {
        Catalogue traits =
                Catalogue.builder("x.traits", "1").trait("coat", "dark", "pale").build();
        Model model = Model.builder("x", "1", traits)
                .locus(
                        "A",
                        at -> at.alleles("D", "d")
                                .dominant("D", "d")
                                .shows("D", "plain")
                                .shows("d", "other"))
                .group(LinkageGroup.single(Transmission.X, "A"))
                .trait(
                        "coat",
                        rule -> rule.when(Condition.where("A", "other"), "pale").otherwise("dark"))
                .population(
                        "few",
                        one -> one.frequency("A", "D", Probability.of(3, 4)).frequency("A", "d", Probability.of(1, 4)))
                .build();
        Pedigree plan =
                Pedigree.builder("plan", "1").add(Individual.of("stray")).build();
        Shares<Sex> sexes = new Shares<>();
        Simulation.of(CompiledModel.of(model))
                .seeded(4)
                .looking(PlannedLook.at("coat"))
                .pedigrees(
                        plan,
                        Map.of("stray", Founder.from(model, "few").seen(Sighting.of(Phenotype.of("coat", "pale")))))
                .limit(3_000)
                .forEach(drawn -> sexes.add(drawn.animal("stray").sex()));
        sexes.agreeWith(Map.of(Sex.MALE, Probability.of(4, 5), Sex.FEMALE, Probability.of(1, 5)), () -> "pale strays");
    }

    @Test
    void parents_and_kits_are_looked_at_and_tested_by_themselves() {
        DrawnPedigree kennel = simulation()
                .looking(OF_PARENTS.when(LifeStage.atMoult(2)), OF_KITS.when(LifeStage.atWeek(8)))
                .testing(
                        PlannedTest.at("C").of(Whom.FOUNDERS),
                        PlannedTest.at("B").of(Whom.KITS))
                .kennels(BreedingPlan.of(seen("black"), 2, 2, 2, 2, LitterSize.of(2)))
                .findFirst()
                .orElseThrow();
        for (Individual one : kennel.records().individuals().values()) {
            boolean founder = kennel.records().litterOf(one.id()).isEmpty();
            assertEquals(
                    List.of(founder ? LifeStage.atMoult(2) : LifeStage.atWeek(8)),
                    one.observations().stream().map(seen -> seen.stage()).toList());
            assertEquals(
                    List.of(founder ? "C" : "B"),
                    one.tests().stream().map(test -> test.locus()).toList());
            if (founder) {
                assertEquals("[hue: black]", one.observations().get(0).looks().toString());
            }
        }
    }

    @Test
    void looks_that_nobody_writes_down_and_that_no_founder_has_are_told() {
        assertEquals(
                List.of("look-not-planned /sire/looks/0", "unknown-state /dam/looks/0"),
                codes(() -> simulation()
                                .looking(OF_KITS)
                                .litters(seen("black"), seen("green"), LitterSize.of(1), Census.BORN))
                        .subList(0, 2));
        TooRareException never = assertThrows(
                TooRareException.class,
                () -> simulation()
                        .looking(OF_PARENTS)
                        .within(50)
                        .litters(
                                SimulationTest.coat("C/C B/B").seen(Sighting.of(Phenotype.of("hue", "white"))),
                                seen("black"),
                                LitterSize.of(1),
                                Census.BORN)
                        .findFirst());
        assertTrue(never.getMessage().contains("recorded with [hue: white]"), never.getMessage());
    }
}
