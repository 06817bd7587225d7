package org.geneticsrules.trait;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;

/**
 * Something that is observed of every animal separately, such as the hue of the hair or the colour of the eye.
 *
 * @param id plain words by which models and records name it
 * @param title a longer title, if the id does not say it all
 * @param states the states it can show, in declared order
 * @param ordered whether the declared order is an order of degree
 * @param note how it is looked at, or what it does not mean
 */
public record Trait(String id, Optional<String> title, List<String> states, boolean ordered, Optional<String> note) {

    /**
     * Copies the states.
     *
     * @param id plain words
     * @param title a longer title
     * @param states the states in declared order
     * @param ordered whether the order is one of degree
     * @param note a note
     */
    public Trait {
        states = ImmutableList.copyOf(states);
    }

    /**
     * Returns an unordered trait without title or note.
     *
     * @param id plain words
     * @param states the states in declared order
     * @return the trait
     */
    public static Trait of(String id, String... states) {
        return new Trait(id, Optional.empty(), List.of(states), false, Optional.empty());
    }
}
