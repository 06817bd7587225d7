package org.geneticsrules.hypothesis;

import org.geneticsrules.expression.Census;
import org.geneticsrules.trait.LifeStage;

/**
 * When animals are looked at, and which of them.
 *
 * @param stage the stage of life, which states no more than the models compared depend on
 * @param census whether all that are born count, or all that live until their litter is scored
 */
public record Moment(LifeStage stage, Census census) {

    /** Returns the census and the stage, {@code born, at moult 3}. */
    @Override
    public String toString() {
        return census.word() + (stage.equals(LifeStage.unstated()) ? "" : ", at " + stage);
    }
}
