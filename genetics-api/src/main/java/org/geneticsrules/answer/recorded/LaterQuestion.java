package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableSet;
import java.util.Collection;
import java.util.Set;
import org.geneticsrules.trait.LifeStage;

/**
 * What may a recorded animal show at a stage of its life, by all that is recorded of it and its relatives?
 *
 * @param animal id of the animal
 * @param stage when it will be looked at; one that is past may be asked about too
 * @param traits the traits asked for; empty for all visible traits of the model
 */
public record LaterQuestion(String animal, LifeStage stage, Set<String> traits) {

    /**
     * Copies the traits.
     *
     * @param animal id of the animal
     * @param stage when it will be looked at
     * @param traits the traits asked for
     * @throws IllegalArgumentException if the stage states neither an age nor a moult nor a season
     */
    public LaterQuestion {
        if (stage.equals(LifeStage.unstated())) {
            throw new IllegalArgumentException(
                    "a stage states an age, a moult or a season, but this one states nothing");
        }
        traits = ImmutableSet.copyOf(traits);
    }

    /**
     * Asks about all visible traits of the model.
     *
     * @param animal id of the animal
     * @param stage when it will be looked at
     * @return the question
     * @throws IllegalArgumentException if the stage states nothing
     */
    public static LaterQuestion of(String animal, LifeStage stage) {
        return new LaterQuestion(animal, stage, ImmutableSet.of());
    }

    /**
     * Asks about some traits only.
     *
     * @param some the traits asked for; empty for all visible traits of the model
     * @return a copy
     */
    public LaterQuestion in(Collection<String> some) {
        return new LaterQuestion(animal, stage, ImmutableSet.copyOf(some));
    }
}
