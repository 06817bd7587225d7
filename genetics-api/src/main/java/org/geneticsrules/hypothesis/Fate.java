package org.geneticsrules.hypothesis;

import java.math.BigInteger;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Phenotype;

/**
 * What becomes of animals under one model: of all of one genotype, or of the kits of one mating.
 *
 * @param lost the share of those conceived that is lost before it is counted
 * @param looks the chances of what the others show; empty if none is left. A trait for which the model makes no claim is not named;
 *     {@code sex} is named where the sexes may differ and are not given
 */
public record Fate(Probability lost, Optional<Distribution<Phenotype>> looks) {

    /** From whole weights of looks; no look is that of a lost animal. */
    static Fate of(Map<Optional<Phenotype>, BigInteger> weights) {
        Map<Phenotype, BigInteger> counted = new LinkedHashMap<>();
        BigInteger total = BigInteger.ZERO;
        for (Map.Entry<Optional<Phenotype>, BigInteger> one : weights.entrySet()) {
            total = total.add(one.getValue());
            one.getKey().ifPresent(look -> counted.merge(look, one.getValue(), BigInteger::add));
        }
        BigInteger lost = weights.getOrDefault(Optional.<Phenotype>empty(), BigInteger.ZERO);
        return new Fate(
                Probability.of(lost, total),
                counted.isEmpty() ? Optional.empty() : Optional.of(Distribution.ofWeights(counted)));
    }
}
