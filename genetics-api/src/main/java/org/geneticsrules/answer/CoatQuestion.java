package org.geneticsrules.answer;

import com.google.common.collect.ImmutableSet;
import java.util.Set;

/**
 * How does an animal's look come about, and what does it not tell?
 *
 * @param animal what is known of the animal
 * @param traits the traits asked for; empty for all the model rules
 */
public record CoatQuestion(Animal animal, Set<String> traits) {

    /**
     * Copies the traits.
     *
     * @param animal the animal
     * @param traits the traits asked for
     */
    public CoatQuestion {
        traits = ImmutableSet.copyOf(traits);
    }
}
