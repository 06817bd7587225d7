package org.geneticsrules.cross;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
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
import org.geneticsrules.testing.brute.Mating;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;

/** Random matings in models of the whole language, each with its plain form for the reference. */
final class RandomMatings {

    private static final int MOST_MEMBERS = 12;

    private RandomMatings() {}

    /** What is looked at, with its plain form. */
    record Looking(View view, List<String> traits, Map<String, String> stage) {

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

        Looking among(Census census) {
            return new Looking(view.among(census), traits, stage);
        }

        /** The same traits without the sex. */
        View withoutSex() {
            return new View(traits, view.stage(), view.census());
        }

        /** What the reference expects of the next kit. */
        Map<Phenotype, Probability> of(Litters litters) {
            Map<Phenotype, Probability> looks = new LinkedHashMap<>();
            litters.next(stage, traits).forEach((kit, chance) -> {
                Map<String, String> look = new LinkedHashMap<>(kit.look());
                look.put(Sex.VARIABLE, kit.sex());
                looks.merge(Phenotype.from(look), chance, Probability::plus);
            });
            return looks;
        }

        /** Whether a look names every trait, so that it can be described to the reference. */
        boolean isFull(Phenotype look) {
            Set<String> named = new LinkedHashSet<>(look.traits());
            named.remove(Sex.VARIABLE);
            return named.equals(new LinkedHashSet<>(traits));
        }
    }

    /** Two parents of known genotypes, and how their kits are looked at. */
    record Known(Model model, CompiledModel compiled, Genome genome, Genotype sire, Genotype dam, Looking looking) {

        static Known draw(long seed) {
            SplittableRandom random = new SplittableRandom(seed);
            Model model = RandomModels.whole(random.nextLong());
            return new Known(
                    model,
                    CompiledModel.of(model),
                    new Genome(DocumentMaps.of(model)),
                    RandomAnimals.genotype(model, Sex.MALE, random.nextLong()),
                    RandomAnimals.genotype(model, Sex.FEMALE, random.nextLong()),
                    Looking.at(model, random));
        }

        Cross cross() {
            return Cross.of(compiled, sire, dam);
        }

        Litters litters(Census census) {
            return Litters.of(genome, animals(Sex.MALE), animals(Sex.FEMALE), census.word());
        }

        /** What the parent may be, by its phase. */
        Map<Animal, Probability> animals(Sex sex) {
            List<Animal> all = RandomAnimals.animals(genome, sex, sex == Sex.MALE ? sire : dam);
            Map<Animal, Probability> chances = new LinkedHashMap<>();
            all.forEach(animal -> chances.put(animal, Probability.of(1, all.size())));
            return chances;
        }

        /** Whether both parents can live and have a kit that is counted. */
        boolean hasKits(Census census) {
            return parentsLive() && !litters(census).given(List.of()).isEmpty();
        }

        /** Whether both parents can live. */
        boolean parentsLive() {
            return !lethal(Sex.MALE) && !lethal(Sex.FEMALE);
        }

        private boolean lethal(Sex sex) {
            return animals(sex).keySet().stream()
                    .allMatch(
                            animal -> Mating.viability(genome, animal, "scored").isZero());
        }

        @Override
        public String toString() {
            return model + ": " + sire + " x " + dam + " " + looking.view();
        }
    }

    /** Parents of whom sets, some looks or both are known, and the animals they may be. */
    record Family(
            Model model,
            Genome genome,
            UncertainCross cross,
            List<Map<Animal, Probability>> males,
            Map<Animal, Probability> dams,
            Looking looking) {

        /** A dam with one male. */
        static Family draw(long seed) {
            return draw(seed, 1, false, MOST_MEMBERS);
        }

        /** A dam with two males, one of whom sired the litter, or either of whom each kit. */
        static Family ofTwoMales(long seed, boolean perKit) {
            return draw(seed, 2, perKit, 3);
        }

        private static Family draw(long seed, int count, boolean perKit, int most) {
            SplittableRandom random = new SplittableRandom(seed);
            Model model = RandomModels.whole(random.nextLong());
            Genome genome = new Genome(DocumentMaps.of(model));
            List<Parent> males = new ArrayList<>();
            List<Map<Animal, Probability>> sires = new ArrayList<>();
            for (int i = 0; i < count; i++) {
                males.add(parent(model, genome, Sex.MALE, most, random, sires));
            }
            List<Map<Animal, Probability>> dams = new ArrayList<>();
            Parent dam = parent(model, genome, Sex.FEMALE, most, random, dams);
            Map<Integer, Integer> weights = new LinkedHashMap<>();
            for (int i = 0; i < count; i++) {
                weights.put(i, random.nextInt(1, 4));
            }
            List<Probability> access =
                    List.copyOf(Distribution.ofWeights(weights).asMap().values());
            UncertainCross cross = UncertainCross.of(
                    CompiledModel.of(model), perKit ? Sires.perKit(males, access) : Sires.oneOf(males, access), dam);
            return new Family(model, genome, cross, sires, dams.get(0), Looking.at(model, random));
        }

        private static Parent parent(
                Model model,
                Genome genome,
                Sex sex,
                int most,
                SplittableRandom random,
                List<Map<Animal, Probability>> animals) {
            RandomAnimals.Parents known = RandomAnimals.parents(model, genome, sex, most, random.nextLong());
            List<Sighting> seen = List.of();
            if (random.nextBoolean()) {
                Map<String, String> member =
                        known.members().get(random.nextInt(known.members().size()));
                Animal one = genome.phases(sex.word(), member, Map.of()).get(0);
                seen = RandomAnimals.sightings(
                        model, genome, sex, RandomAnimals.genotype(model, genome, one), random.nextLong());
            }
            Parent parent = Parent.among(known.set()).from(model.populations().get("even"));
            for (Sighting one : seen) {
                parent = parent.seen(one);
            }
            animals.add(Founders.of(
                    genome, sex.word(), known.members(), Map.of(), "even", "scored", RandomAnimals.plain(seen)));
            return parent;
        }

        /** Whether what is known of a parent excludes everything. */
        boolean isContradictory() {
            return dams.isEmpty() || males.stream().anyMatch(Map::isEmpty);
        }

        Litters litters(Census census) {
            List<Probability> access = cross.sires().access();
            return cross.sires().perKit()
                    ? Litters.perKit(genome, males, access, dams, census.word())
                    : Litters.oneOf(genome, males, access, dams, census.word());
        }

        boolean mutates() {
            return model.loci().values().stream()
                    .anyMatch(locus -> !locus.mutation().isEmpty());
        }

        @Override
        public String toString() {
            return model + ": " + cross + " " + cross.sires().access() + " " + looking.view();
        }
    }
}
