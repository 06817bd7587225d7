package org.geneticsrules.answer;

import com.google.common.collect.ImmutableSet;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Phenotype;

/**
 * One look that a kit may have.
 *
 * @param phenotype the look, in the traits asked for; a trait for which the model makes no claim is absent
 * @param probability its chance, where it can be said without assuming frequencies
 * @param chances the chances it may have, depending on what the parents carry; empty where there were too many cases to go through
 */
public record Outcome(Phenotype phenotype, Optional<Probability> probability, Set<Probability> chances) {

    /**
     * Copies the chances.
     *
     * @param phenotype the look
     * @param probability its chance
     * @param chances the chances it may have
     */
    public Outcome {
        chances = ImmutableSet.copyOf(chances);
    }
}
