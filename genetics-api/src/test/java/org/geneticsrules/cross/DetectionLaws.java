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
import net.jqwik.api.statistics.Statistics;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.DocumentMaps;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomAnimals;
import org.geneticsrules.testing.RandomModels;
import org.geneticsrules.testing.brute.Animal;
import org.geneticsrules.testing.brute.Choices;
import org.geneticsrules.testing.brute.Founders;
import org.geneticsrules.testing.brute.Genome;
import org.geneticsrules.testing.brute.Life;
import org.geneticsrules.testing.brute.Mating;
import org.geneticsrules.testing.brute.Seen;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Test matings in models of the whole language, held to going through every animal, mate and kit one by one. */
@Once
class DetectionLaws {

    private static final int MOST_MEMBERS = 2;

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 60)
    void a_miss_is_what_going_through_every_kit_says(@ForAll("seeds") long seed) {
        String outcome = missed(seed);
        Statistics.label("compared")
                .collect(outcome)
                .coverage(checker -> checker.check("compared").percentage(share -> share > 60));
    }

    @Property(tries = 500)
    void the_fewest_steps_are_found_by_trying_one_after_another(@ForAll("seeds") long seed) {
        Statistics.label("answers").collect(fewest(seed)).coverage(checker -> {
            checker.check("reached").percentage(share -> share > 30);
            checker.check("never").percentage(share -> share > 2);
        });
    }

    @Property(tries = 200)
    void looks_that_prove_are_those_that_the_other_parents_cannot_have(@ForAll("seeds") long seed) {
        proofs(seed);
    }

    /** One random mating in thirty has a look that proves, so these were looked for. */
    @ParameterizedTest
    @CsvSource({"1, 32", "2, 81", "4, 61"})
    void looks_that_prove_are_found(int looks, long seed) {
        assertEquals(looks, proofs(seed));
    }

    /** One animal that something is known of, and what it may be. */
    private record Known(Parent parent, Map<Animal, Probability> animals) {
        static Known of(Model model, Genome genome, Sex sex, long seed) {
            RandomAnimals.Parents known = RandomAnimals.parents(model, genome, sex, MOST_MEMBERS, seed);
            return new Known(
                    Parent.among(known.set()).from(model.populations().get("even")),
                    Founders.of(genome, sex.word(), known.members(), Map.of(), "even", "scored", List.of()));
        }
    }

    /** Parents that one mate may have, or none where the mate itself is known. */
    private record Family(Optional<Animal> sire, Optional<Animal> dam) {}

    /** What a test mating is asked, once for the library and once for the reference. */
    private static final class Asked {
        final Model model;
        final Genome genome;
        final Sex sex;
        final Known tested;
        final Mate mate;
        final Map<Animal, Map<Family, Probability>> families = new LinkedHashMap<>();
        final Map<Animal, Probability> direct = new LinkedHashMap<>();
        final List<Seen> seen;
        final View view;
        final Map<String, String> stage;
        private final Map<Family, Map<Animal, Probability>> known = new LinkedHashMap<>();
        boolean excludes;

        Asked(SplittableRandom random, Model model, int kinds) {
            this.model = model;
            genome = new Genome(DocumentMaps.of(model));
            sex = random.nextBoolean() ? Sex.MALE : Sex.FEMALE;
            tested = Known.of(model, genome, sex, random.nextLong());
            Known sire = Known.of(model, genome, Sex.MALE, random.nextLong());
            Known dam = Known.of(model, genome, Sex.FEMALE, random.nextLong());
            Known partner = sex == Sex.MALE ? dam : sire;
            Mate open;
            switch (random.nextInt(kinds)) {
                case 0 -> {
                    open = Mate.of(partner.parent());
                    direct.putAll(partner.animals());
                    tested.animals()
                            .keySet()
                            .forEach(animal -> families.put(
                                    animal, Map.of(new Family(Optional.empty(), Optional.empty()), Probability.ONE)));
                }
                case 1 -> {
                    open = Mate.ownYoung(partner.parent());
                    for (Animal animal : tested.animals().keySet()) {
                        Map<Family, Probability> here = new LinkedHashMap<>();
                        partner.animals()
                                .forEach((other, chance) -> here.put(
                                        sex == Sex.MALE
                                                ? new Family(Optional.of(animal), Optional.of(other))
                                                : new Family(Optional.of(other), Optional.of(animal)),
                                        chance));
                        families.put(animal, here);
                    }
                }
                default -> {
                    open = Mate.youngOf(sire.parent(), dam.parent());
                    Map<Family, Probability> here = new LinkedHashMap<>();
                    sire.animals()
                            .forEach((one, p) -> dam.animals()
                                    .forEach((other, q) ->
                                            here.put(new Family(Optional.of(one), Optional.of(other)), p.times(q))));
                    tested.animals().keySet().forEach(animal -> families.put(animal, here));
                }
            }
            if (random.nextBoolean()) {
                open = open.asSibs();
            }
            List<Sighting> sightings = new ArrayList<>();
            if (!(open instanceof Mate.Known) && random.nextBoolean()) {
                sightings.addAll(RandomAnimals.sightings(
                        model,
                        genome,
                        sex.other(),
                        RandomAnimals.genotype(model, sex.other(), random.nextLong()),
                        random.nextLong()));
            }
            for (Sighting one : sightings) {
                open = open.seen(one);
            }
            mate = open;
            seen = RandomAnimals.plain(sightings);
            List<String> traits = new ArrayList<>(model.visibleTraits());
            LifeStage at = RandomAnimals.stage(model, random.nextLong());
            stage = RandomAnimals.plain(at);
            view = new View(
                    kinds == 1 ? traits : List.of(traits.get(random.nextInt(traits.size()))),
                    at,
                    random.nextBoolean() ? Census.BORN : Census.SCORED);
        }

        /** The mates of one family. */
        Map<Animal, Probability> mates(Family family) {
            return known.computeIfAbsent(family, this::list);
        }

        private Map<Animal, Probability> list(Family family) {
            if (family.sire().isEmpty()) {
                return direct;
            }
            Map<Animal, Probability> young = new LinkedHashMap<>();
            new Mating(genome, family.sire().get(), family.dam().orElseThrow())
                    .kits("scored")
                    .forEach((kit, chance) -> {
                        if (kit.sex().equals(sex.other().word())) {
                            young.put(kit, chance.times(Life.agrees(genome, kit, seen)));
                        }
                    });
            return normalised(young);
        }

        /** The looks of the kits of the animal and a mate; nothing if they have none. */
        Map<Map<String, String>, Probability> looks(Animal animal, Animal other) {
            Mating mating = sex == Sex.MALE ? new Mating(genome, animal, other) : new Mating(genome, other, animal);
            Map<Map<String, String>, Probability> looks = new LinkedHashMap<>();
            mating.kits(view.census().word())
                    .forEach((kit, chance) -> Life.looks(genome, kit, stage, view.traits())
                            .forEach((look, share) -> looks.merge(look, chance.times(share), Probability::plus)));
            return looks;
        }
    }

    private static <T> Map<T, Probability> normalised(Map<T, Probability> weights) {
        Probability sum = weights.values().stream().reduce(Probability.ZERO, Probability::plus);
        Map<T, Probability> shares = new LinkedHashMap<>();
        weights.forEach((what, weight) -> {
            if (!weight.isZero()) {
                shares.put(what, weight.dividedBy(sum));
            }
        });
        return shares;
    }

    /** The looks of the kits of each animal, family and mate, such as have kits. */
    private static Map<Animal, Map<Family, Map<Animal, Map<Map<String, String>, Probability>>>> everything(
            Asked asked) {
        Map<Animal, Map<Family, Map<Animal, Map<Map<String, String>, Probability>>>> all = new LinkedHashMap<>();
        asked.tested.animals().keySet().forEach(animal -> {
            Map<Family, Map<Animal, Map<Map<String, String>, Probability>>> here = new LinkedHashMap<>();
            asked.families.get(animal).keySet().forEach(family -> {
                Map<Animal, Map<Map<String, String>, Probability>> mates = new LinkedHashMap<>();
                asked.mates(family).keySet().forEach(other -> {
                    Map<Map<String, String>, Probability> looks = asked.looks(animal, other);
                    if (looks.isEmpty()) {
                        asked.excludes = true;
                    } else {
                        mates.put(other, looks);
                    }
                });
                if (mates.isEmpty()) {
                    asked.excludes = true;
                } else {
                    here.put(family, mates);
                }
            });
            if (!here.isEmpty()) {
                all.put(animal, here);
            }
        });
        return all;
    }

    static String missed(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Asked asked = new Asked(random, RandomModels.whole(random.nextLong()), 3);
        var all = everything(asked);
        if (asked.excludes && !asked.model.viability().isEmpty()) {
            return "some have no kits"; // loci that no rule or linkage joins with the question are left out by the
            // library
        }
        Set<Map<String, String>> looks = new LinkedHashSet<>();
        all.values()
                .forEach(families -> families.values()
                        .forEach(mates -> mates.values().forEach(kits -> looks.addAll(kits.keySet()))));
        TestMating test = TestMating.of(CompiledModel.of(asked.model), asked.sex, asked.tested.parent(), asked.mate);
        if (looks.isEmpty()) {
            assertEquals(Optional.empty(), test.byOneMate(asked.view, Set.of(), LitterSize.of(1)));
            return "no such animals";
        }
        Map<String, String> sign = new ArrayList<>(looks).get(random.nextInt(looks.size()));
        int litter = 1 + random.nextInt(2);
        int steps = random.nextInt(3);
        boolean oneMate = random.nextBoolean();
        Map<Boolean, Probability> expected = Choices.all(chance -> {
            Animal animal = chance.among(normalised(only(asked.tested.animals(), all.keySet())));
            var mine = all.get(animal);
            Map<Family, Probability> parents = normalised(only(asked.families.get(animal), mine.keySet()));
            Family family = chance.among(parents);
            Animal mate = null;
            for (int step = 0; step < steps; step++) {
                if (mate == null || !oneMate) {
                    boolean another = mate != null && !asked.mate.areSibs();
                    family = another ? chance.among(parents) : family;
                    mate = chance.among(normalised(
                            only(asked.mates(family), mine.get(family).keySet())));
                }
                for (int kit = 0; kit < litter; kit++) {
                    if (chance.happens(mine.get(family).get(mate).getOrDefault(sign, Probability.ZERO))) {
                        return false;
                    }
                }
            }
            return true;
        });
        Set<Phenotype> signs = Set.of(Phenotype.from(sign));
        Optional<Detection> found = oneMate
                ? test.byOneMate(asked.view, signs, LitterSize.of(litter))
                : test.byManyMates(asked.view, signs, LitterSize.of(litter));
        assertEquals(
                expected.getOrDefault(true, Probability.ZERO),
                found.orElseThrow().missed(steps),
                () -> asked.model + ": " + test + " for " + sign + ", " + steps + " litters of " + litter
                        + (oneMate ? " of one mate" : " of as many mates"));
        return "compared";
    }

    private static <T> Map<T, Probability> only(Map<T, Probability> chances, Set<T> kept) {
        Map<T, Probability> left = new LinkedHashMap<>(chances);
        left.keySet().retainAll(kept);
        return left;
    }

    static String fewest(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Map<Probability, Long> weights = new LinkedHashMap<>();
        int terms = random.nextInt(1, 4);
        for (int i = 0; i < terms; i++) {
            int denominator = random.nextInt(1, 13);
            weights.put(Probability.of(random.nextInt(denominator + 1), denominator), (long) random.nextInt(1, 9));
        }
        Detection detection = Detection.of(Distribution.ofWeights(weights));
        int scale = random.nextInt(1, 200);
        // half of the questions stand exactly at a chance that is reached
        Probability atMost = random.nextBoolean()
                ? Probability.of(random.nextInt(scale + 1), scale)
                : detection.missed(random.nextInt(6));
        if (detection.fewest(atMost) instanceof Detection.Reached reached) {
            int steps = 0;
            while (detection.missed(steps).compareTo(atMost) > 0) {
                steps++;
            }
            assertEquals(new Detection.Reached(steps, detection.missed(steps)), reached);
            return "reached";
        }
        assertEquals(new Detection.Never(detection.limit()), detection.fewest(atMost));
        assertTrue(detection.missed(400).compareTo(atMost) > 0, detection::toString);
        Probability above = detection.missed(400).minus(detection.limit());
        assertTrue(detection.limit().compareTo(atMost) >= 0, detection::toString);
        assertTrue(above.toDouble() < 1e-9, detection::toString);
        return "never";
    }

    /** Mates that are known directly, in a model without mutation, which the reference does not leave out. */
    static int proofs(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Model model = RandomModels.whole(random.nextLong());
        while (model.loci().values().stream()
                .anyMatch(locus -> !locus.mutation().isEmpty())) {
            model = RandomModels.whole(random.nextLong());
        }
        Asked asked = new Asked(random, model, 1);
        Known otherwise = Known.of(asked.model, asked.genome, asked.sex, random.nextLong());
        Set<Map<String, String>> looks = looks(asked);
        if (asked.excludes) {
            return 0;
        }
        TestMating test = TestMating.of(CompiledModel.of(asked.model), asked.sex, asked.tested.parent(), asked.mate);
        Set<Phenotype> expected = new LinkedHashSet<>();
        looks.forEach(look -> expected.add(Phenotype.from(look)));
        for (Animal animal : otherwise.animals().keySet()) {
            for (Animal mate : asked.direct.keySet()) {
                asked.looks(animal, mate).forEach((look, chance) -> {
                    if (!chance.isZero()) {
                        expected.remove(Phenotype.from(look));
                    }
                });
            }
        }
        assertEquals(expected, test.proofs(asked.view, otherwise.parent()), () -> asked.model + ": " + test);
        return expected.size();
    }

    private static Set<Map<String, String>> looks(Asked asked) {
        Set<Map<String, String>> looks = new LinkedHashSet<>();
        everything(asked)
                .values()
                .forEach(families -> families.values()
                        .forEach(mates -> mates.values()
                                .forEach(kits -> kits.forEach((look, chance) -> {
                                    if (!chance.isZero()) {
                                        looks.add(look);
                                    }
                                }))));
        return looks;
    }
}
