package org.geneticsrules.testing.brute;

import java.math.BigInteger;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.brute.Listing.World;

/**
 * What the records of a pedigree tell, found by listing every world: each founder and each unrecorded parent as each animal that it may
 * be, each sire as each candidate, each kit as each animal that its parents may have. A branch ends where its chance is 0; nothing else
 * is left out.
 *
 * <p>The weight of a world is the product of
 *
 * <ul>
 *   <li>for each founder and each unrecorded parent, its Hardy-Weinberg proportion among those of its population that live to be
 *       scored: of its sex if that is known, else of both, half of those conceived being of each;
 *   <li>for each litter or kit with candidate sires, the share of the one who is the sire;
 *   <li>for each kit its chance among the kits, of both sexes, of these two parents that get as far as it did;
 *   <li>for each member the chance of its records.
 * </ul>
 *
 * <p>Two parents all of whose kits are lost have none, so a world in which they have one has no weight; and if each kit has its own
 * sire, he is one of those that can have kits with the dam.
 */
public final class Worlds {

    private final Genome genome;
    private final List<String> persons;
    private final List<World> worlds;
    private final BigInteger total;

    private Worlds(Genome genome, Listing listing) {
        this.genome = genome;
        this.persons = listing.persons;
        this.worlds = listing.worlds;
        this.total = listing.total;
    }

    /**
     * Lists all worlds.
     *
     * @param genome the model
     * @param kindred the pedigree
     * @return what its records tell
     */
    public static Worlds of(Genome genome, Kindred kindred) {
        return new Worlds(genome, new Listing(genome, kindred, true, Long.MAX_VALUE));
    }

    /**
     * Lists all worlds unless that takes too long.
     *
     * @param genome the model
     * @param kindred the pedigree
     * @param most how many choices may be tried
     * @return what its records tell; empty if there are more choices
     */
    public static Optional<Worlds> within(Genome genome, Kindred kindred, long most) {
        try {
            return Optional.of(new Worlds(genome, new Listing(genome, kindred, true, most)));
        } catch (Listing.TooMany tooMany) {
            return Optional.empty();
        }
    }

    /**
     * Lists the worlds that are possible: frequencies, mutation and confusions are left out. The chances of these worlds mean nothing
     * but whether they are 0. A test that may err excludes nothing.
     *
     * @param genome the model
     * @param kindred the pedigree
     * @return what its records exclude
     */
    public static Worlds possible(Genome genome, Kindred kindred) {
        return possibleWithin(genome, kindred, Long.MAX_VALUE).orElseThrow();
    }

    /**
     * Lists the worlds that are possible unless that takes too long.
     *
     * @param genome the model
     * @param kindred the pedigree
     * @param most how many choices may be tried
     * @return what its records exclude; empty if there are more choices
     */
    public static Optional<Worlds> possibleWithin(Genome genome, Kindred kindred, long most) {
        Genome stable = genome.withoutMutation();
        try {
            return Optional.of(new Worlds(stable, new Listing(stable, kindred.withoutConfusions(), false, most)));
        } catch (Listing.TooMany tooMany) {
            return Optional.empty();
        }
    }

    /**
     * Tells whether any world is possible; frequencies, mutation and confusions are left out.
     *
     * @param genome the model
     * @param kindred the pedigree
     * @param most how many choices may be tried
     * @return whether there is one; empty if there are more choices
     */
    public static Optional<Boolean> any(Genome genome, Kindred kindred, long most) {
        try {
            return Optional.of(!new Listing(genome.withoutMutation(), kindred.withoutConfusions(), false, most, true)
                    .worlds.isEmpty());
        } catch (Listing.TooMany tooMany) {
            return Optional.empty();
        }
    }

    /**
     * Counts the worlds.
     *
     * @return how many worlds are not excluded
     */
    public int size() {
        return worlds.size();
    }

    /**
     * Tells how likely all records are together. Where some parents could have no kits, that there are kits counts as a record.
     *
     * @return the sum of the weights of all worlds; 0 if the records contradict one another
     */
    public Probability likelihood() {
        return Probability.of(sum(), total);
    }

    private BigInteger sum() {
        return worlds.stream().map(World::weight).reduce(BigInteger.ZERO, BigInteger::add);
    }

    /**
     * Tells what a member may be.
     *
     * @param id a member
     * @return the chance of each animal with its phase, given all records; nothing if these contradict one another, as for all that
     *     follows
     */
    public Map<Animal, Probability> animals(String id) {
        int at = at(id);
        return chances(world -> world.animals().get(at));
    }

    /**
     * Tells which genotypes over all loci a member may have.
     *
     * @param id a member
     * @return the chance of each genotype
     */
    public Map<Map<String, String>, Probability> genotypes(String id) {
        return merged(animals(id), genome::genotype);
    }

    /**
     * Tells which genotypes a member may have at a locus.
     *
     * @param id a member
     * @param locus a locus
     * @return the chance of each genotype
     */
    public Map<String, Probability> genotypes(String id, String locus) {
        return merged(genotypes(id), genotype -> genotype.get(locus));
    }

    /**
     * Tells of what sex a member may be.
     *
     * @param id a member
     * @return the chance of {@code female} and of {@code male}
     */
    public Map<String, Probability> sexes(String id) {
        return merged(animals(id), Animal::sex);
    }

    /**
     * Tells which genotypes several members may have together.
     *
     * @param ids members
     * @return the chance of each list of genotypes over all loci, in the order of the members
     */
    public Map<List<Map<String, String>>, Probability> jointly(List<String> ids) {
        List<Integer> at = ids.stream().map(this::at).toList();
        return merged(
                chances(world -> at.stream().map(world.animals()::get).toList()),
                together -> together.stream().map(genome::genotype).toList());
    }

    /**
     * Tells who the sire of a kit may be.
     *
     * @param kit a member that is in a litter
     * @return the chance of each candidate, by its place in the list of the litter
     */
    public Map<Integer, Probability> sires(String kit) {
        int at = at(kit);
        return chances(world -> world.sires().get(at));
    }

    private int at(String id) {
        int at = persons.indexOf(id);
        if (at < 0) {
            throw new IllegalArgumentException(id + " is no member");
        }
        return at;
    }

    private <T> Map<T, Probability> chances(Function<World, T> what) {
        Map<T, BigInteger> weights = new LinkedHashMap<>();
        worlds.forEach(world -> weights.merge(what.apply(world), world.weight(), BigInteger::add));
        BigInteger sum = sum();
        Map<T, Probability> chances = new LinkedHashMap<>();
        weights.forEach((one, weight) -> chances.put(one, Probability.of(weight, sum)));
        return chances;
    }

    private static <S, T> Map<T, Probability> merged(Map<S, Probability> chances, Function<S, T> what) {
        Map<T, Probability> merged = new LinkedHashMap<>();
        chances.forEach((one, chance) -> merged.merge(what.apply(one), chance, Probability::plus));
        return merged;
    }
}
