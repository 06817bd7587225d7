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
 * @param standardErrors the standard error of each chance if they are sampled; of none if they are exact. Where linked loci are followed
 *     together it is an upper bound: the sum over combinations
 */
public record Posterior(
        String individual, String locus, Map<AllelePair, Double> chances, Map<AllelePair, Double> standardErrors) {

    /**
     * Copies the chances.
     *
     * @param individual id of the animal
     * @param locus id of the locus
     * @param chances the chances
     * @param standardErrors the standard errors
     */
    public Posterior {
        chances = ImmutableMap.copyOf(chances);
        standardErrors = ImmutableMap.copyOf(standardErrors);
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

    /**
     * Returns the standard error of the chance of one genotype. About 95 of 100 such chances are off by less than twice as much;
     * a chance near 0 or 1 may be off by several times as much more often than that suggests, because what was hardly ever drawn is known from few draws:
     * of what was never drawn in n independent draws, a chance of 3/n is missed once in twenty.
     *
     * @param pair a genotype of the locus
     * @return its standard error, 0 if the chance is exact
     */
    public double standardError(AllelePair pair) {
        return standardErrors.getOrDefault(pair, 0.0);
    }

    /**
     * Returns how large the standard error of the chance of a set of genotypes may be.
     *
     * @param set which genotypes count
     * @return the sum over these genotypes, or over all others if that is less: errors may make up for one another, but no more than add up;
     *     0 if the chances are exact
     */
    public double standardError(Predicate<AllelePair> set) {
        double inside = 0;
        double outside = 0;
        for (Map.Entry<AllelePair, Double> one : standardErrors.entrySet()) {
            if (set.test(one.getKey())) {
                inside += one.getValue();
            } else {
                outside += one.getValue();
            }
        }
        return Math.min(inside, outside);
    }
}
