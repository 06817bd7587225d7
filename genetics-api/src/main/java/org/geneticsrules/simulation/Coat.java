package org.geneticsrules.simulation;

import com.google.common.collect.ImmutableList;
import java.util.List;
import org.geneticsrules.expression.Expressed;

/**
 * How an animal looks at each look planned.
 *
 * @param looks what is seen and how it came about, in the order of the looks
 */
record Coat(List<Expressed> looks) {
    Coat {
        looks = ImmutableList.copyOf(looks);
    }
}
