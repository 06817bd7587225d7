package org.geneticsrules.inference;

import com.google.common.collect.ImmutableMap;
import java.util.Map;
import java.util.function.Predicate;
import org.geneticsrules.model.AllelePair;

/**
 * What one animal carries at one locus, weighed by all records of the pedigree.
 *
 * @param individual id of the animal
 * @param locus id of the locus
 * @param chances the chance of each genotype that the animal may have, 0 for what is ruled out; they sum to 1 but for rounding
 */
public record Posterior(String individual, String locus, Map<AllelePair, Double> chances) {

    /**
     * Copies the chances.
     *
     * @param individual id of the animal
     * @param locus id of the locus
     * @param chances the chances
     */
    public Posterior {
        chances = ImmutableMap.copyOf(chances);
    }

    /**
     * Returns the chance of one genotype.
     *
     * @param pair a genotype of the locus
     * @return its chance, 0 if the animal cannot have it
     */
    public double chance(AllelePair pair) {
        return chances.getOrDefault(pair, 0.0);
    }

    /**
     * Returns the chance that an animal carries an allele.
     *
     * @param allele id of an allele
     * @return the sum over the genotypes with it
     */
    public double carries(String allele) {
        return chance(pair -> pair.has(allele));
    }

    /**
     * Returns the chance of a set of genotypes.
     *
     * @param set which genotypes count
     * @return the sum of their chances
     */
    public double chance(Predicate<AllelePair> set) {
        double sum = 0;
        for (Map.Entry<AllelePair, Double> one : chances.entrySet()) {
            sum += set.test(one.getKey()) ? one.getValue() : 0;
        }
        return sum;
    }
}
