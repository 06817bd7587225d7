package org.geneticsrules.comparison;

import com.google.common.collect.ImmutableList;
import java.util.List;

/**
 * What one litter says of each model.
 *
 * @param litter id of the litter
 * @param kindred number of its kindred, from 0; what one kindred says is independent of what another does
 * @param logs for each candidate, the natural logarithm of the chance of the kits' records given the founders' records and those of litters
 *     of the kindred looked at before; negative infinity if that cannot be
 * @param known for each candidate, false if it could not be even before this litter, and nothing more can be said of it
 */
public record LitterEvidence(String litter, int kindred, List<Double> logs, List<Boolean> known) {

    /**
     * Copies the numbers.
     *
     * @param litter id of the litter
     * @param kindred number of its kindred
     * @param logs for each candidate, the logarithm of a chance
     * @param known for each candidate, whether something can be said
     */
    public LitterEvidence {
        logs = ImmutableList.copyOf(logs);
        known = ImmutableList.copyOf(known);
    }
}
