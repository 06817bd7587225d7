package org.geneticsrules.hypothesis;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.trait.Sex;

/**
 * A genotype of which the two models foretell different things.
 *
 * @param sex the sex of the animal; empty where it does not matter
 * @param genotype the genotype in the first model, over the loci that matter to the traits compared
 * @param counterpart the same animal's genotype in the second model
 * @param before what the first model foretells
 * @param after what the second model foretells
 * @param traits the traits concerned; none if only the share of lost animals differs
 * @param drivers the differences between the models that this one rests on
 */
public record MovedGenotype(
        Optional<Sex> sex,
        Genotype genotype,
        Genotype counterpart,
        Fate before,
        Fate after,
        Set<String> traits,
        List<Change> drivers) {

    /**
     * Copies the collections.
     *
     * @param sex the sex of the animal
     * @param genotype the genotype in the first model
     * @param counterpart the genotype in the second model
     * @param before what the first model foretells
     * @param after what the second model foretells
     * @param traits the traits concerned
     * @param drivers the differences between the models that this one rests on
     */
    public MovedGenotype {
        traits = ImmutableSet.copyOf(traits);
        drivers = ImmutableList.copyOf(drivers);
    }
}
