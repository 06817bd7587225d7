package org.geneticsrules.pedigree;

import org.geneticsrules.probability.Probability;

/**
 * Between which bounds a coefficient of kinship lies, given that parents which are not recorded may be recorded animals.
 *
 * @param low the coefficient if they are unrelated to everyone; exact
 * @param high an upper bound if each may be any recorded animal that could have been; at least {@code low}, at most 1
 */
public record KinshipRange(Probability low, double high) {

    /**
     * Checks the order.
     *
     * @param low the lower end
     * @param high the upper end
     * @throws IllegalArgumentException if the upper end is less than the lower, more than 1, or no number
     */
    public KinshipRange {
        if (!(high >= low.toDouble() && high <= 1)) {
            throw new IllegalArgumentException("the upper end " + high + " is not between " + low + " and 1");
        }
    }
}
