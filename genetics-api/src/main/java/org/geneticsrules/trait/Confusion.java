package org.geneticsrules.trait;

import java.util.Optional;
import org.geneticsrules.probability.Probability;

/**
 * How often one state of a trait is recorded as another, by whoever names what is seen.
 *
 * @param trait id of the trait
 * @param shown the state that the animal shows
 * @param read the state that is recorded instead, another
 * @param stage the stage at which this happens, as far as it is stated; empty if at any
 * @param chance how often, more than 0 and at most 1
 */
public record Confusion(String trait, String shown, String read, Optional<LifeStage> stage, Probability chance) {

    /**
     * Checks the parts.
     *
     * @param trait id of the trait
     * @param shown the state shown
     * @param read the state recorded
     * @param stage the stage
     * @param chance how often
     * @throws IllegalArgumentException if the states are the same or the chance is 0
     */
    public Confusion {
        if (shown.equals(read)) {
            throw new IllegalArgumentException(
                    "a confusion takes one state for another, but both were \"" + shown + "\"");
        }
        if (chance.isZero()) {
            throw new IllegalArgumentException("a confusion of chance 0 never happens; leave it out");
        }
    }

    /** Whether it may happen at a stage: all that is stated of its own is so there. */
    boolean appliesAt(LifeStage at) {
        return stage.isEmpty()
                || ((stage.get().weeks().isEmpty() || stage.get().weeks().equals(at.weeks()))
                        && (stage.get().moult().isEmpty() || stage.get().moult().equals(at.moult()))
                        && (stage.get().season().isEmpty()
                                || stage.get().season().equals(at.season())));
    }
}
