package org.geneticsrules.testing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.brute.Animal;
import org.geneticsrules.testing.brute.Founders;
import org.geneticsrules.testing.brute.Genome;
import org.geneticsrules.testing.brute.Kindred;
import org.geneticsrules.testing.brute.Kindred.Candidate;
import org.geneticsrules.testing.brute.Kindred.Confusion;
import org.geneticsrules.testing.brute.Kindred.Litter;
import org.geneticsrules.testing.brute.Kindred.Member;
import org.geneticsrules.testing.brute.Kindred.Sighting;
import org.geneticsrules.testing.brute.Life;
import org.geneticsrules.testing.brute.Mating;

/** Plays a family through once, and writes down some of what can be seen of it. */
final class RandomRecords {

    private static final List<Probability> ERRORS =
            List.of(Probability.ZERO, Probability.ZERO, Probability.of(1, 20), Probability.of(1, 4));

    private final SplittableRandom random;
    private final Model model;
    private final Genome genome;
    private final Kindred family;
    private final List<String> traits;

    /** What each member is, and each unrecorded parent by litter and place. */
    private final Map<String, Animal> animals = new LinkedHashMap<>();

    private final List<Confusion> confusions = new ArrayList<>();

    private RandomRecords(SplittableRandom random, Model model, Genome genome, Kindred family) {
        this.random = random;
        this.model = model;
        this.genome = genome;
        this.family = family;
        this.traits = new ArrayList<>(model.visibleTraits());
    }

    /**
     * Draws records of a family all whose members are of known sex and come after their parents.
     *
     * @return the family with its records; empty if the play came to an end, because some parents had no kits of a sex
     */
    static Optional<Kindred> draw(SplittableRandom random, Model model, Genome genome, Kindred family) {
        RandomRecords records = new RandomRecords(random, model, genome, family);
        return records.play() ? Optional.of(records.write()) : Optional.empty();
    }

    // ---- play
    // -----------------------------------------------------------------------------------------------------------------

    private boolean play() {
        for (Member member : family.members()) {
            Optional<Litter> litter = family.litterOf(member.id());
            if (litter.isEmpty()) {
                founder(member.id(), member.sex(), member.population());
            } else if (!animals.containsKey(member.id()) && !kits(litter.get())) {
                return false;
            }
        }
        return animals.values().stream().noneMatch(NONE::equals);
    }

    /** Stands for an animal that cannot be. */
    private static final Animal NONE = new Animal("female", Map.of(), Map.of());

    private void founder(String id, String sex, String population) {
        Map<Animal, Probability> living =
                Founders.of(genome, sex, genome.genotypes(sex), Map.of(), population, "scored", List.of());
        animals.put(id, living.isEmpty() ? NONE : among(living));
    }

    private boolean kits(Litter litter) {
        String dam = litter.dam().isEmpty() ? litter.id() + "/dam" : litter.dam();
        if (litter.dam().isEmpty()) {
            founder(dam, "female", family.populationOfDam(litter));
        }
        Map<String, Probability> sires = new LinkedHashMap<>();
        for (Candidate sire : litter.sires()) {
            String id = sire.id().isEmpty() ? litter.id() + "/sire" : sire.id();
            if (sire.id().isEmpty()) {
                founder(id, "male", family.populationOfSire(litter, sire));
            }
            sires.put(id, sire.share());
        }
        String one = among(sires);
        for (String kit : litter.kits()) {
            Animal sire = animals.get(litter.sirePerKit() ? among(sires) : one);
            if (sire.equals(NONE) || animals.get(dam).equals(NONE)) {
                return false;
            }
            Map<Animal, Probability> kits =
                    new LinkedHashMap<>(new Mating(genome, sire, animals.get(dam)).kits(family.step(kit)));
            kits.keySet()
                    .removeIf(animal -> !animal.sex().equals(family.member(kit).sex()));
            if (kits.isEmpty()) {
                return false;
            }
            animals.put(kit, among(kits));
        }
        return true;
    }

    /** Draws one of several by what they weigh. */
    private <T> T among(Map<T, Probability> weights) {
        double left = random.nextDouble()
                * weights.values().stream().mapToDouble(Probability::toDouble).sum();
        T last = null;
        for (Map.Entry<T, Probability> one : weights.entrySet()) {
            if (!one.getValue().isZero()) {
                last = one.getKey();
                left -= one.getValue().toDouble();
                if (left < 0) {
                    break;
                }
            }
        }
        return last;
    }

    private boolean happens(Probability chance) {
        return random.nextDouble() < chance.toDouble();
    }

    // ---- write
    // ----------------------------------------------------------------------------------------------------------------

    private Kindred write() {
        if (random.nextInt(3) == 0) {
            confuse();
        }
        // What is written down may be of some other animal: then it seldom fits.
        boolean muddled = random.nextInt(3) == 0;
        boolean bare = random.nextInt(20) == 0;
        List<Member> members = new ArrayList<>();
        for (Member member : family.members()) {
            Animal animal = animals.get(member.id());
            List<Kindred.Test> tests = new ArrayList<>();
            if (muddled && random.nextInt(3) > 0) {
                animal = any(member.sex());
                tests.addAll(tests(animal, Probability.ZERO));
            }
            String sex = random.nextInt(4) == 0 ? "" : member.sex();
            List<Sighting> sightings = bare || random.nextInt(3) == 0 ? List.of() : sightings(animal);
            if (!bare && random.nextInt(3) == 0) {
                tests.addAll(tests(animal, RandomLocus.pick(random, ERRORS)));
            }
            members.add(new Member(member.id(), sex, member.population(), sightings, tests));
        }
        return new Kindred(members, family.litters(), confusions);
    }

    private Animal any(String sex) {
        List<Map<String, String>> genotypes = genome.genotypes(sex);
        return genome.phases(sex, RandomLocus.pick(random, genotypes), Map.of()).get(0);
    }

    private List<String> states(String trait) {
        return new ArrayList<>(model.catalogue().traits().get(trait).states());
    }

    /** One or two states of a trait that are taken for others. */
    private void confuse() {
        String trait = RandomLocus.pick(random, traits);
        List<String> shown = states(trait);
        for (int i = random.nextInt(1, 3); i > 0; i--) {
            String real = shown.remove(random.nextInt(shown.size()));
            List<String> others = states(trait);
            others.remove(real);
            confusions.add(new Confusion(
                    trait, RandomLocus.pick(random, others), real, Probability.of(1, random.nextInt(2, 11))));
        }
    }

    private List<Sighting> sightings(Animal animal) {
        List<Map<String, String>> stages = new ArrayList<>();
        for (int i = random.nextInt(6) / 4 + 1; i > 0; i--) {
            stages.add(RandomAnimals.plain(RandomAnimals.stage(model, random.nextLong())));
        }
        List<Map<String, String>> shown = among(Life.histories(genome, animal, stages, traits));
        List<Sighting> sightings = new ArrayList<>();
        for (int i = 0; i < stages.size(); i++) {
            Map<String, String> look = new LinkedHashMap<>();
            for (String trait : traits) {
                // What is not modelled shows something all the same.
                boolean modelled = shown.get(i).containsKey(trait);
                if (random.nextInt(3) > 0 && (modelled || random.nextBoolean())) {
                    look.put(
                            trait,
                            modelled ? read(trait, shown.get(i).get(trait)) : RandomLocus.pick(random, states(trait)));
                }
            }
            if (!look.isEmpty()) {
                sightings.add(new Sighting(stages.get(i), looks(look)));
            }
        }
        return sightings;
    }

    private String read(String trait, String shown) {
        for (Confusion confusion : confusions) {
            if (confusion.trait().equals(trait) && confusion.shown().equals(shown)) {
                return happens(confusion.chance()) ? confusion.read() : shown;
            }
        }
        return shown;
    }

    /** The look, or it and others like it. */
    private List<Map<String, String>> looks(Map<String, String> look) {
        Set<Map<String, String>> looks = new LinkedHashSet<>();
        looks.add(look);
        while (random.nextInt(5) == 0) {
            Map<String, String> other = new LinkedHashMap<>(look);
            String trait = RandomLocus.pick(random, new ArrayList<>(look.keySet()));
            other.put(trait, RandomLocus.pick(random, states(trait)));
            looks.add(other);
        }
        return new ArrayList<>(looks);
    }

    /** Tests of one locus or two, where there is anything to find out. */
    private List<Kindred.Test> tests(Animal animal, Probability error) {
        List<Kindred.Test> tests = new ArrayList<>();
        for (int i = random.nextInt(4) / 3; i >= 0; i--) {
            String locus = RandomLocus.pick(random, genome.loci());
            List<String> others = genome.pairs(locus, animal.sex());
            if (others.size() > 1) {
                String real = genome.genotype(animal).get(locus);
                others.remove(real);
                Set<String> reported = new LinkedHashSet<>();
                reported.add(happens(error) ? RandomLocus.pick(random, others) : real);
                if (random.nextInt(4) == 0) {
                    reported.add(RandomLocus.pick(random, others));
                }
                tests.add(new Kindred.Test(locus, reported, error));
            }
        }
        return tests;
    }
}
