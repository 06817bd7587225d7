package org.geneticsrules.planning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.planning.KitsNeeded.Design;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.simulation.Founder;
import org.geneticsrules.simulation.LitterPlan;
import org.geneticsrules.simulation.PlannedLook;
import org.geneticsrules.simulation.PlannedTest;
import org.geneticsrules.simulation.Simulation;
import org.geneticsrules.simulation.Whom;
import org.geneticsrules.statistics.BinomialInterval;
import org.geneticsrules.testing.Once;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.junit.jupiter.api.Test;

/** How often drawn litters reach the bar, against exact numbers. */
@Once
class PowerTest {

    /** An exact chance lies outside the interval of a drawn share less than once in ten million times. */
    private static final double SURE = 1 - 1e-7;

    private static void agrees(double exact, int count, int sets) {
        assertTrue(
                BinomialInterval.clopperPearson(count, sets, SURE).contains(exact),
                () -> count + " of " + sets + " for the exact chance " + exact);
    }

    /** Kits are looked at, and parents are tested. */
    private static Simulation tested(Model model) {
        return Simulation.of(CompiledModel.of(model))
                .seeded(11)
                .looking(PlannedLook.at("coat").of(Whom.KITS))
                .testing(PlannedTest.at("A").of(Whom.FOUNDERS));
    }

    private static List<Candidate> candidates(Model... models) {
        List<Candidate> all = new ArrayList<>();
        for (Model model : models) {
            all.add(Candidate.of(model));
        }
        return all;
    }

    private static Founder carrier(Model model) {
        return Founder.of(Genotype.parse(model, "D/d"));
    }

    /** Two thirds or three quarters dark: the exact numbers of litters of eight, by the binomial distribution, and what is drawn. Couples are all alike. */
    @Test
    void what_is_drawn_agrees_with_the_exact_number_of_litters() {
        List<Candidate> models = candidates(Pales.lethal(), Pales.recessive());
        Pedigree carriers = Pedigree.builder("pair", "1")
                .add(Individual.of("sire", Sex.MALE)
                        .with(GenotypeTest.of(Pales.recessive().locus("A").pair("D", "d"))))
                .add(Individual.of("dam", Sex.FEMALE)
                        .with(GenotypeTest.of(Pales.recessive().locus("A").pair("D", "d"))))
                .build();
        Worth exact = Distinguishing.of(models, carriers)
                .from("even")
                .surely(0.15)
                .worth(Step.planned("sire", "dam", 8, "coat"));
        for (int truth = 0; truth < 2; truth++) {
            KitsNeeded needed =
                    exact.needed(truth, 1 - truth, Design.LITTERS, 0.15).orElseThrow();
            Model model = models.get(truth).model();
            int litters = needed.litters().orElseThrow();
            EstimatedPower power = Power.of(
                            models,
                            truth,
                            tested(model),
                            LitterPlan.of(carrier(model), carrier(model), litters, LitterSize.of(8)))
                    .from("even")
                    .drawing(1000)
                    .estimate();
            EstimatedPower.AgainstRival rival = power.rivals().get(0);
            agrees(needed.reached(), rival.atTheEnd(), power.sets());
            assertTrue(rival.reached() >= rival.atTheEnd());
            assertEquals(rival.reached(), power.reached());
            assertEquals(20, power.bar());
            // looked at after every litter, so the bar is reached sooner than it stands at the end
            assertTrue(power.littersUntil(0.15).orElseThrow() <= litters + 2);
            assertTrue(BinomialInterval.clopperPearson(power.misled(), power.sets(), SURE)
                            .low()
                    <= 0.05);
        }
    }

    /** The ratio after each of three litters of two kits is gone through for all 64 sequences, dark being 3 in 4 or 2 in 3. */
    @Test
    void what_is_drawn_agrees_with_a_list_of_all_litters() {
        double bar = 1.15;
        double[] reachedBy = new double[3];
        double misled = 0;
        double neither = 0;
        for (int kits = 0; kits < 64; kits++) {
            double chance = 1;
            double ratio = 1;
            boolean down = false;
            int first = 3;
            for (int k = 0; k < 6; k++) {
                boolean dark = (kits >> k & 1) == 1;
                chance *= dark ? 0.75 : 0.25;
                ratio *= dark ? 0.75 / (2.0 / 3) : 0.25 / (1.0 / 3);
                if (k % 2 == 1) {
                    first = ratio >= bar ? Math.min(first, k / 2) : first;
                    down |= 1 / ratio >= bar;
                }
            }
            for (int t = first; t < 3; t++) {
                reachedBy[t] += chance;
            }
            misled += down ? chance : 0;
            neither += down || first < 3 ? 0 : chance;
        }
        Model model = Pales.recessive();
        EstimatedPower power = Power.of(
                        candidates(Pales.lethal(), model),
                        1,
                        tested(model),
                        LitterPlan.of(carrier(model), carrier(model), 3, LitterSize.of(2)))
                .from("even")
                .reaching(bar)
                .drawing(3000)
                .estimate();
        for (int t = 0; t < 3; t++) {
            agrees(reachedBy[t], power.reachedAfter().get(t), power.sets());
        }
        agrees(misled, power.misled(), power.sets());
        agrees(neither, power.neither(), power.sets());
    }

    /**
     * Two dark parents of whom nothing more is known. By a recessive they both carry with 2/3 x 2/3, and then k of four kits are pale with
     * C(4, k) (1/4)^k (3/4)^(4 - k); else none is. Where two doses are lethal both are carriers, and 1 in 3 is pale.
     */
    @Test
    void parents_who_are_known_by_their_looks_are_weighed_by_their_population() {
        double[] choose = {1, 4, 6, 4, 1};
        double reached = 0;
        double misled = 0;
        for (int k = 0; k <= 4; k++) {
            double recessive = 4.0 / 9 * choose[k] * Math.pow(0.25, k) * Math.pow(0.75, 4 - k) + (k == 0 ? 5.0 / 9 : 0);
            double lethal = choose[k] * Math.pow(1.0 / 3, k) * Math.pow(2.0 / 3, 4 - k);
            reached += recessive / lethal >= 3 ? recessive : 0;
            misled += lethal / recessive >= 3 ? recessive : 0;
        }
        Model model = Pales.recessive();
        Founder dark = Founder.from(model, "even").seen(Sighting.of(Phenotype.of("coat", "dark")));
        EstimatedPower power = Power.of(
                        candidates(model, Pales.lethal()),
                        0,
                        Simulation.of(CompiledModel.of(model)).seeded(5).looking(PlannedLook.at("coat")),
                        LitterPlan.of(dark, dark, 1, LitterSize.of(4)))
                .reaching(3)
                .drawing(3000)
                .estimate();
        agrees(reached, power.reached(), power.sets());
        agrees(misled, power.misled(), power.sets());
        assertTrue(reached > 0.5 && misled > 0.05, reached + " " + misled);
    }

    /** Of two kits, of whom at least one is pale, one is with 6/7 by a quarter and with 4/5 by a third: 15/14 to 1. */
    @Test
    void litters_noticed_for_a_kit_are_compared_as_such() {
        Model model = Pales.recessive();
        EstimatedPower power = Power.of(
                        candidates(model, Pales.lethal()),
                        0,
                        tested(model).keeping(Ascertainment.atLeastOne(Phenotype.of("coat", "pale"))),
                        LitterPlan.of(carrier(model), carrier(model), 1, LitterSize.of(2)))
                .from("even")
                .reaching(1.07)
                .drawing(2000)
                .estimate();
        agrees(6.0 / 7, power.reached(), power.sets());
        agrees(1.0 / 7, power.misled(), power.sets());
    }

    /** A wrong model reaches the bar in at most 1 of 20 sets (Ville 1939, from memory), with three models as with two, and however long it goes on. */
    @Test
    void a_wrong_model_seldom_reaches_the_bar() {
        Model model = Pales.recessive();
        Founder any = Founder.from(model, "even");
        EstimatedPower power = Power.of(
                        candidates(Pales.lethal(), model, Pales.twoLoci("two loci", Optional.empty())),
                        1,
                        Simulation.of(CompiledModel.of(model)).seeded(3).looking(PlannedLook.at("coat")),
                        new LitterPlan(any, any, 10, 2, LitterSize.of(5), Census.SCORED))
                .drawing(200)
                .estimate();
        assertEquals(40, power.bar());
        assertTrue(BinomialInterval.clopperPearson(power.misled(), power.sets(), SURE)
                        .low()
                <= 0.05);
        assertTrue(power.share(power.reached()) > 0.1, () -> power.reached() + " of " + power.sets());
        assertEquals(
                List.of(0, 2),
                power.rivals().stream().map(EstimatedPower.AgainstRival::rival).toList());
        assertEquals(20, power.reachedAfter().size());
        assertTrue(power.littersUntil(0.01).orElseThrow()
                <= power.littersUntil(0.1).orElseThrow());
    }

    /** A model that foretells the same is never told apart, and one that forbids a look is by the first such kit. */
    @Test
    void what_cannot_be_told_apart_never_is() {
        Model model = Pales.recessive();
        LitterPlan plan = LitterPlan.of(carrier(model), carrier(model), 4, LitterSize.of(3));
        EstimatedPower same = Power.of(
                        candidates(model, Pales.one("another", "D", "pale").build()), 0, tested(model), plan)
                .from("even")
                .drawing(50)
                .estimate();
        assertEquals(0, same.reached());
        assertEquals(50, same.neither());
        assertEquals(OptionalInt.empty(), same.littersUntil(0.5));
        EstimatedPower forbidden = Power.of(candidates(model, Pales.unrelated()), 0, tested(model), plan)
                .from("even")
                .drawing(2000)
                .estimate();
        agrees(1 - Math.pow(0.75, 12), forbidden.reached(), forbidden.sets());
        // twelve dark kits are 4/3 to 1 each for the model that knows no pale ones: 31 : 1
        agrees(Math.pow(0.75, 12), forbidden.misled(), forbidden.sets());
    }

    @Test
    void the_same_seed_draws_the_same_and_the_watch_is_told() {
        Model model = Pales.recessive();
        List<Integer> done = new ArrayList<>();
        Power asked = Power.of(
                        candidates(model, Pales.lethal()),
                        0,
                        tested(model),
                        LitterPlan.of(carrier(model), carrier(model), 2, LitterSize.of(3)))
                .from("even")
                .drawing(150)
                .watched(done::add);
        assertEquals(asked.estimate(), asked.estimate());
        assertTrue(done.contains(100) && done.contains(150), done::toString);
        assertFalse(done.stream().anyMatch(number -> number > 150));
    }

    @Test
    void what_cannot_be_asked_is_refused() {
        Model model = Pales.recessive();
        Founder carrier = carrier(model);
        LitterPlan plan = LitterPlan.of(carrier, carrier, 1, LitterSize.of(2));
        List<Candidate> both = candidates(model, Pales.lethal());
        assertThrows(IllegalArgumentException.class, () -> Power.of(candidates(model), 0, tested(model), plan));
        assertThrows(IllegalArgumentException.class, () -> Power.of(both, 2, tested(model), plan));
        assertThrows(IllegalArgumentException.class, () -> Power.of(both, 1, tested(model), plan));
        Power asked = Power.of(both, 0, tested(model), plan);
        assertThrows(IllegalArgumentException.class, () -> asked.drawing(0));
        assertThrows(IllegalArgumentException.class, () -> asked.reaching(1));
        assertThrows(IllegalArgumentException.class, () -> LitterPlan.of(carrier, carrier, 0, LitterSize.of(2)));
        Power blind = Power.of(both, 0, Simulation.of(CompiledModel.of(model)), plan);
        assertEquals(
                "nothing-shared",
                assertThrows(ProblemsException.class, blind::estimate)
                        .problems()
                        .get(0)
                        .code());
    }
}
