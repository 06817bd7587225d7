package org.geneticsrules.hypothesis;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.List;
import java.util.Set;
import org.geneticsrules.model.Genotype;

/**
 * A mating of which the two models foretell different kits.
 *
 * @param sire the father in the first model, over the loci that matter to the traits compared; of linked loci the phase is stated
 * @param dam the mother in the first model
 * @param sireCounterpart the same father in the second model
 * @param damCounterpart the same mother in the second model
 * @param before what the first model foretells of a kit
 * @param after what the second model foretells of a kit
 * @param traits the traits concerned; none if only the share of lost kits differs
 * @param drivers the differences between the models that this one rests on
 */
public record MovedMating(
        Genotype sire,
        Genotype dam,
        Genotype sireCounterpart,
        Genotype damCounterpart,
        Fate before,
        Fate after,
        Set<String> traits,
        List<Change> drivers) {

    /**
     * Copies the collections.
     *
     * @param sire the father in the first model
     * @param dam the mother in the first model
     * @param sireCounterpart the father in the second model
     * @param damCounterpart the mother in the second model
     * @param before what the first model foretells of a kit
     * @param after what the second model foretells of a kit
     * @param traits the traits concerned
     * @param drivers the differences between the models that this one rests on
     */
    public MovedMating {
        traits = ImmutableSet.copyOf(traits);
        drivers = ImmutableList.copyOf(drivers);
    }
}
