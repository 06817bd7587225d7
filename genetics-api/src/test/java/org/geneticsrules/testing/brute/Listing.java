package org.geneticsrules.testing.brute;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import org.geneticsrules.probability.Probability;

/**
 * Lists the worlds of a pedigree: decides for one founder, litter or kit after another, in each way, and ends a branch where its chance
 * is 0.
 */
final class Listing {

    /** One animal for each person, the candidate that is the sire of each, -1 for who has none, and the weight over a common total. */
    record World(List<Animal> animals, List<Integer> sires, BigInteger weight) {}

    /** A world found: the weight is over a total of its own. */
    private record Found(List<Animal> animals, List<Integer> sires, BigInteger weight, BigInteger total) {}

    /** An animal, and its chance where it was listed. */
    private record Weighed(Animal animal, Probability chance) {}

    /** Something that chance decides: sets it in each way, and each time goes on with the chance of that way. */
    private interface Step {
        void each(Consumer<Probability> goOn);
    }

    /** What is asked of the same two animals again and again, found once. */
    private static final class PerPair<T> {
        private final IdentityHashMap<Animal, IdentityHashMap<Animal, T>> known = new IdentityHashMap<>();
        private final BiFunction<Animal, Animal, T> find;

        PerPair(BiFunction<Animal, Animal, T> find) {
            this.find = find;
        }

        T of(Animal sire, Animal dam) {
            return known.computeIfAbsent(sire, any -> new IdentityHashMap<>())
                    .computeIfAbsent(dam, any -> find.apply(sire, dam));
        }
    }

    /** More choices than were allowed. */
    static final class TooMany extends RuntimeException {
        private static final long serialVersionUID = 1;
    }

    private final Genome genome;
    private final Kindred kindred;
    private final boolean frequencies;
    private final long most;
    private final boolean one;

    /** Members, and then unrecorded parents. */
    final List<String> persons = new ArrayList<>();

    final List<World> worlds = new ArrayList<>();
    BigInteger total = BigInteger.ONE;

    private final List<Step> steps = new ArrayList<>();

    /** By animal, the one that stands for all that differ from it only in which parent gave which strand. */
    private final Map<Animal, Animal> same = new HashMap<>();

    /** By member and animal, the chance of what is recorded of the member if it is this animal. */
    private final Map<String, Map<Animal, Probability>> recorded = new HashMap<>();

    private final Animal[] animals;
    private final int[] sires;
    private final List<Found> found = new ArrayList<>();
    private long visited;

    /**
     * Lists them.
     *
     * @param genome the model
     * @param kindred the pedigree
     * @param frequencies whether founders are weighed by their populations, or all alike
     * @param most how many choices may be tried
     * @throws TooMany if there are more
     */
    Listing(Genome genome, Kindred kindred, boolean frequencies, long most) {
        this(genome, kindred, frequencies, most, false);
    }

    /**
     * Lists them, or only one.
     *
     * @param genome the model
     * @param kindred the pedigree
     * @param frequencies whether founders are weighed by their populations, or all alike
     * @param most how many choices may be tried
     * @param one whether one is enough
     * @throws TooMany if there are more
     */
    Listing(Genome genome, Kindred kindred, boolean frequencies, long most, boolean one) {
        this.genome = genome;
        this.kindred = kindred;
        this.frequencies = frequencies;
        this.most = most;
        this.one = one;
        kindred.members().forEach(member -> persons.add(member.id()));
        for (Kindred.Litter litter : kindred.litters()) {
            unrecorded(litter).forEach((person, population) -> persons.add(person));
        }
        this.animals = new Animal[persons.size()];
        this.sires = new int[persons.size()];
        plan();
        list(0, BigInteger.ONE, BigInteger.ONE);
        weigh();
    }

    /** The unrecorded parents of a litter with their populations: the dam is {@code L/dam}, candidate 2 is {@code L/sire 2}. */
    private Map<String, String> unrecorded(Kindred.Litter litter) {
        Map<String, String> unrecorded = new LinkedHashMap<>();
        if (litter.dam().isEmpty()) {
            unrecorded.put(dam(litter), kindred.populationOfDam(litter));
        }
        for (int i = 0; i < litter.sires().size(); i++) {
            if (litter.sires().get(i).id().isEmpty()) {
                unrecorded.put(
                        sire(litter, i),
                        kindred.populationOfSire(litter, litter.sires().get(i)));
            }
        }
        return unrecorded;
    }

    private static String dam(Kindred.Litter litter) {
        return litter.dam().isEmpty() ? litter.id() + "/dam" : litter.dam();
    }

    private static String sire(Kindred.Litter litter, int candidate) {
        String id = litter.sires().get(candidate).id();
        return id.isEmpty() ? litter.id() + "/sire " + candidate : id;
    }

    /** A litter comes as soon as all who may be its parents are there, so that what contradicts it is found early. */
    private void plan() {
        Set<String> there = new LinkedHashSet<>();
        List<Kindred.Litter> litters = new ArrayList<>(kindred.litters());
        List<Kindred.Member> founders = new ArrayList<>(kindred.members());
        founders.removeIf(member -> kindred.litterOf(member.id()).isPresent());
        while (!litters.isEmpty() || !founders.isEmpty()) {
            Optional<Kindred.Litter> next = litters.stream()
                    .filter(litter -> awaited(litter, there).isEmpty())
                    .findFirst();
            if (next.isPresent()) {
                litters.remove(next.get());
                unrecorded(next.get()).forEach(this::unrecordedParent);
                litter(next.get());
                there.addAll(next.get().kits());
            } else if (founders.isEmpty()) {
                throw new IllegalArgumentException("an animal is among its own ancestors: " + litters);
            } else {
                Kindred.Member founder = founders.remove(0);
                founder(founder);
                there.add(founder.id());
            }
        }
    }

    private static List<String> awaited(Kindred.Litter litter, Set<String> there) {
        List<String> parents = new ArrayList<>();
        parents.add(litter.dam());
        litter.sires().forEach(sire -> parents.add(sire.id()));
        return parents.stream()
                .filter(id -> !id.isEmpty() && !there.contains(id))
                .toList();
    }

    private void founder(Kindred.Member member) {
        String sex = kindred.sex(member.id());
        List<String> sexes = sex.isEmpty() ? Genome.SEXES : List.of(sex);
        animal(member.id(), recorded(member, living(sexes, member.population())));
    }

    private void unrecordedParent(String person, String population) {
        List<Weighed> living = new ArrayList<>();
        living(List.of(person.endsWith("/dam") ? "female" : "male"), population)
                .forEach((animal, chance) -> living.add(new Weighed(animal, chance)));
        animal(person, living);
    }

    private void animal(String person, List<Weighed> all) {
        int at = persons.indexOf(person);
        steps.add(goOn -> {
            sires[at] = -1;
            for (Weighed one : all) {
                animals[at] = one.animal();
                goOn.accept(one.chance());
            }
        });
    }

    private void litter(Kindred.Litter litter) {
        int dam = persons.indexOf(dam(litter));
        List<Integer> males = new ArrayList<>();
        for (int i = 0; i < litter.sires().size(); i++) {
            males.add(persons.indexOf(sire(litter, i)));
        }
        List<Integer> kits = litter.kits().stream().map(persons::indexOf).toList();
        if (!litter.sirePerKit()) {
            steps.add(goOn -> {
                for (int i = 0; i < males.size(); i++) {
                    int chosen = i;
                    kits.forEach(kit -> sires[kit] = chosen);
                    goOn.accept(litter.sires().get(i).share());
                }
            });
        }
        for (int kit : kits) {
            String id = persons.get(kit);
            PerPair<List<Weighed>> listed = new PerPair<>((sire, mother) -> kits(id, sire, mother));
            if (litter.sirePerKit()) {
                PerPair<Boolean> fertile = new PerPair<>((sire, mother) -> !new Mating(genome, sire, mother)
                        .share(kindred.step(id))
                        .isZero());
                steps.add(goOn -> {
                    Map<Integer, Probability> shares = new LinkedHashMap<>();
                    for (int i = 0; i < males.size(); i++) {
                        boolean his = fertile.of(animals[males.get(i)], animals[dam]);
                        shares.put(i, his ? litter.sires().get(i).share() : Probability.ZERO);
                    }
                    Founders.normalised(shares).forEach((i, share) -> {
                        sires[kit] = i;
                        goOn.accept(share);
                    });
                });
            }
            steps.add(goOn -> {
                for (Weighed one : listed.of(animals[males.get(sires[kit])], animals[dam])) {
                    animals[kit] = one.animal();
                    goOn.accept(one.chance());
                }
            });
        }
    }

    private List<Weighed> kits(String kit, Animal sire, Animal dam) {
        Map<Animal, Probability> kits = new LinkedHashMap<>();
        new Mating(genome, sire, dam)
                .kits(kindred.step(kit))
                .forEach((animal, chance) -> kits.merge(unlabelled(animal), chance, Probability::plus));
        return recorded(kindred.member(kit), kits);
    }

    /** Which parent gave which strand matters to nothing that follows, so animals that differ in that are one. */
    private Animal unlabelled(Animal animal) {
        Animal known = same.get(animal);
        if (known == null) {
            Animal one = genome.phases(animal.sex(), genome.genotype(animal), genome.phase(animal))
                    .get(0);
            known = same.computeIfAbsent(one, itself -> itself);
            same.put(animal, known);
        }
        return known;
    }

    private List<Weighed> recorded(Kindred.Member member, Map<Animal, Probability> animals) {
        String sex = kindred.sex(member.id());
        Map<Animal, Probability> known = recorded.computeIfAbsent(member.id(), any -> new HashMap<>());
        List<Weighed> weighed = new ArrayList<>();
        animals.forEach((animal, chance) -> {
            if (sex.isEmpty() || sex.equals(animal.sex())) {
                Probability records = known.computeIfAbsent(
                        animal, any -> Records.chance(genome, animal, member, kindred.confusions()));
                weighed.add(new Weighed(animal, chance.times(records)));
            }
        });
        weighed.removeIf(one -> one.chance().isZero());
        return weighed;
    }

    /** The animals of a population that live to be scored, half of those conceived being of each sex. */
    private Map<Animal, Probability> living(List<String> sexes, String population) {
        Map<Animal, Probability> living = new LinkedHashMap<>();
        for (String sex : sexes) {
            List<Map<String, String>> genotypes = genome.genotypes(sex);
            for (Map<String, String> genotype : genotypes) {
                Probability frequency = frequencies
                        ? Founders.frequency(genome, genotype, population)
                        : Probability.of(1, genotypes.size());
                List<Animal> phases = genome.phases(sex, genotype, Map.of());
                for (Animal animal : phases) {
                    Probability conceived = frequency.times(Probability.of(1, 2L * phases.size()));
                    living.put(unlabelled(animal), conceived.times(Mating.viability(genome, animal, "scored")));
                }
            }
        }
        return Founders.normalised(living);
    }

    private void list(int step, BigInteger weight, BigInteger over) {
        if (one && !found.isEmpty()) {
            return;
        }
        if (step == steps.size()) {
            List<Integer> chosen = new ArrayList<>();
            for (int sire : sires) {
                chosen.add(sire);
            }
            found.add(new Found(List.of(animals), chosen, weight, over));
            return;
        }
        steps.get(step).each(chance -> {
            if (++visited > most) {
                throw new TooMany();
            }
            if (!chance.isZero()) {
                list(step + 1, weight.multiply(chance.numerator()), over.multiply(chance.denominator()));
            }
        });
    }

    /** Brings the weights over one common total. */
    private void weigh() {
        Set<BigInteger> totals = new LinkedHashSet<>();
        found.forEach(world -> totals.add(world.total()));
        for (BigInteger one : totals) {
            total = total.multiply(one.divide(total.gcd(one)));
        }
        Map<BigInteger, BigInteger> factors = new HashMap<>();
        totals.forEach(one -> factors.put(one, total.divide(one)));
        for (Found world : found) {
            BigInteger weight = world.weight().multiply(factors.get(world.total()));
            worlds.add(new World(world.animals(), world.sires(), weight));
        }
        found.clear();
    }
}
