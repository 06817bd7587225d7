package org.geneticsrules.expression;

import com.google.common.collect.ImmutableList;
import java.util.List;
import org.geneticsrules.probability.Distribution;

/**
 * What chance decides once in the life of an animal: the state of a case by chance, the states of a progression at the stages looked
 * at, the residual of a threshold trait, or whether the animal of some expression is lost.
 *
 * @param statement pointer of the case or viability statement whose chance it is; the name of the draw
 * @param outcomes the chance of each outcome, in declared order; for a progression the states at the stages looked at, joined by
 *     {@code " then "}
 */
public record Draw(String statement, Distribution<String> outcomes) {

    /**
     * Returns the outcomes.
     *
     * @return outcomes of positive chance in declared order
     */
    public List<String> values() {
        return ImmutableList.copyOf(outcomes.outcomes());
    }
}
