package org.geneticsrules.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
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
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.inference.Conclusions;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.inference.Possibilities;
import org.geneticsrules.inference.Possibility;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Viability;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomAnimals;
import org.geneticsrules.testing.RandomModels;
import org.geneticsrules.testing.RandomPedigrees;
import org.geneticsrules.testing.RandomPedigrees.RandomPedigree;
import org.geneticsrules.testing.RecordedKindred;
import org.geneticsrules.testing.brute.Kindred;
import org.geneticsrules.testing.brute.Worlds;
import org.geneticsrules.trait.Confusion;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** Genes dropped through pedigrees, held to the list of all worlds, and records of them to what the engines make of these. */
@Once
class DroppingLaws {

    private static final int DRAWS = 800;

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 60)
    void animals_are_drawn_as_listed(@ForAll("seeds") long seed) {
        drawn(seed);
    }

    @Property(tries = 100)
    void records_are_possible_and_so_is_the_truth(@ForAll("seeds") long seed) {
        possible(RandomPedigrees.pedigree(seed));
    }

    @Property(tries = 60)
    void records_with_errors_and_mutation_have_a_chance_and_so_has_the_truth(@ForAll("seeds") long seed) {
        probable(RandomPedigrees.pedigree(seed));
    }

    /** Nothing but who comes from whom, and sexes only where they follow from that. */
    private static Kindred bare(Kindred recorded) {
        List<Kindred.Member> members = new ArrayList<>();
        for (Kindred.Member one : recorded.members()) {
            boolean parent = recorded.litters().stream()
                    .anyMatch(litter -> litter.dam().equals(one.id())
                            || litter.sires().stream()
                                    .anyMatch(sire -> sire.id().equals(one.id())));
            String sex = parent ? recorded.sex(one.id()) : "";
            members.add(new Kindred.Member(one.id(), sex, one.population(), List.of(), List.of()));
        }
        return RecordedKindred.scored(new Kindred(members, recorded.litters(), List.of()));
    }

    /** Where as many daughters live as sons, a sex tells nothing of the parents, so that a stated one is no evidence. */
    private static boolean sexesLiveAlike(Model model) {
        for (Viability one : model.viability().values()) {
            Locus locus = model.locus(one.locus());
            if (one.sex().isPresent()
                    || locus.dependsOnSex()
                    || locus.transmission().heterogametic().isPresent()) {
                return false;
            }
        }
        return true;
    }

    /** What a case was of: nothing where it was left out. */
    private record Case(RandomPedigree random, Worlds worlds, Pedigree plan) {}

    private static Optional<Case> listed(long seed) {
        RandomPedigree random = RandomPedigrees.pedigree(seed);
        Kindred bare = bare(random.kindred());
        return sexesLiveAlike(random.model())
                ? Worlds.within(random.genome(), bare, 60_000)
                        .filter(worlds -> worlds.size() > 0)
                        .map(worlds -> new Case(random, worlds, RecordedKindred.pedigree(random.model(), bare)))
                : Optional.empty();
    }

    static void drawn(long seed) {
        Optional<Case> found = listed(seed);
        if (found.isEmpty()) {
            return;
        }
        Case one = found.get();
        List<String> ids = List.copyOf(one.plan().individuals().keySet());
        List<String> last = ids.subList(ids.size() - 2, ids.size());
        Map<String, Shares<Map<String, String>>> alone = new LinkedHashMap<>();
        ids.forEach(id -> alone.put(id, new Shares<>()));
        Shares<List<Map<String, String>>> together = new Shares<>();
        Simulation.of(CompiledModel.of(one.random().model()))
                .seeded(seed)
                .from("even")
                .pedigrees(one.plan(), Map.of())
                .limit(DRAWS)
                .forEach(drawn -> {
                    Map<String, Map<String, String>> carried = new LinkedHashMap<>();
                    drawn.animals().forEach((id, animal) -> carried.put(id, RandomModels.plain(animal.genotype())));
                    carried.forEach((id, genotype) -> alone.get(id).add(genotype));
                    together.add(last.stream().map(carried::get).toList());
                });
        alone.forEach((id, shares) -> shares.agreeWith(one.worlds().genotypes(id), () -> id + " of " + one.random()));
        together.agreeWith(one.worlds().jointly(last), () -> last + " of " + one.random());
    }

    private static PlannedLook look(Model model, SplittableRandom random) {
        List<String> traits = new ArrayList<>(model.visibleTraits());
        traits.add(Sex.VARIABLE);
        return new PlannedLook(
                RandomAnimals.stage(model, random.nextLong()),
                traits,
                Optional.empty(),
                Probability.of(random.nextInt(1, 4), 3));
    }

    private static PlannedTest test(Model model, SplittableRandom random, Probability error) {
        List<String> loci = List.copyOf(model.loci().keySet());
        return new PlannedTest(loci.get(random.nextInt(loci.size())), error, Probability.of(1, 2));
    }

    static void possible(RandomPedigree random) {
        SplittableRandom chance = new SplittableRandom(random.seed());
        CompiledModel compiled = CompiledModel.of(random.model());
        Simulation simulation = Simulation.of(compiled)
                .seeded(random.seed())
                .from("even")
                .looking(look(random.model(), chance), look(random.model(), chance))
                .testing(test(random.model(), chance, Probability.ZERO))
                .withoutMutation();
        Pedigree plan = RecordedKindred.pedigree(random.model(), random.kindred());
        Optional<DrawnPedigree> first = first(simulation, plan);
        if (first.isEmpty()) {
            return;
        }
        DrawnPedigree drawn = first.get();
        assertEquals(List.of(), drawn.records().problemsUnder(random.model()), random::toString);
        assertEquals(
                plan.litters().values().stream()
                        .map(litter -> litter.with(Ascertainment.complete()))
                        .toList(),
                List.copyOf(drawn.records().litters().values()));
        Inference inference =
                Inference.of(compiled, drawn.records()).from("even").withoutMutation();
        assertTrue(inference.conclude().isConsistent(), random::toString);
        for (String locus : random.model().loci().keySet()) {
            Possibilities possibilities = inference.possible(locus);
            drawn.animals().forEach((id, animal) -> {
                Possibility found =
                        possibilities.of(id, animal.genotype().pair(locus).orElseThrow());
                assertFalse(
                        found instanceof Possibility.Excluded || found instanceof Possibility.Contradicted,
                        () -> id + " is drawn as " + animal + ", in " + random);
            });
        }
    }

    static void probable(RandomPedigree random) {
        SplittableRandom chance = new SplittableRandom(random.seed());
        Model model = random.model();
        CompiledModel compiled = CompiledModel.of(model);
        String trait = model.visibleTraits().iterator().next();
        List<String> states = model.states(trait);
        Confusions confusions = Confusions.of(List.of(new Confusion(
                trait, states.get(0), states.get(states.size() - 1), Optional.empty(), Probability.of(1, 3))));
        Simulation simulation = Simulation.of(compiled)
                .seeded(random.seed())
                .from("even")
                .looking(look(model, chance))
                .testing(test(model, chance, Probability.of(1, 4)))
                .misreading(confusions);
        Optional<DrawnPedigree> found = first(simulation, RecordedKindred.pedigree(model, random.kindred()));
        if (found.isEmpty()) {
            return;
        }
        DrawnPedigree drawn = found.get();
        Conclusions concluded = Inference.of(compiled, drawn.records())
                .from("even")
                .with(confusions)
                .conclude();
        assertTrue(concluded.isConsistent(), random::toString);
        drawn.animals()
                .forEach((id, animal) -> model.loci()
                        .keySet()
                        .forEach(locus -> concluded
                                .at(id, locus)
                                .ifPresent(posterior -> assertTrue(
                                        posterior.chance(animal.genotype()
                                                        .pair(locus)
                                                        .orElseThrow())
                                                > 0,
                                        () -> id + " is drawn as " + animal + ", in " + random))));
    }

    /** A draw, unless by sexes that are stated some parents would need young that they cannot have. */
    private static Optional<DrawnPedigree> first(Simulation simulation, Pedigree plan) {
        try {
            return simulation.within(1_000).pedigrees(plan, Map.of()).findFirst();
        } catch (TooRareException none) {
            return Optional.empty();
        }
    }

    @Test
    void the_laws_meet_hard_cases() {
        int listed = 0;
        int several = 0;
        int unrecorded = 0;
        int loops = 0;
        int sexChromosomes = 0;
        int mutating = 0;
        for (long seed = 0; seed < 150; seed++) {
            Optional<Case> found = listed(seed);
            if (found.isPresent()) {
                Pedigree plan = found.get().plan();
                Model model = found.get().random().model();
                listed++;
                several += plan.litters().values().stream()
                                .anyMatch(litter -> litter.sires() instanceof Paternity.Candidates)
                        ? 1
                        : 0;
                unrecorded += plan.litters().values().stream()
                                .anyMatch(
                                        litter -> litter.dam().isEmpty() || litter.sires() instanceof Paternity.Unknown)
                        ? 1
                        : 0;
                loops += plan.individuals().values().stream()
                                .map(Individual::id)
                                .anyMatch(id -> plan.littersOf(id).size() > 1)
                        ? 1
                        : 0;
                sexChromosomes += model.loci().values().stream()
                                .anyMatch(locus ->
                                        locus.transmission().heterogametic().isPresent())
                        ? 1
                        : 0;
                mutating += model.loci().values().stream()
                                .anyMatch(locus -> !locus.mutation().isEmpty())
                        ? 1
                        : 0;
            }
        }
        String met = listed + " " + several + " " + unrecorded + " " + loops + " " + sexChromosomes + " " + mutating;
        assertTrue(
                listed > 50 && several > 5 && unrecorded > 5 && loops > 10 && sexChromosomes > 5 && mutating > 3, met);
    }
}
