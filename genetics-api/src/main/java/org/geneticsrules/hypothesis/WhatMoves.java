package org.geneticsrules.hypothesis;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.document.Reference;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.trait.LifeStage;

/**
 * What moves from one model to another.
 *
 * @param before the first model
 * @param after the second model
 * @param changes the statements in which they differ, evidence aside, in the order of the documents
 * @param traits the traits compared: those asked for that both model
 * @param onlyBefore traits asked for that only the first models
 * @param onlyAfter traits asked for that only the second models
 * @param reference for each locus that matters, the allele that animals carry twice unless an example says otherwise
 * @param limits what could not be compared and is left out, in sentences
 * @param stage the stage of life asked about; empty if all were
 * @param moments the moments examined, in order; those after the first at which something moves only if that was not found before
 * @param genotypes the genotypes that move
 * @param matings the matings that move, of parents that live under both models
 */
public record WhatMoves(
        Reference before,
        Reference after,
        List<Change> changes,
        Set<String> traits,
        Set<String> onlyBefore,
        Set<String> onlyAfter,
        Map<String, String> reference,
        List<String> limits,
        Optional<LifeStage> stage,
        List<Moment> moments,
        Moved<MovedGenotype> genotypes,
        Moved<MovedMating> matings) {

    /**
     * Copies the collections.
     *
     * @param before the first model
     * @param after the second model
     * @param changes the statements in which they differ
     * @param traits the traits compared
     * @param onlyBefore traits that only the first models
     * @param onlyAfter traits that only the second models
     * @param reference the reference allele of each locus
     * @param limits what could not be compared
     * @param stage the stage of life asked about; empty if all were
     * @param moments the moments examined
     * @param genotypes the genotypes that move
     * @param matings the matings that move
     */
    public WhatMoves {
        changes = ImmutableList.copyOf(changes);
        traits = ImmutableSet.copyOf(traits);
        onlyBefore = ImmutableSet.copyOf(onlyBefore);
        onlyAfter = ImmutableSet.copyOf(onlyAfter);
        reference = ImmutableMap.copyOf(reference);
        limits = ImmutableList.copyOf(limits);
        moments = ImmutableList.copyOf(moments);
    }

    /**
     * Tells whether nothing moves.
     *
     * @return true if the models foretell the same of every genotype and every mating that can be compared; this is proved, not sampled
     */
    public boolean isNothing() {
        return genotypes.isEmpty() && matings.isEmpty();
    }

    /**
     * Returns the answer in one sentence.
     *
     * @return the smallest genotype and the smallest mating that move, or that nothing does
     */
    public String verdict() {
        return Verdict.of(this);
    }

    /**
     * Returns the part of a genotype in which it is other than the reference.
     *
     * @param genotype a genotype of an example
     * @return its loci with any other allele than {@link #reference()} names; none for the reference itself
     */
    public Genotype apart(Genotype genotype) {
        List<String> loci = genotype.pairs().values().stream()
                .filter(pair ->
                        pair.alleles().stream().anyMatch(allele -> !allele.id().equals(reference.get(pair.locus()))))
                .map(AllelePair::locus)
                .toList();
        return genotype.restrictedTo(loci);
    }
}
