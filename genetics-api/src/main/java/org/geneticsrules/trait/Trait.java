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
 * @param judgeableFrom the age or moult from which on it can be told; empty if always
 * @param judgeableIn the lights in which it can be told, by the catalogue's words for them; none if in any light
 * @param note how it is looked at, or what it does not mean
 */
public record Trait(
        String id,
        Optional<String> title,
        List<String> states,
        boolean ordered,
        Optional<LifeStage> judgeableFrom,
        List<String> judgeableIn,
        Optional<String> note) {

    /**
     * Copies the states and checks the stage.
     *
     * @param id plain words
     * @param title a longer title
     * @param states the states in declared order
     * @param ordered whether the order is one of degree
     * @param judgeableFrom the age or moult from which on it can be told
     * @param judgeableIn the lights in which it can be told
     * @param note a note
     * @throws IllegalArgumentException if {@code judgeableFrom} states both an age and a moult, neither, or a season
     */
    public Trait {
        states = ImmutableList.copyOf(states);
        judgeableIn = ImmutableList.copyOf(judgeableIn);
        judgeableFrom.filter(stage -> !stage.isOneCount()).ifPresent(stage -> {
            throw new IllegalArgumentException(
                    "\"" + id + "\" is judgeable from an age or from a moult, and from nothing else, but was " + stage);
        });
    }

    /**
     * Returns an unordered trait without title or note.
     *
     * @param id plain words
     * @param states the states in declared order
     * @return the trait
     */
    public static Trait of(String id, String... states) {
        return new Trait(id, Optional.empty(), List.of(states), false, Optional.empty(), List.of(), Optional.empty());
    }

    /**
     * Returns this trait as one that cannot be told before a stage of life.
     *
     * @param stage an age or a moult
     * @return a copy
     * @throws IllegalArgumentException if the stage states both, neither, or a season
     */
    public Trait judgeableFrom(LifeStage stage) {
        return new Trait(id, title, states, ordered, Optional.of(stage), judgeableIn, note);
    }

    /**
     * Returns this trait as one that can be told in some lights only.
     *
     * @param lights the catalogue's words for them; none if it can be told in any light
     * @return a copy
     */
    public Trait judgeableIn(List<String> lights) {
        return new Trait(id, title, states, ordered, judgeableFrom, lights, note);
    }

    /**
     * Tells whether the trait can be told at a stage of life.
     *
     * @param stage when the animal is looked at
     * @return yes if the stage is late enough, no if it is earlier than {@link #judgeableFrom()}, unknown if it does not state the count
     *     that matters
     */
    public Judgeable judgeable(LifeStage stage) {
        return Judgeable.at(stage, judgeableFrom);
    }

    /**
     * Tells whether the trait can be told in a light.
     *
     * @param light the light the animal is looked at in, if stated
     * @return yes if it can be told in this or in any light, no if not in this one, unknown if the light matters and is not stated
     */
    public Judgeable judgeable(Optional<String> light) {
        if (judgeableIn.isEmpty()) {
            return Judgeable.YES;
        }
        return light.map(stated -> judgeableIn.contains(stated) ? Judgeable.YES : Judgeable.NO)
                .orElse(Judgeable.UNKNOWN);
    }
}
