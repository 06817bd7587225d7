package org.geneticsrules.trait;

import java.util.Optional;
import java.util.OptionalInt;

/** Whether a trait can be told at a stage of life, or in a light. */
public enum Judgeable {
    /** What is seen then is the state of the trait. */
    YES,
    /** It is too early, or the light is none to tell it in: what is seen then says nothing of the trait. */
    NO,
    /** The count from which the trait can be told, or the light, is not stated. */
    UNKNOWN;

    /**
     * Tells whether something can be told at a stage of life.
     *
     * @param stage when the animal is looked at
     * @param from the age or moult from which on it can be told; empty if always
     * @return yes if the stage is late enough, no if it is too early, unknown if it does not state the count that matters
     */
    public static Judgeable at(LifeStage stage, Optional<LifeStage> from) {
        for (Clock clock : Clock.values()) {
            OptionalInt least = from.map(first -> first.count(clock)).orElse(OptionalInt.empty());
            if (least.isPresent()) {
                OptionalInt count = stage.count(clock);
                if (count.isEmpty()) {
                    return UNKNOWN;
                }
                return count.getAsInt() < least.getAsInt() ? NO : YES;
            }
        }
        return YES;
    }
}
