package org.geneticsrules.cross;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.DocumentMaps;
import org.geneticsrules.testing.RandomAnimals;
import org.geneticsrules.testing.RandomModels;
import org.geneticsrules.testing.brute.Animal;
import org.geneticsrules.testing.brute.Founders;
import org.geneticsrules.testing.brute.Genome;
import org.geneticsrules.testing.brute.Litters;
import org.geneticsrules.testing.brute.Seen;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;

/** Matings in models of the whole language, held to the enumeration of gametes with their phase. */
class WholeCrossLaws {

    private static final int MOST_MEMBERS = 12;

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 400)
    void kits_of_known_parents(@ForAll("seeds") long seed) {
        knownParents(seed);
    }

    @Property(tries = 250)
    void kits_of_uncertain_parents(@ForAll("seeds") long seed) {
        uncertainParents(seed);
    }

    @Property(tries = 150)
    void kits_of_one_litter(@ForAll("seeds") long seed) {
        litters(seed);
    }

    /** What is looked at, with its plain form. */
    private record Looking(View view, List<String> traits, Map<String, String> stage) {
        static Looking at(Model model, SplittableRandom random) {
            List<String> traits = new ArrayList<>(model.visibleTraits());
            while (traits.size() > 1 && random.nextBoolean()) {
                traits.remove(random.nextInt(traits.size()));
            }
            LifeStage stage = RandomAnimals.stage(model, random.nextLong());
            List<String> asked = new ArrayList<>(traits);
            asked.add(random.nextInt(asked.size() + 1), Sex.VARIABLE);
            Census census =
                    List.of(Census.CONCEIVED, Census.BORN, Census.SCORED).get(random.nextInt(3));
            return new Looking(new View(asked, stage, census), traits, RandomAnimals.plain(stage));
        }

        Map<Phenotype, Probability> of(Litters litters) {
            Map<Phenotype, Probability> looks = new LinkedHashMap<>();
            litters.next(stage, traits).forEach((kit, chance) -> {
                Map<String, String> look = new LinkedHashMap<>(kit.look());
                look.put(Sex.VARIABLE, kit.sex());
                looks.merge(Phenotype.from(look), chance, Probability::plus);
            });
            return looks;
        }
    }

    static void knownParents(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Model model = RandomModels.whole(random.nextLong());
        Genome genome = new Genome(DocumentMaps.of(model));
        Genotype sire = RandomAnimals.genotype(model, Sex.MALE, random.nextLong());
        Genotype dam = RandomAnimals.genotype(model, Sex.FEMALE, random.nextLong());
        Looking looking = Looking.at(model, random);
        Litters litters = Litters.of(
                genome,
                evenly(RandomAnimals.animals(genome, Sex.MALE, sire)),
                evenly(RandomAnimals.animals(genome, Sex.FEMALE, dam)),
                looking.view().census().word());
        Map<Phenotype, Probability> expected = looking.of(litters);
        Cross cross = Cross.of(CompiledModel.of(model), sire, dam);
        if (expected.isEmpty() || lethal(genome, sire, Sex.MALE) || lethal(genome, dam, Sex.FEMALE)) {
            return; // such parents have no kits
        }
        assertEquals(Distribution.of(expected), cross.phenotypes(looking.view()), () -> model + ": " + cross);
        assertEquals(litters.lost(), cross.lostShare(looking.view().census()), () -> model + ": " + cross);
    }

    private static boolean lethal(Genome genome, Genotype genotype, Sex sex) {
        return RandomAnimals.animals(genome, sex, genotype).stream()
                .allMatch(animal -> org.geneticsrules.testing.brute.Mating.viability(genome, animal, "scored")
                        .isZero());
    }

    private static Map<Animal, Probability> evenly(List<Animal> animals) {
        Map<Animal, Probability> chances = new LinkedHashMap<>();
        animals.forEach(animal -> chances.put(animal, Probability.of(1, animals.size())));
        return chances;
    }

    /** Two parents of whom a set, some looks or both are known, and the animals they may be. */
    private record Couple(UncertainCross cross, Map<Animal, Probability> sires, Map<Animal, Probability> dams) {
        static Couple of(Model model, Genome genome, SplittableRandom random) {
            CompiledModel compiled = CompiledModel.of(model);
            Parent[] parents = new Parent[2];
            List<Map<Animal, Probability>> animals = new ArrayList<>();
            for (Sex sex : List.of(Sex.MALE, Sex.FEMALE)) {
                RandomAnimals.Parents known =
                        RandomAnimals.parents(model, genome, sex, MOST_MEMBERS, random.nextLong());
                List<Sighting> seen = List.of();
                if (random.nextBoolean()) {
                    Genotype one = RandomAnimals.genotype(
                            model,
                            genome,
                            genome.phases(
                                            sex.word(),
                                            known.members()
                                                    .get(random.nextInt(
                                                            known.members().size())),
                                            Map.of())
                                    .get(0));
                    seen = RandomAnimals.sightings(model, genome, sex, one, random.nextLong());
                }
                Parent parent =
                        Parent.among(known.set()).from(model.populations().get("even"));
                for (Sighting one : seen) {
                    parent = parent.seen(one);
                }
                parents[sex == Sex.MALE ? 0 : 1] = parent;
                animals.add(Founders.of(
                        genome, sex.word(), known.members(), Map.of(), "even", "scored", RandomAnimals.plain(seen)));
            }
            return new Couple(UncertainCross.of(compiled, parents[0], parents[1]), animals.get(0), animals.get(1));
        }
    }

    static void uncertainParents(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Model model = RandomModels.whole(random.nextLong());
        Genome genome = new Genome(DocumentMaps.of(model));
        Couple couple = Couple.of(model, genome, random);
        Looking looking = Looking.at(model, random);
        UncertainCross cross = couple.cross();
        if (couple.sires().isEmpty() || couple.dams().isEmpty()) {
            assertEquals(Optional.empty(), cross.probable(looking.view()));
            assertTrue(cross.possible(looking.view()).isEmpty());
            return;
        }
        Litters litters = Litters.of(
                genome, couple.sires(), couple.dams(), looking.view().census().word());
        Map<Phenotype, Probability> expected = looking.of(litters);
        assertEquals(
                expected.isEmpty() ? Optional.empty() : Optional.of(Distribution.of(expected)),
                cross.probable(looking.view()),
                () -> model + ": " + cross);
        assertEquals(Optional.of(litters.lost()), cross.lostShare(looking.view().census()), () -> model + ": " + cross);
        if (model.loci().values().stream().allMatch(locus -> locus.mutation().isEmpty())) {
            assertEquals(
                    positive(expected), cross.possible(looking.view()), () -> "possible in " + model + ": " + cross);
        }
    }

    private static Set<Phenotype> positive(Map<Phenotype, Probability> chances) {
        Set<Phenotype> positive = new LinkedHashSet<>(chances.keySet());
        positive.removeIf(look -> chances.getOrDefault(look, Probability.ZERO).isZero());
        return positive;
    }

    static void litters(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Model model = RandomModels.whole(random.nextLong());
        Genome genome = new Genome(DocumentMaps.of(model));
        Couple couple = Couple.of(model, genome, random);
        Looking looking = Looking.at(model, random);
        View view = looking.view().among(random.nextBoolean() ? Census.BORN : Census.SCORED);
        Litters all =
                Litters.of(genome, couple.sires(), couple.dams(), view.census().word());
        Map<Phenotype, Probability> first = looking.of(all);
        if (first.isEmpty()) {
            return;
        }
        List<Phenotype> looks = new ArrayList<>(first.keySet());
        List<Sighting> seen = new ArrayList<>();
        List<Seen.Kit> plain = new ArrayList<>();
        for (int i = random.nextInt(3); i > 0; i--) {
            Phenotype look = looks.get(random.nextInt(looks.size()));
            seen.add(new Sighting(view.stage(), look));
            Map<String, String> shown = new LinkedHashMap<>(look.asMap());
            String sex = shown.remove(Sex.VARIABLE);
            plain.add(new Seen.Kit(sex, List.of(new Seen(looking.stage(), shown))));
        }
        Litters left = all.given(plain);
        Phenotype event = looks.get(random.nextInt(looks.size()));
        UncertainCross cross = couple.cross();
        if (left.isEmpty()) {
            assertEquals(Optional.empty(), cross.chance(view, event, seen), () -> model + ": " + cross);
            return;
        }
        Map<String, String> states = new LinkedHashMap<>(event.asMap());
        String sex = states.remove(Sex.VARIABLE);
        if (!states.keySet().equals(new LinkedHashSet<>(looking.traits()))) {
            return; // a trait that is not modelled cannot be described to the reference
        }
        assertEquals(
                Optional.of(Distribution.of(left.chances(sex, looking.stage(), states))),
                cross.chance(view, event, seen),
                () -> model + ": " + cross + " after " + seen);
        assertEquals(
                Optional.of(Distribution.of(left.counts(2, sex, looking.stage(), states))),
                cross.count(view, event, LitterSize.of(2), seen),
                () -> model + ": " + cross + " after " + seen);
    }
}
