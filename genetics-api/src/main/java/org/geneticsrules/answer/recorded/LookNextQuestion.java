package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableSet;
import java.util.Collection;
import java.util.Set;
import org.geneticsrules.trait.LifeStage;

/**
 * What should be looked at next in a recorded animal, so as to learn most of what it may be?
 *
 * @param animal id of the animal
 * @param stage when it will be looked at
 * @param traits the traits among which is chosen; empty for all visible traits of the model
 */
public record LookNextQuestion(String animal, LifeStage stage, Set<String> traits) {

    /**
     * Copies the traits.
     *
     * @param animal id of the animal
     * @param stage when it will be looked at
     * @param traits the traits among which is chosen
     */
    public LookNextQuestion {
        traits = ImmutableSet.copyOf(traits);
    }

    /**
     * Asks about all visible traits of the model, at a stage of which nothing is said.
     *
     * @param animal id of the animal
     * @return the question
     */
    public static LookNextQuestion of(String animal) {
        return new LookNextQuestion(animal, LifeStage.unstated(), ImmutableSet.of());
    }

    /**
     * Says when the animal will be looked at.
     *
     * @param when the stage
     * @return a copy
     */
    public LookNextQuestion at(LifeStage when) {
        return new LookNextQuestion(animal, when, traits);
    }

    /**
     * Asks about some traits only.
     *
     * @param some the traits among which is chosen; empty for all visible traits of the model
     * @return a copy
     */
    public LookNextQuestion among(Collection<String> some) {
        return new LookNextQuestion(animal, stage, ImmutableSet.copyOf(some));
    }
}
