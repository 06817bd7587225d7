package org.geneticsrules.simulation;

import static org.geneticsrules.simulation.SimulationTest.COMPILED;
import static org.geneticsrules.simulation.SimulationTest.changing;
import static org.geneticsrules.simulation.SimulationTest.coat;
import static org.geneticsrules.simulation.SimulationTest.codes;
import static org.geneticsrules.simulation.SimulationTest.simulation;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.junit.jupiter.api.Test;

/** How litters that are drawn come to be recorded. */
class SelectionTest {

    private static final Sighting WHITE = Sighting.of(Phenotype.of("hue", "white"));

    private static final Map<String, Founder> CARRIERS = Map.of("hob", coat("C/c B/b"), "jill", coat("C/c B/b"));

    @Test
    void what_nothing_can_be_drawn_by_is_refused() {
        Map<Ascertainment, String> messages = Map.of(
                Ascertainment.unknown(),
                "what is drawn came to be recorded in a known way, but \"not stated\" was asked for; expected complete, at least"
                        + " one, probands, or parents chosen",
                new Ascertainment.Probands(WHITE, Probability.of(1, 2), OptionalInt.of(2)),
                "how many probands a litter has is drawn, but 2 were asked for; expected probands without a count");
        messages.forEach((how, message) -> assertEquals(
                message,
                assertThrows(IllegalArgumentException.class, () -> simulation().keeping(how))
                        .getMessage()));
    }

    @Test
    void each_litter_says_how_it_was_drawn() {
        Pedigree plan = Pedigree.builder("two litters", "1")
                .add(Individual.of("hob", Sex.MALE))
                .add(Individual.of("jill", Sex.FEMALE))
                .add(Individual.of("one"))
                .add(Individual.of("two"))
                .add(Individual.of("three"))
                .add(Litter.of("first", "jill", "hob", "one", "two"))
                .add(Litter.of("second", "jill", "hob", "three")
                        .with(Ascertainment.atLeastOne(Phenotype.of("hue", "black"))))
                .build();
        Simulation drawing =
                Simulation.of(COMPILED).seeded(7).looking(PlannedLook.at("hue"), PlannedLook.at("hue", "sex"));
        DrawnPedigree all = drawing.pedigrees(plan, CARRIERS).findFirst().orElseThrow();
        all.records()
                .litters()
                .values()
                .forEach(litter -> assertEquals(Ascertainment.complete(), litter.ascertainment()));
        assertTrue(all.probands().isEmpty());
        Probability half = Probability.of(1, 2);
        drawing.keeping(new Ascertainment.Probands(WHITE, half, OptionalInt.empty()))
                .pedigrees(plan, CARRIERS)
                .limit(50)
                .forEach(drawn -> {
                    drawn.records().litters().values().forEach(litter -> {
                        DrawnLitter truth = drawn.litters().get(litter.id());
                        int probands = truth.probands().size();
                        assertEquals(
                                new Ascertainment.Probands(WHITE, half, OptionalInt.of(probands)),
                                litter.ascertainment());
                        assertEquals(truth.ascertainment(), litter.ascertainment());
                        assertTrue(truth.kits().containsAll(truth.probands()));
                    });
                    assertTrue(drawn.probands().stream().allMatch(kit -> kit.isRecordedWith(WHITE.look())));
                    assertTrue(drawn.probands().size() >= 2 && drawn.tried() >= 1);
                });
        drawing.keeping(new Ascertainment.AtLeastOne(WHITE))
                .kennels(BreedingPlan.of(coat("C/c B/b"), 2, 2, 2, 2, LitterSize.of(4)))
                .limit(20)
                .forEach(drawn -> {
                    assertEquals(4, drawn.records().litters().size());
                    drawn.records().litters().values().forEach(litter -> {
                        assertEquals(new Ascertainment.AtLeastOne(WHITE), litter.ascertainment());
                        assertTrue(litter.kits().stream()
                                .anyMatch(kit -> drawn.animal(kit).isRecordedWith(WHITE.look())));
                    });
                });
    }

    /** Hairs are half white after one moult or after two; which of these brings a litter to notice is a matter of the sign. */
    @Test
    void a_sign_is_looked_for_when_it_says() {
        Phenotype half = Phenotype.of("white hairs", "half");
        LifeStage first = LifeStage.atMoult(1);
        LifeStage second = LifeStage.atMoult(2);
        Simulation drawing = Simulation.of(CompiledModel.of(changing()))
                .looking(
                        PlannedLook.at("white hairs").when(first),
                        PlannedLook.at("white hairs").when(second));
        Founder plain = Founder.of(Genotype.parse(changing(), "M/M"));
        for (Sighting sign : List.of(new Sighting(first, half), new Sighting(second, half), Sighting.of(half))) {
            drawing.keeping(new Ascertainment.AtLeastOne(sign))
                    .litters(plain, plain, LitterSize.of(3), Census.BORN)
                    .limit(200)
                    .forEach(litter -> {
                        assertEquals(new Ascertainment.AtLeastOne(sign), litter.ascertainment());
                        for (DrawnAnimal kit : litter.kits()) {
                            boolean before = kit.state(0, "white hairs").equals(Optional.of("half"));
                            boolean after = kit.state(1, "white hairs").equals(Optional.of("half"));
                            boolean shows = sign.stage().equals(first)
                                    ? before
                                    : sign.stage().equals(second) ? after : before || after;
                            assertEquals(shows, litter.probands().contains(kit), kit::toString);
                        }
                    });
        }
        assertEquals(
                List.of("look-not-planned /ascertainment/look"),
                codes(() -> drawing.keeping(new Ascertainment.AtLeastOne(new Sighting(LifeStage.atMoult(3), half)))
                        .litters(plain, plain, LitterSize.of(3), Census.BORN)));
    }

    @Test
    void a_sign_seen_at_one_look_alone_is_told_with_stage_and_light() {
        Model model = changing();
        LifeStage ninth = LifeStage.atWeek(9);
        Phenotype spot = Phenotype.of("spot", "present");
        Founder mixed = Founder.of(Genotype.parse(model, "M/m"));
        Simulation drawing = Simulation.of(CompiledModel.of(model))
                .looking(
                        PlannedLook.at("spot").when(LifeStage.atWeek(3)).in("daylight"),
                        PlannedLook.at("spot").when(ninth).in("daylight"),
                        PlannedLook.at("spot").when(ninth).in("lamplight"));
        for (Sighting sign : List.of(Sighting.of(spot), Sighting.of(spot).in("daylight"), new Sighting(ninth, spot))) {
            assertEquals(
                    new Ascertainment.AtLeastOne(new Sighting(ninth, spot).in("daylight")),
                    drawing.keeping(new Ascertainment.AtLeastOne(sign))
                            .litters(mixed, mixed, LitterSize.of(3), Census.BORN)
                            .findFirst()
                            .orElseThrow()
                            .ascertainment());
        }
        assertEquals(
                List.of("look-not-planned /ascertainment/look"),
                codes(() -> drawing.keeping(
                                new Ascertainment.AtLeastOne(Sighting.of(spot).in("lamplight")))
                        .litters(mixed, mixed, LitterSize.of(3), Census.BORN)));
    }

    @Test
    void where_a_kit_brings_its_litter_to_notice_all_that_are_scored_are_listed_and_looked_at() {
        Pedigree plan = Pedigree.builder("counted", "1")
                .add(Individual.of("hob", Sex.MALE))
                .add(Individual.of("jill", Sex.FEMALE))
                .add(Individual.of("one"))
                .add(Individual.of("two"))
                .add(Litter.of("first", "jill", "hob", "one").counting(4, 3))
                .add(Litter.of("second", "jill", "hob"))
                .add(Litter.of("third", "jill", "hob", "two").counting(4, 1))
                .build();
        Simulation some = simulation().looking(PlannedLook.at("hue").ofShare(Probability.of(1, 2)));
        assertEquals(
                List.of(
                        "look-at-some /looks/0/share",
                        "kits-not-listed /litters/first/kits",
                        "kits-not-listed /litters/second/kits"),
                codes(() -> some.keeping(new Ascertainment.AtLeastOne(WHITE)).pedigrees(plan, CARRIERS)));
        assertTrue(some.pedigrees(plan, CARRIERS).findFirst().isPresent());
    }

    /**
     * Of parents who had a white kit each passed c to it, and one who passed c is c/c with the frequency q of c and else C/c, whatever its
     * population (of all that pass c, c/c makes q² and C/c 2pq/2); here q is 3/10. Of two dark parents both are carriers for certain, and a
     * quarter of the further kits are white.
     */
    @Test
    void parents_chosen_by_an_earlier_kit_are_such_as_have_one() {
        Ascertainment chosen = new Ascertainment.ParentsChosen(WHITE);
        Founder any = Founder.from(COMPILED.model(), "kennel");
        Shares<String> parents = new Shares<>();
        Shares<String> kits = new Shares<>();
        simulation()
                .keeping(chosen)
                .litters(any, any, LitterSize.of(2), Census.BORN)
                .limit(3_000)
                .forEach(litter -> {
                    parents.add(pair(litter.dam()) + " and " + pair(litter.sire(0)));
                    kits.add(litter.kits().get(0).state(0, "hue").orElseThrow().equals("white") ? "white" : "other");
                    DrawnAnimal earlier = litter.earlier().orElseThrow();
                    assertTrue(earlier.isRecordedWith(WHITE.look()));
                    assertTrue(litter.probands().isEmpty() && litter.kits().size() == 2 && litter.conceived() == 2);
                    assertEquals(chosen, litter.ascertainment());
                });
        parents.agreeWith(
                Map.of(
                        "C/c and C/c", Probability.of(49, 100),
                        "C/c and c/c", Probability.of(21, 100),
                        "c/c and C/c", Probability.of(21, 100),
                        "c/c and c/c", Probability.of(9, 100)),
                () -> "parents");
        // a parent passes c with 7/10 x 1/2 + 3/10 = 13/20
        kits.agreeWith(
                Map.of("white", Probability.of(169, 400), "other", Probability.of(231, 400)), () -> "further kits");
    }

    private static String pair(DrawnAnimal animal) {
        return animal.genotype().pair("C").orElseThrow().toString();
    }

    /** The earlier kit stands in no record, in a plan as in a kennel; each litter has one. */
    @Test
    void the_earlier_kit_is_not_recorded() {
        Simulation drawing = simulation().from("kennel").keeping(new Ascertainment.ParentsChosen(WHITE));
        Pedigree plan = Pedigree.builder("two hobs", "1")
                .add(Individual.of("hob", Sex.MALE))
                .add(Individual.of("other hob", Sex.MALE))
                .add(Individual.of("jill", Sex.FEMALE))
                .add(Individual.of("one"))
                .add(Individual.of("two"))
                .add(Litter.of(
                        "first",
                        Optional.of("jill"),
                        Paternity.perKit(
                                Paternity.Candidate.of("hob", Probability.of(1, 2)),
                                Paternity.Candidate.of("other hob", Probability.of(1, 2))),
                        "one",
                        "two"))
                .add(Litter.of("not yet", "jill", "hob"))
                .build();
        Map<String, Founder> founders = Map.of("hob", coat("C/C B/b"), "jill", coat("C/c B/b"));
        assertThrows(
                TooRareException.class,
                () -> drawing.within(200).pedigrees(plan, founders).findFirst(),
                "hob has no white kit, so the second litter is never heard of");
        Pedigree first = Pedigree.builder("first", "1")
                .add(Individual.of("hob", Sex.MALE))
                .add(Individual.of("other hob", Sex.MALE))
                .add(Individual.of("jill", Sex.FEMALE))
                .add(Individual.of("one"))
                .add(Individual.of("two"))
                .add(plan.litters().get("first"))
                .build();
        Shares<String> other = new Shares<>();
        drawing.pedigrees(first, founders).limit(1_000).forEach(drawn -> {
            other.add(pair(drawn.animal("other hob")));
            assertEquals(5, drawn.records().individuals().size());
            assertTrue(drawn.litters().get("first").earlier().isPresent());
            assertEquals(
                    new Ascertainment.ParentsChosen(WHITE),
                    drawn.records().litters().get("first").ascertainment());
        });
        other.agreeWith(Map.of("C/c", Probability.of(7, 10), "c/c", Probability.of(3, 10)), () -> "the other hob");
        DrawnPedigree kennel = drawing.kennels(BreedingPlan.of(coat("C/c B/b"), 2, 2, 1, 2, LitterSize.of(3)))
                .findFirst()
                .orElseThrow();
        assertEquals(4 + 2 * 3, kennel.records().individuals().size());
        kennel.litters()
                .values()
                .forEach(litter -> assertTrue(litter.earlier().orElseThrow().isRecordedWith(WHITE.look())));
    }
}
