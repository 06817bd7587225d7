package org.geneticsrules.comparison;

import com.google.common.collect.ImmutableMap;
import java.util.Map;
import java.util.Optional;

/**
 * How a litter goes with what all records say of its parents, under one model.
 *
 * @param litter its id
 * @param standing impossible, unlikely (p below 1 in 20), fine, or not judged
 * @param counts of kits that were looked at in the same way, by look, each look that is possible or was seen
 * @param expected by the same looks, how many of so many kits are expected
 * @param p the chance of a litter of this size that is no likelier than this one, if that was found
 * @param standardError of p if litters were drawn for it, else 0
 * @param untested why no p is given, if none is
 */
public record LitterFit(
        String litter,
        KitFit.Standing standing,
        Map<Shown, Integer> counts,
        Map<Shown, Double> expected,
        Optional<Double> p,
        double standardError,
        Optional<String> untested) {

    /**
     * Copies the counts.
     *
     * @param litter its id
     * @param standing its standing
     * @param counts of kits by look
     * @param expected how many are expected
     * @param p chance of one no likelier
     * @param standardError of p
     * @param untested why there is none
     */
    public LitterFit {
        counts = ImmutableMap.copyOf(counts);
        expected = ImmutableMap.copyOf(expected);
    }
}
