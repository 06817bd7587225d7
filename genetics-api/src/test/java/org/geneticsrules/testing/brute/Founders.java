package org.geneticsrules.testing.brute;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.probability.Probability;

/** Animals of which a set of genotypes is known, weighed by a population. */
public final class Founders {

    private Founders() {}

    /**
     * Weighs a set of genotypes: by Hardy-Weinberg proportions of a population, loci independent of one another and of the phase; by how
     * likely such an animal is to live; and by what was seen of this one.
     *
     * @param genome the model
     * @param sex sex of the animal
     * @param set distinct full genotypes that animals of this sex may have
     * @param phase what is known of its phase
     * @param population id of a population that gives the frequencies of every locus; {@code ""} if the set has one member
     * @param step how far the animal got: {@code conceived}, {@code born} or {@code scored}
     * @param sightings what was seen of it
     * @return the chance of each animal; nothing if no such animal can be
     */
    public static Map<Animal, Probability> of(
            Genome genome,
            String sex,
            List<Map<String, String>> set,
            Map<String, String> phase,
            String population,
            String step,
            List<Seen> sightings) {
        Map<Animal, Probability> weights = new LinkedHashMap<>();
        for (Map<String, String> genotype : set) {
            int ways = genome.phases(sex, genotype, Map.of()).size();
            for (Animal animal : genome.phases(sex, genotype, phase)) {
                Probability frequency =
                        population.isEmpty() ? Probability.ONE : frequency(genome, genotype, population);
                Probability weight = frequency
                        .times(Probability.of(1, ways))
                        .times(Probability.of(1, set.size()))
                        .times(Mating.viability(genome, animal, step));
                if (!weight.isZero()) {
                    weights.put(animal, weight.times(Life.agrees(genome, animal, sightings)));
                }
            }
        }
        return normalised(weights);
    }

    /**
     * Tells how common a genotype is.
     *
     * @param genome the model
     * @param genotype a full genotype
     * @param population id of a population
     * @return p^2 for a homozygote, 2pq for a heterozygote and p for a lone allele, multiplied over loci
     */
    public static Probability frequency(Genome genome, Map<String, String> genotype, String population) {
        Map<String, Object> stated =
                Plain.object(Plain.object(Plain.object(genome.model(), "populations"), population), "frequencies");
        Probability frequency = Probability.ONE;
        for (Map.Entry<String, String> locus : genotype.entrySet()) {
            Map<String, Object> shares = Plain.object(stated, locus.getKey());
            String[] alleles = locus.getValue().isEmpty()
                    ? new String[0]
                    : locus.getValue().split("/", -1);
            for (String allele : alleles) {
                frequency = frequency.times(Plain.chance(shares.get(allele)));
            }
            if (alleles.length == 2 && !alleles[0].equals(alleles[1])) {
                frequency = frequency.plus(frequency);
            }
        }
        return frequency;
    }

    /** Drops what cannot be, and scales the rest so that it sums to 1. */
    static <T> Map<T, Probability> normalised(Map<T, Probability> weights) {
        Probability sum = weights.values().stream().reduce(Probability.ZERO, Probability::plus);
        Map<T, Probability> shares = new LinkedHashMap<>();
        weights.forEach((what, weight) -> {
            if (!weight.isZero()) {
                shares.put(what, weight.dividedBy(sum));
            }
        });
        return shares;
    }
}
