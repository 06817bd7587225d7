package org.geneticsrules.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Expressed;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.testing.DocumentMaps;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomAnimals;
import org.geneticsrules.testing.RandomModels;
import org.geneticsrules.testing.brute.Animal;
import org.geneticsrules.testing.brute.Genome;
import org.geneticsrules.testing.brute.Life;
import org.geneticsrules.testing.brute.Litters;
import org.geneticsrules.testing.brute.Mating;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** Litters and lives, held to lists of everything that can come of two parents. */
@Once
class LitterLaws {

    private static final int DRAWS = 1_500;

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 80)
    void kits_are_as_listed(@ForAll("seeds") long seed) {
        kits(Parents.draw(seed));
    }

    @Property(tries = 80)
    void as_many_kits_are_lost_as_listed(@ForAll("seeds") long seed) {
        lost(Parents.draw(seed));
    }

    @Property(tries = 80)
    void lives_are_as_listed(@ForAll("seeds") long seed) {
        lives(Parents.draw(seed));
    }

    @Property(tries = 150)
    void an_animal_tells_how_it_came_to_look_as_it_does(@ForAll("seeds") long seed) {
        told(Parents.draw(seed));
    }

    /** Two parents of known genotype and open phase, and two looks at their kits. */
    record Parents(
            Model model,
            CompiledModel compiled,
            Genome listed,
            Genotype sire,
            Genotype dam,
            List<String> traits,
            List<LifeStage> stages) {

        static Parents draw(long seed) {
            SplittableRandom random = new SplittableRandom(seed);
            Model model = RandomModels.whole(random.nextLong());
            return new Parents(
                    model,
                    CompiledModel.of(model),
                    new Genome(DocumentMaps.of(model)),
                    RandomAnimals.genotype(model, Sex.MALE, random.nextLong()),
                    RandomAnimals.genotype(model, Sex.FEMALE, random.nextLong()),
                    new ArrayList<>(model.visibleTraits()),
                    List.of(
                            RandomAnimals.stage(model, random.nextLong()),
                            RandomAnimals.stage(model, random.nextLong())));
        }

        Map<Animal, Probability> animals(Sex sex) {
            List<Animal> all = RandomAnimals.animals(listed, sex, sex == Sex.MALE ? sire : dam);
            Map<Animal, Probability> chances = new LinkedHashMap<>();
            all.forEach(animal -> chances.put(animal, Probability.of(1, all.size())));
            return chances;
        }

        boolean live() {
            return lives(Sex.MALE) && lives(Sex.FEMALE);
        }

        boolean lives(Sex sex) {
            Animal one = animals(sex).keySet().iterator().next();
            return !Mating.viability(listed, one, "scored").isZero();
        }

        Litters litters() {
            return Litters.of(listed, animals(Sex.MALE), animals(Sex.FEMALE), "scored");
        }

        boolean haveKits() {
            return !litters().given(List.of()).isEmpty();
        }

        Simulation simulation() {
            return Simulation.of(compiled)
                    .seeded(1)
                    .looking(stages.stream()
                            .map(stage -> new PlannedLook(stage, traits, Optional.empty(), Probability.ONE))
                            .toArray(PlannedLook[]::new));
        }

        List<DrawnLitter> draw(LitterSize size, Census counted) {
            return simulation()
                    .litters(Founder.of(sire), Founder.of(dam), size, counted)
                    .limit(DRAWS)
                    .toList();
        }

        @Override
        public String toString() {
            return model + ": " + sire + " x " + dam + " at " + stages;
        }
    }

    private static Map<String, String> look(DrawnAnimal animal, int look, List<String> traits) {
        Map<String, String> seen = new LinkedHashMap<>();
        traits.forEach(trait -> animal.state(look, trait).ifPresent(state -> seen.put(trait, state)));
        return seen;
    }

    static void kits(Parents parents) {
        if (!parents.live()) {
            ProblemsException refused =
                    assertThrows(ProblemsException.class, () -> parents.draw(LitterSize.of(1), Census.SCORED));
            assertEquals("no-founder", refused.problems().get(0).code(), parents::toString);
            return;
        }
        if (!parents.haveKits()) {
            Simulation few = parents.simulation().within(3);
            assertThrows(
                    TooRareException.class,
                    () -> few.litters(
                                    Founder.of(parents.sire()),
                                    Founder.of(parents.dam()),
                                    LitterSize.of(1),
                                    Census.SCORED)
                            .findFirst());
            return;
        }
        Shares<Litters.Kit> drawn = new Shares<>();
        for (DrawnLitter litter : parents.draw(LitterSize.of(2), Census.SCORED)) {
            DrawnAnimal kit = litter.kits().get(1); // kits of one litter are alike in chance, but depend on one another
            drawn.add(new Litters.Kit(
                    kit.sex().word(),
                    RandomModels.plain(kit.genotype()),
                    RandomAnimals.plain(kit.genotype().phase()),
                    look(kit, 0, parents.traits())));
        }
        drawn.agreeWith(
                parents.litters().next(RandomAnimals.plain(parents.stages().get(0)), parents.traits()),
                parents::toString);
    }

    static void lost(Parents parents) {
        if (!parents.live()) {
            return;
        }
        Shares<Integer> scored = new Shares<>();
        Shares<Integer> born = new Shares<>();
        for (DrawnLitter litter : parents.draw(LitterSize.of(1), Census.CONCEIVED)) {
            assertEquals(1, litter.conceived());
            assertEquals(1 - litter.kits().size(), litter.lost());
            scored.add(litter.kits().size());
            born.add((int) litter.born());
        }
        Cross cross = Cross.of(parents.compiled(), parents.sire(), parents.dam());
        scored.agreeWith(shares(cross.lostShare(Census.SCORED)), parents::toString);
        born.agreeWith(shares(cross.lostShare(Census.BORN)), parents::toString);
    }

    private static Map<Integer, Probability> shares(Probability lost) {
        return Map.of(0, lost, 1, lost.complement());
    }

    static void lives(Parents parents) {
        if (!parents.live()) {
            return;
        }
        Shares<List<Map<String, String>>> drawn = new Shares<>();
        for (DrawnLitter litter : parents.draw(LitterSize.of(0), Census.SCORED)) {
            DrawnAnimal sire = litter.sires().get(0);
            drawn.add(List.of(look(sire, 0, parents.traits()), look(sire, 1, parents.traits())));
        }
        drawn.agreeWith(
                Life.histories(
                        parents.listed(),
                        parents.animals(Sex.MALE).keySet().iterator().next(),
                        parents.stages().stream().map(RandomAnimals::plain).toList(),
                        parents.traits()),
                parents::toString);
    }

    static void told(Parents parents) {
        if (!parents.live()) {
            return;
        }
        for (DrawnLitter litter : parents.draw(LitterSize.of(0), Census.SCORED).subList(0, 20)) {
            List<Expressed> told = litter.dam().looks();
            for (int i = 0; i < told.size(); i++) {
                assertEquals(
                        look(litter.dam(), i, parents.traits()),
                        told.get(i).phenotype().asMap(),
                        parents::toString);
            }
            assertEquals(
                    told.stream()
                            .map(one -> one.phenotype())
                            .filter(look -> !look.traits().isEmpty())
                            .toList(),
                    litter.dam().observations().stream()
                            .map(one -> one.looks().iterator().next())
                            .toList());
        }
    }

    @Test
    void the_laws_meet_hard_cases() {
        int dead = 0;
        int chance = 0;
        int progression = 0;
        int threshold = 0;
        int masks = 0;
        int open = 0;
        for (long seed = 0; seed < 400; seed++) {
            Parents parents = Parents.draw(seed);
            dead += parents.live() ? 0 : 1;
            chance += has(parents.model(), CaseState.Chance.class);
            progression += has(parents.model(), CaseState.Progression.class);
            threshold += has(parents.model(), CaseState.Threshold.class);
            masks += parents.model().masks().isEmpty() ? 0 : 1;
            open += parents.animals(Sex.FEMALE).size() > 1 ? 1 : 0;
        }
        String found = dead + " dead, " + chance + " by chance, " + progression + " progressing, " + threshold
                + " thresholds, " + masks + " masks, " + open + " of open phase";
        assertTrue(dead > 20 && chance > 100 && progression > 60 && threshold > 40 && masks > 100 && open > 20, found);
    }

    private static int has(Model model, Class<? extends CaseState> kind) {
        return model.rules().values().stream()
                        .flatMap(rule -> rule.allCases().stream())
                        .anyMatch(one -> kind.isInstance(one.gives()))
                ? 1
                : 0;
    }
}
