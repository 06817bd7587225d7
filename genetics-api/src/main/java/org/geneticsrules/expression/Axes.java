package org.geneticsrules.expression;

import java.util.OptionalInt;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.trait.LifeStage;

/** The variables that diagrams of rules test, each at its level. */
interface Axes {

    /** The level of a locus, the sex, the season, or a draw; empty for what is not tested, such as a draw that is certain. */
    OptionalInt position(String name);

    /** The number of values at each level. */
    int[] widths();

    /** The positions of the states that a progression gives at a stage, by the outcome of its draw. */
    int[] progressed(String pointer, CaseState.Progression chain, LifeStage stage);
}
