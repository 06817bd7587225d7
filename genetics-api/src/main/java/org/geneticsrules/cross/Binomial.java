package org.geneticsrules.cross;

import java.math.BigInteger;
import java.util.LinkedHashMap;
import java.util.Map;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;

/** The exact binomial distribution, for kits that are independent of one another. */
final class Binomial {

    /** Larger litters do not exist; the limit keeps the exact numbers small. */
    static final int MOST_KITS = 1000;

    private Binomial() {}

    static Distribution<Integer> of(Probability chance, int kits) {
        requireKits(kits);
        BigInteger success = chance.numerator();
        BigInteger failure = chance.denominator().subtract(success);
        Map<Integer, BigInteger> weights = new LinkedHashMap<>();
        BigInteger ways = BigInteger.ONE;
        for (int k = 0; k <= kits; k++) {
            weights.put(k, ways.multiply(success.pow(k)).multiply(failure.pow(kits - k)));
            ways = ways.multiply(BigInteger.valueOf(kits - k)).divide(BigInteger.valueOf(k + 1));
        }
        return Distribution.ofWeights(weights);
    }

    static void requireKits(int kits) {
        if (kits < 0 || kits > MOST_KITS) {
            throw new IllegalArgumentException("the number of kits must be 0 to " + MOST_KITS + ", but was " + kits);
        }
    }
}
