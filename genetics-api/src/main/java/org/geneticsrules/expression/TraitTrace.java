package org.geneticsrules.expression;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;

/**
 * How one trait came to look as it does in one animal.
 *
 * @param trait id of the trait
 * @param own what it would show if nothing covered it; empty where the model makes no claim
 * @param rule pointer of the case that gave the own state
 * @param reads the traits whose own states decided which case holds
 * @param draw what chance decided, where the own state is a matter of chance: the state, or the residual amount of a threshold trait
 * @param shown what is seen; empty where the model makes no claim
 * @param masks the active masks that cover the trait and decide what is seen, in declared order
 */
public record TraitTrace(
        String trait,
        Optional<String> own,
        Optional<String> rule,
        List<String> reads,
        Optional<String> draw,
        Optional<String> shown,
        List<String> masks) {

    /**
     * Copies the lists.
     *
     * @param trait id of the trait
     * @param own its own state
     * @param rule pointer of the deciding case
     * @param reads the traits read
     * @param draw what chance decided
     * @param shown what is seen
     * @param masks the deciding masks
     */
    public TraitTrace {
        reads = ImmutableList.copyOf(reads);
        masks = ImmutableList.copyOf(masks);
    }

    /**
     * Tells whether something else is seen than lies beneath.
     *
     * @return true if a mask changes the own state, or covers one that is not modelled
     */
    public boolean isMasked() {
        return !masks.isEmpty() && !own.equals(shown);
    }
}
