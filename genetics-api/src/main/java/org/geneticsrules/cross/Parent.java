package org.geneticsrules.cross;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Phase;
import org.geneticsrules.model.Population;
import org.geneticsrules.trait.Reading;
import org.geneticsrules.trait.Sighting;

/**
 * What is known of one parent: the genotypes it may have, what it was seen to look like, and the population it is taken to come from,
 * if chances are to be weighted.
 *
 * @param genotypes the genotypes it may have
 * @param phase which alleles of linked loci are known to lie on one strand; where that is not known, neighbouring heterozygous loci are
 *     in coupling or in repulsion with 1/2 each
 * @param looks what was recorded of how it looked, at one or several stages of its life
 * @param population the population whose frequencies weigh the genotypes; empty if only what is possible is asked
 */
public record Parent(GenotypeSet genotypes, Phase phase, List<Reading> looks, Optional<Population> population) {

    /**
     * Copies the looks.
     *
     * @param genotypes the genotypes it may have
     * @param phase what is known of the phase
     * @param looks what was seen
     * @param population the population
     */
    public Parent {
        looks = ImmutableList.copyOf(looks);
    }

    /**
     * Returns a parent of whom nothing is assumed but a set of genotypes.
     *
     * @param genotypes the genotypes it may have
     * @return the parent
     */
    public static Parent among(GenotypeSet genotypes) {
        return new Parent(genotypes, Phase.unknown(), ImmutableList.of(), Optional.empty());
    }

    /**
     * Returns a parent of known genotype at some or all loci.
     *
     * @param model the model of the genotype
     * @param genotype the genotype with what is known of its phase; loci that it does not cover are unknown
     * @return the parent
     */
    public static Parent of(Model model, Genotype genotype) {
        return among(GenotypeSet.of(model, genotype)).with(genotype.phase());
    }

    /**
     * Returns this parent as an animal of a population.
     *
     * @param named the population
     * @return the parent with Hardy-Weinberg weights restricted to what is known of it
     */
    public Parent from(Population named) {
        return new Parent(genotypes, phase, looks, Optional.of(named));
    }

    /**
     * Returns this parent with known strands.
     *
     * @param known which alleles lie on one strand
     * @return a copy
     */
    public Parent with(Phase known) {
        return new Parent(genotypes, known, looks, population);
    }

    /**
     * Returns this parent with one more record of what it looked like.
     *
     * @param sighting what was seen, and when
     * @return a copy
     */
    public Parent seen(Sighting sighting) {
        return new Parent(
                genotypes,
                phase,
                ImmutableList.<Reading>builder()
                        .addAll(looks)
                        .add(Reading.of(sighting))
                        .build(),
                population);
    }
}
