package org.geneticsrules.answer;

import java.util.LinkedHashMap;
import java.util.Map;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;

/**
 * How many of the kits of a litter that are yet to be seen show the look asked for.
 *
 * @param size how many kits there will be
 * @param counts the chances of 0, 1, 2, .. of them showing it
 * @param all the chance that there are kits and every one shows it
 */
public record Litter(LitterSize size, Distribution<Integer> counts, Probability all) {

    /**
     * Counts in a litter whose kits show the look independently, each with one chance, but that chance is not known for certain.
     *
     * @param size how many kits there will be
     * @param chances how likely each chance is, which depends on what the parents are
     * @return the litter
     */
    static Litter of(LitterSize size, Distribution<Probability> chances) {
        Distribution<Boolean> every = chances.flatMap(
                chance -> size.kits().flatMap(kits -> trial(kits == 0 ? Probability.ZERO : chance.pow(kits))));
        return new Litter(size, chances.flatMap(size::count), every.probability(true));
    }

    private static Distribution<Boolean> trial(Probability chance) {
        Map<Boolean, Probability> outcomes = new LinkedHashMap<>();
        outcomes.put(true, chance);
        outcomes.put(false, chance.complement());
        return Distribution.of(outcomes);
    }

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
     * @return a number from 0 to the largest size
     */
    public double expected() {
        double sum = 0;
        for (Map.Entry<Integer, Probability> count : counts.asMap().entrySet()) {
            sum += count.getKey() * count.getValue().toDouble();
        }
        return sum;
    }
}
