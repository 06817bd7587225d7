package org.geneticsrules.cross;

import java.util.Optional;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Population;

/**
 * What is known of one parent: the genotypes it may have, and the population it is taken to come from, if chances are to be weighted.
 *
 * @param genotypes the genotypes it may have
 * @param population the population whose frequencies weigh them; empty if only what is possible is asked
 */
public record Parent(GenotypeSet genotypes, Optional<Population> population) {

    /**
     * Returns a parent of whom nothing is assumed but a set of genotypes.
     *
     * @param genotypes the genotypes it may have
     * @return the parent
     */
    public static Parent among(GenotypeSet genotypes) {
        return new Parent(genotypes, Optional.empty());
    }

    /**
     * Returns a parent of known genotype at some or all loci.
     *
     * @param model the model of the genotype
     * @param genotype the genotype; loci that it does not cover are unknown
     * @return the parent
     */
    public static Parent of(Model model, Genotype genotype) {
        return among(GenotypeSet.of(model, genotype));
    }

    /**
     * Returns this parent as an animal of a population.
     *
     * @param named the population
     * @return the parent with Hardy-Weinberg weights restricted to its set
     */
    public Parent from(Population named) {
        return new Parent(genotypes, Optional.of(named));
    }
}
