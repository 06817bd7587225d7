package org.geneticsrules.expression;

import com.google.common.collect.ImmutableList;
import java.util.List;
import org.geneticsrules.trait.LifeStage;

/** Some traits looked at together at one stage; {@code sex} may stand among them. */
record Look(List<String> traits, LifeStage stage) {
    Look {
        traits = ImmutableList.copyOf(traits);
    }
}
