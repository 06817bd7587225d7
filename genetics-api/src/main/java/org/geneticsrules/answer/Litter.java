package org.geneticsrules.answer;

import java.util.Map;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;

/**
 * How many kits of a litter show the look asked for.
 *
 * @param kits number of kits in the litter
 * @param counts the chances of 0, 1, 2, .. of them showing it
 */
public record Litter(int kits, Distribution<Integer> counts) {

    /**
     * Returns the chance of at least one such kit.
     *
     * @return 1 minus the chance of none
     */
    public Probability atLeastOne() {
        return counts.probability(0).complement();
    }

    /**
     * Returns the average number of such kits over many litters of this size.
     *
     * @return a number from 0 to {@link #kits()}
     */
    public double expected() {
        double sum = 0;
        for (Map.Entry<Integer, Probability> count : counts.asMap().entrySet()) {
            sum += count.getKey() * count.getValue().toDouble();
        }
        return sum;
    }
}
