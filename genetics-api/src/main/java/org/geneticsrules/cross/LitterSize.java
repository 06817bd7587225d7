package org.geneticsrules.cross;

import java.util.Map;
import java.util.Optional;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;

/**
 * How many kits a litter may hold: a number, or a named distribution.
 *
 * @param name words for it, such as where the numbers come from
 * @param kits the chance of each number, 0 to 1000
 * @param source where a distribution was taken from, if it was published
 */
public record LitterSize(String name, Distribution<Integer> kits, Optional<String> source) {

    /**
     * Checks the range.
     *
     * @param name words for it
     * @param kits the chance of each number
     * @param source where it was taken from
     * @throws IllegalArgumentException if a number is out of range
     */
    public LitterSize {
        kits.outcomes().forEach(Binomial::requireKits);
    }

    /**
     * Returns a litter of known size.
     *
     * @param kits number of kits, 0 to 1000
     * @return the size
     * @throws IllegalArgumentException if the number is out of range
     */
    public static LitterSize of(int kits) {
        return new LitterSize(kits + (kits == 1 ? " kit" : " kits"), Distribution.certain(kits), Optional.empty());
    }

    /**
     * Returns a named distribution of sizes.
     *
     * @param name words for it
     * @param kits the chance of each number
     * @return the size
     */
    public static LitterSize named(String name, Distribution<Integer> kits) {
        return new LitterSize(name, kits, Optional.empty());
    }

    /**
     * Returns the chances of how many kits show something that each shows with one chance, independently.
     *
     * @param chance the chance of each kit
     * @return a mixture of binomial distributions
     */
    public Distribution<Integer> count(Probability chance) {
        return kits.flatMap(number -> Binomial.of(chance, number));
    }

    /**
     * Returns the chance that no kit shows something that each shows with one chance, independently.
     *
     * @param chance the chance of each kit
     * @return the chance of none
     */
    Probability none(Probability chance) {
        Probability none = Probability.ZERO;
        for (Map.Entry<Integer, Probability> number : kits.asMap().entrySet()) {
            none = none.plus(number.getValue().times(chance.complement().pow(number.getKey())));
        }
        return none;
    }
}
