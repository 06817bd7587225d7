package org.geneticsrules.expression;

import com.google.common.collect.ImmutableList;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Condition;

/**
 * Animals with one chance to show what was seen of them.
 *
 * @param box their sex and expressions; what is not named makes no difference
 * @param weight the chance that such an animal shows all that was seen, more than 0 and at most 1
 */
public record WeightedBox(Condition box, Probability weight) {

    private static final int MOST = 200_000;

    /** The disjoint boxes of a diagram of chances, without those of chance 0. */
    static ImmutableList<WeightedBox> of(Diagram<Probability> chances) {
        ImmutableList.Builder<WeightedBox> boxes = ImmutableList.builder();
        int[] count = {0};
        chances.paths((outcome, box) -> {
            if (!chances.outcomes().get(outcome).isZero()) {
                boxes.add(new WeightedBox(box, chances.outcomes().get(outcome)));
                if (++count[0] > MOST) {
                    throw new TooLargeException(
                            "boxes of genotypes", count[0], MOST, "ask about fewer traits at a time.");
                }
            }
            return true;
        });
        return boxes.build();
    }
}
