package org.geneticsrules.answer;

import com.google.common.collect.ImmutableSet;
import java.util.Set;
import org.geneticsrules.trait.LifeStage;

/**
 * How does an animal's look come about, and what does it not tell?
 *
 * @param animal what is known of the animal, its sex among it
 * @param traits the traits asked for; empty for all the model rules that can be told at the stage
 * @param stage when it is looked at
 */
public record CoatQuestion(Animal animal, Set<String> traits, LifeStage stage) {

    /**
     * Copies the traits.
     *
     * @param animal the animal
     * @param traits the traits asked for
     * @param stage when it is looked at
     */
    public CoatQuestion {
        traits = ImmutableSet.copyOf(traits);
    }

    /**
     * Asks about an animal at a stage of which nothing is said.
     *
     * @param animal the animal
     * @param traits the traits asked for; empty for all the model rules
     */
    public CoatQuestion(Animal animal, Set<String> traits) {
        this(animal, traits, LifeStage.unstated());
    }

    /**
     * Asks about the animal at a stage of its life.
     *
     * @param when when it is looked at
     * @return a copy
     */
    public CoatQuestion at(LifeStage when) {
        return new CoatQuestion(animal, traits, when);
    }
}
