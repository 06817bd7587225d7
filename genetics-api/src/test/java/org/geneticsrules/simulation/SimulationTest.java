package org.geneticsrules.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.model.Viability;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.testing.Once;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Clock;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Confusion;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Trait;
import org.junit.jupiter.api.Test;

/** What a simulation returns, and what it refuses. */
@Once
class SimulationTest {

    private static final Model COAT = TextbookDrawsTest.coat();
    static final CompiledModel COMPILED = CompiledModel.of(COAT);

    static Founder coat(String genotype) {
        return Founder.of(Genotype.parse(COAT, genotype));
    }

    static Simulation simulation() {
        return Simulation.of(COMPILED).seeded(7).looking(PlannedLook.at("hue", "sex"));
    }

    /** White hairs that come with the moults, a spot by chance that is told from week 8 and in daylight. */
    static Model changing() {
        Catalogue catalogue = Catalogue.builder("changing.traits", "1")
                .seasons("summer", "winter")
                .lights("daylight", "lamplight")
                .trait(Trait.of("white hairs", "few", "half", "all"))
                .trait(Trait.of("spot", "absent", "present")
                        .judgeableFrom(LifeStage.atWeek(8))
                        .judgeableIn(List.of("daylight")))
                .build();
        return Model.builder("changing", "1", catalogue)
                .locus(
                        "M",
                        at -> at.alleles("M", "m")
                                .shows("M", "plain")
                                .shows("M/m", "one")
                                .shows("m", "two"))
                .trait(
                        "white hairs",
                        rule -> rule.otherwise(
                                new CaseState.Progression(
                                        Clock.MOULT,
                                        Distribution.certain("few"),
                                        Map.of(
                                                "few", even("few", "half"),
                                                "half", even("half", "all")),
                                        true),
                                Optional.empty()))
                .trait(
                        "spot",
                        rule -> rule.when(
                                        "spotted",
                                        Condition.where("M", "one", "two"),
                                        new CaseState.Chance(even("absent", "present")))
                                .otherwise("absent"))
                .build();
    }

    private static Distribution<String> even(String one, String other) {
        return Distribution.ofWeights(new LinkedHashMap<>(Map.of(one, 1, other, 1)));
    }

    // ---- chance ----------------------------------------------------------------------------------------------------

    @Test
    void a_seed_draws_the_same_on_every_jdk() {
        List<String> kits = simulation()
                .litters(coat("C/c B/b"), coat("C/c B/b"), LitterSize.of(3), Census.BORN)
                .limit(2)
                .flatMap(litter -> litter.kits().stream())
                .map(kit -> kit + ": " + kit.state(0, "hue").orElseThrow())
                .toList();
        assertEquals(
                List.of(
                        "male C/c b/b: brown",
                        "male C/c B/B: black",
                        "male C/C B/b: black",
                        "female C/C B/b: black",
                        "female c/c B/B: white",
                        "male C/C B/B: black"),
                kits);
        assertEquals(new Randomness("L64X128MixRandom", 7), simulation().randomness());
        assertEquals("L64X128MixRandom 7", simulation().randomness().toString());
    }

    @Test
    void each_stream_begins_anew_and_other_chance_draws_others() {
        BreedingPlan plan = BreedingPlan.of(Founder.from(COAT, "kennel"), 3, 4, 3, 5, LitterSize.of(4));
        List<Pedigree> first = records(simulation(), plan);
        assertEquals(first, records(simulation(), plan));
        assertNotEquals(first.get(0).individuals(), first.get(1).individuals());
        assertNotEquals(first, records(simulation().seeded(8), plan));
        assertNotEquals(
                first.get(0).individuals(),
                records(simulation().with(new Randomness("Xoshiro256PlusPlus", 7)), plan)
                        .get(0)
                        .individuals());
        assertEquals(
                first,
                simulation()
                        .kennels(plan)
                        .parallel()
                        .limit(2)
                        .map(DrawnPedigree::records)
                        .toList());
    }

    private static List<Pedigree> records(Simulation simulation, BreedingPlan plan) {
        return simulation.kennels(plan).limit(2).map(DrawnPedigree::records).toList();
    }

    @Test
    void a_generator_that_is_unknown_or_cannot_repeat_itself_is_refused() {
        Problem problem = refusal(() -> new Randomness("L64X128MixRandon", 1)).get(0);
        assertEquals("unknown-generator", problem.code());
        assertEquals(Optional.of("L64X128MixRandom"), problem.nearest());
        assertEquals(
                "unknown-generator",
                refusal(() -> new Randomness("SecureRandom", 1)).get(0).code());
    }

    // ---- what is written down --------------------------------------------------------------------------------------

    @Test
    void traits_that_cannot_be_told_yet_or_in_that_light_are_left_out() {
        Model model = changing();
        PlannedLook early = PlannedLook.at("white hairs", "spot").when(LifeStage.parse("week 2, moult 0"));
        PlannedLook dim = early.when(LifeStage.parse("week 60, moult 3")).in("lamplight");
        DrawnLitter litter = Simulation.of(CompiledModel.of(model))
                .looking(early, dim, dim.in("daylight"))
                .litters(
                        Founder.of(Genotype.parse(model, "m/m")),
                        Founder.of(Genotype.parse(model, "m/m")),
                        LitterSize.of(4),
                        Census.SCORED)
                .findFirst()
                .orElseThrow();
        for (DrawnAnimal kit : litter.kits()) {
            List<Observation> seen = kit.observations();
            assertEquals(List.of("white hairs"), List.copyOf(seen.get(0).traits()));
            assertEquals(List.of("white hairs"), List.copyOf(seen.get(1).traits()));
            assertEquals(Optional.of("lamplight"), seen.get(1).light());
            assertEquals(List.of("white hairs", "spot"), List.copyOf(seen.get(2).traits()));
            assertEquals(LifeStage.parse("week 60, moult 3"), seen.get(2).stage());
            assertEquals(Optional.of("few"), kit.state(0, "white hairs"));
            assertEquals(kit.state(1, "white hairs"), kit.state(2, "white hairs"));
            assertEquals(kit.state(0, "spot"), kit.state(2, "spot"));
            assertEquals(
                    kit.state(2, "spot"),
                    kit.looks().get(2).traits().get("spot").shown());
        }
        DrawnAnimal kit = litter.kits().get(0);
        assertThrows(IllegalArgumentException.class, () -> kit.state(0, "hue"));
    }

    @Test
    void misreadings_and_wrong_tests_are_as_frequent_as_stated() {
        Confusions taken =
                Confusions.of(List.of(new Confusion("hue", "white", "brown", Optional.empty(), Probability.of(1, 3))));
        Shares<String> read = new Shares<>();
        Shares<String> tested = new Shares<>();
        simulation()
                .misreading(taken)
                .looking(PlannedLook.at("hue").ofShare(Probability.of(1, 2)))
                .testing(PlannedTest.at("C").withError(Probability.of(1, 5)).ofShare(Probability.of(3, 4)))
                .litters(coat("c/c B/B"), coat("c/c B/B"), LitterSize.of(1), Census.BORN)
                .limit(3_000)
                .map(litter -> litter.kits().get(0))
                .forEach(kit -> {
                    assertEquals(Optional.of("white"), kit.state(0, "hue"));
                    read.add(kit.observations().stream()
                            .map(seen -> seen.looks() + "")
                            .findFirst()
                            .orElse(""));
                    tested.add(kit.tests().stream()
                            .map(one -> one.result() + "")
                            .findFirst()
                            .orElse(""));
                });
        read.agreeWith(
                Map.of(
                        "", Probability.of(1, 2),
                        "[hue: white]", Probability.of(1, 3),
                        "[hue: brown]", Probability.of(1, 6)),
                () -> "readings");
        tested.agreeWith(
                Map.of(
                        "", Probability.of(1, 4),
                        "[c/c]", Probability.of(3, 5),
                        "[C/c]", Probability.of(3, 40),
                        "[C/C]", Probability.of(3, 40)),
                () -> "tests");
    }

    // ---- structures ------------------------------------------------------------------------------------------------

    @Test
    void a_plan_keeps_its_structure_and_gets_new_records() {
        Individual bare = Individual.of("kit 1").bornOn(LocalDate.of(2026, 5, 1));
        Pedigree plan = Pedigree.builder("kennel", "2")
                .title("A kennel")
                .add(Individual.of("hob", Sex.MALE).from("kennel"))
                .add(Individual.of("old hob", Sex.MALE))
                .add(Individual.of("jill", Sex.FEMALE).from("kennel"))
                .add(bare.with(Observation.of(LifeStage.unstated(), Phenotype.of("hue", "black")))
                        .with(GenotypeTest.of(COAT.locus("C").pair("C", "C"))))
                .add(Individual.of("kit 2"))
                .add(Litter.of(
                                "litter",
                                Optional.of("jill"),
                                Paternity.perKit(
                                        Paternity.Candidate.of("hob", Probability.of(1, 2)),
                                        Paternity.Candidate.of("old hob", Probability.of(1, 2))),
                                "kit 1",
                                "kit 2")
                        .counting(5, 4))
                .add(Litter.of("unborn", Optional.of("jill"), Paternity.unknown()))
                .build();
        Map<String, Founder> founders = Map.of(
                "old hob",
                Founder.of(Genotype.parse(COAT, "c/c b/b")),
                "jill",
                Founder.among(GenotypeSet.parse(COAT, "c/c", OmittedLoci.UNKNOWN), "kennel"));
        Shares<String> sires = new Shares<>();
        simulation().pedigrees(plan, founders).limit(2_000).forEach(drawn -> {
            assertEquals(
                    plan.litters().values().stream()
                            .map(litter -> litter.with(Ascertainment.complete()))
                            .toList(),
                    List.copyOf(drawn.records().litters().values()));
            assertEquals(Optional.of("A kennel"), drawn.records().title());
            Individual kit = drawn.records().individual("kit 1");
            assertEquals(bare.born(), kit.born());
            assertEquals(1, kit.observations().size());
            assertEquals(List.of(), kit.tests());
            assertEquals(Optional.of(drawn.animal("kit 1").sex()), kit.sex());
            assertEquals("c/c", pair(drawn.animal("jill"), "C"));
            assertEquals("c/c b/b", drawn.animal("old hob").genotype().toString());
            DrawnLitter litter = drawn.litters().get("litter");
            assertEquals(drawn.animal("jill"), litter.dam());
            assertEquals(List.of(drawn.animal("kit 1"), drawn.animal("kit 2")), litter.kits());
            for (int i = 0; i < 2; i++) {
                String sire = litter.sire(i).id().orElseThrow();
                if (sire.equals("old hob")) {
                    assertEquals("c/c", pair(litter.kits().get(i), "C"));
                }
            }
            sires.add(litter.sire(0).id().orElseThrow() + litter.sire(1).id().orElseThrow());
            assertEquals(Optional.empty(), drawn.litters().get("unborn").sire(0).id());
        });
        Probability each = Probability.of(1, 4);
        sires.agreeWith(
                Map.of("hobhob", each, "hobold hob", each, "old hobhob", each, "old hobold hob", each), () -> "sires");
    }

    private static String pair(DrawnAnimal animal, String locus) {
        return animal.genotype().pair(locus).orElseThrow().toString();
    }

    @Test
    void a_breeding_structure_has_its_founders_generations_and_litters() {
        LitterSize size = LitterSize.named("two or three", Distribution.ofWeights(Map.of(2, 1, 3, 1)));
        BreedingPlan plan = new BreedingPlan(
                List.of(coat("C/c B/b"), Founder.from(COAT, "kennel")),
                List.of(coat("C/c B/b"), coat("c/c b/b"), Founder.from(COAT, "kennel")),
                3,
                4,
                size,
                Census.BORN);
        DrawnPedigree drawn = simulation().kennels(plan).findFirst().orElseThrow();
        Pedigree records = drawn.records();
        assertEquals(5, records.founders().size());
        assertEquals(12, records.litters().size());
        assertEquals(
                List.copyOf(records.individuals().keySet()),
                List.copyOf(drawn.animals().keySet()));
        assertEquals(List.of(), records.problemsUnder(COAT));
        records.litters().values().forEach(litter -> {
            int kits = litter.kits().size();
            assertTrue(kits == 2 || kits == 3);
            assertEquals(kits, litter.bornCount().orElseThrow());
        });
        assertEquals("kit 3.4.1", records.litters().get("litter 3.4").kits().get(0));
        assertTrue(records.parentsOf("kit 2.1.1").stream().allMatch(id -> id.startsWith("kit 1.")));
        assertTrue(Inference.of(COMPILED, records).from("kennel").conclude().isConsistent());
        assertThrows(IllegalArgumentException.class, () -> drawn.animal("nobody"));
        assertThrows(
                IllegalArgumentException.class,
                () -> BreedingPlan.of(Founder.from(COAT, "kennel"), 0, 1, 1, 1, LitterSize.of(1)));
        assertThrows(
                IllegalArgumentException.class,
                () -> BreedingPlan.of(Founder.from(COAT, "kennel"), 1, 1, 0, 1, LitterSize.of(1)));
    }

    @Test
    void parents_who_lose_all_young_have_none() {
        Model model = Model.builder(
                        "lost",
                        "1",
                        Catalogue.builder("lost.traits", "1")
                                .trait("coat", "plain", "other")
                                .build())
                .locus(
                        "A",
                        at -> at.alleles("A", "a")
                                .shows("A", "two")
                                .shows("A/a", "one")
                                .shows("a", "none"))
                .trait("coat", rule -> rule.otherwise("plain"))
                .viability(Viability.lethal("lost", "A", "one"))
                .population(
                        "half",
                        at -> at.frequency("A", "A", Probability.of(1, 2)).frequency("A", "a", Probability.of(1, 2)))
                .build();
        Simulation simulation = Simulation.of(CompiledModel.of(model)).within(5);
        Founder two = Founder.of(Genotype.parse(model, "A/A"));
        Founder none = Founder.of(Genotype.parse(model, "a/a"));
        DrawnLitter lost = simulation
                .litters(two, none, LitterSize.of(4), Census.CONCEIVED)
                .findFirst()
                .orElseThrow();
        assertEquals(4, lost.lost());
        assertEquals(0, lost.born());
        TooRareException never = assertThrows(
                TooRareException.class,
                () -> simulation
                        .litters(two, none, LitterSize.of(4), Census.BORN)
                        .findFirst());
        assertEquals(5, never.tries());
        // parents drawn from a population are such as can have the kits they have
        Shares<String> sires = new Shares<>();
        Simulation.of(CompiledModel.of(model))
                .litters(Founder.from(model, "half"), two, LitterSize.of(1), Census.BORN)
                .limit(200)
                .forEach(litter -> sires.add(litter.sire(0).genotype().toString()));
        assertEquals(200, sires.of("A/A"));
        Pedigree plan = Pedigree.builder("lost", "1")
                .add(Individual.of("hob", Sex.MALE))
                .add(Individual.of("jill", Sex.FEMALE))
                .add(Individual.of("kit"))
                .add(Litter.of("litter", "jill", "hob", "kit"))
                .build();
        assertThrows(
                TooRareException.class,
                () -> simulation
                        .pedigrees(plan, Map.of("hob", two, "jill", none))
                        .findFirst());
        Shares<String> kits = new Shares<>();
        Simulation.of(CompiledModel.of(model))
                .from("half")
                .pedigrees(plan, Map.of())
                .limit(1_000)
                .forEach(drawn -> kits.add(drawn.animal("kit").genotype().toString()));
        kits.agreeWith(Map.of("A/A", Probability.of(1, 2), "a/a", Probability.of(1, 2)), () -> "kits");
    }

    // ---- refusals --------------------------------------------------------------------------------------------------

    private static List<Problem> refusal(Runnable asked) {
        return assertThrows(ProblemsException.class, asked::run).problems();
    }

    static List<String> codes(Runnable asked) {
        return refusal(asked).stream()
                .map(one -> one.code() + " " + one.pointer())
                .toList();
    }

    @Test
    void all_that_is_wrong_is_told_at_once() {
        Model model = changing();
        Simulation wrong = Simulation.of(CompiledModel.of(model))
                .looking(
                        PlannedLook.at("white hair", "spot"),
                        PlannedLook.at("spot")
                                .when(LifeStage.atWeek(9).in("wintr"))
                                .in("moonlight"),
                        PlannedLook.at("white hairs"))
                .testing(PlannedTest.at("N"))
                .keeping(Ascertainment.atLeastOne(Phenotype.of("spot", "there")));
        assertEquals(
                List.of(
                        "unknown-trait /looks/0/traits",
                        "unknown-season /looks/1/stage/season",
                        "unknown-light /looks/1/light",
                        "stage-needed /looks/2/stage",
                        "unknown-locus /tests/0/locus",
                        "unknown-state /ascertainment/look",
                        "frequencies-needed /sire",
                        "unknown-population /dam"),
                codes(() -> wrong.litters(
                        new Founder(
                                GenotypeSet.all(model),
                                Genotype.parse(model, "m/m").phase(),
                                Optional.empty()),
                        Founder.from(model, "kennel"),
                        LitterSize.of(1),
                        Census.BORN)));
        assertEquals(
                List.of("look-not-planned /ascertainment/look", "other-model /sire"),
                codes(() -> Simulation.of(COMPILED)
                        .keeping(Ascertainment.atLeastOne(Phenotype.of("hue", "white")))
                        .litters(
                                Founder.of(Genotype.parse(model, "m/m")),
                                coat("C/c B/b"),
                                LitterSize.of(1),
                                Census.BORN)));
    }

    @Test
    void founders_of_a_plan_have_to_be_known_well_enough() {
        Pedigree plan = Pedigree.builder("kennel", "1")
                .add(Individual.of("jill", Sex.FEMALE).from("kennl"))
                .add(Individual.of("kit"))
                .add(Litter.of("litter", Optional.of("jill"), Paternity.unknown(), "kit"))
                .build();
        Map<String, Founder> founders = new LinkedHashMap<>();
        founders.put("kit", coat("C/c B/b"));
        founders.put("hob", coat("C/c B/b"));
        assertEquals(
                List.of(
                        "no-founder /founders/kit",
                        "unknown-individual /founders/hob",
                        "unknown-population /individuals/jill",
                        "unknown-population /litters/litter/sires"),
                codes(() -> simulation().pedigrees(plan, founders)));
        assertEquals(
                List.of("unknown-population /founders/jill", "unknown-population /litters/litter/sires"),
                codes(() -> simulation()
                        .pedigrees(plan, Map.of("jill", coat("C/c B/b").from("kennell")))));
        assertTrue(simulation()
                .from("kennel")
                .pedigrees(plan, Map.of("jill", coat("C/c B/b").from("kennel")))
                .findFirst()
                .isPresent());
    }

    @Test
    void plans_of_nothing_are_refused() {
        assertThrows(IllegalArgumentException.class, PlannedLook::at);
        assertThrows(IllegalArgumentException.class, () -> PlannedLook.at("hue").ofShare(Probability.ZERO));
        assertThrows(IllegalArgumentException.class, () -> PlannedTest.at("C").withError(Probability.ONE));
        assertThrows(IllegalArgumentException.class, () -> PlannedTest.at("C").ofShare(Probability.ZERO));
    }
}
