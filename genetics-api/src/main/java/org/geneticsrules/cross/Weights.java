package org.geneticsrules.cross;

import java.math.BigInteger;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.expression.PhenotypeDiagram;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.trait.Phenotype;

/** Whole-number weights on their way through a diagram. */
final class Weights {

    private Weights() {}

    /** Uses longs while the common total fits one, and whole numbers of any size beyond. */
    static Distribution<Phenotype> distribution(PhenotypeDiagram diagram, long[][] weights) {
        int bits = 0;
        for (long[] shares : weights) {
            bits += 64 - Long.numberOfLeadingZeros(Arrays.stream(shares).sum());
        }
        List<Phenotype> phenotypes = diagram.phenotypes();
        Map<Phenotype, Number> result = new LinkedHashMap<>();
        if (bits < 63) {
            long[] leaves = diagram.weigh(weights);
            for (int i = 0; i < leaves.length; i++) {
                if (leaves[i] > 0) {
                    result.put(phenotypes.get(i), leaves[i]);
                }
            }
        } else {
            BigInteger[] leaves = diagram.weigh(exact(weights));
            for (int i = 0; i < leaves.length; i++) {
                if (leaves[i].signum() > 0) {
                    result.put(phenotypes.get(i), leaves[i]);
                }
            }
        }
        return Distribution.ofWeights(result);
    }

    static BigInteger[][] exact(long[][] weights) {
        BigInteger[][] exact = new BigInteger[weights.length][];
        for (int level = 0; level < weights.length; level++) {
            exact[level] =
                    Arrays.stream(weights[level]).mapToObj(BigInteger::valueOf).toArray(BigInteger[]::new);
        }
        return exact;
    }

    static long gcd(long a, long b) {
        return b == 0 ? a : gcd(b, a % b);
    }
}
