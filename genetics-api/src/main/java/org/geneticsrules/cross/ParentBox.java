package org.geneticsrules.cross;

import com.google.common.collect.ImmutableMap;
import java.math.BigInteger;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Phase;
import org.geneticsrules.trait.Sex;
import org.jspecify.annotations.Nullable;

/**
 * One box of what a parent may carry, with the weight of each pair at each locus that matters; within a box the loci are independent,
 * but for alleles known to lie on one strand.
 *
 * @param sex sex of the parent
 * @param weight what the box weighs beside the weights of its pairs
 * @param weights by locus, the weight of each pair in the order of {@link Locus#pairs()}, 0 for pairs outside the box
 * @param phase what is known of the strands
 */
record ParentBox(Sex sex, BigInteger weight, Map<String, BigInteger[]> weights, Phase phase) {

    ParentBox {
        weights = ImmutableMap.copyOf(weights);
    }

    BigInteger[] at(String locus) {
        return Objects.requireNonNull(weights.get(locus), locus);
    }

    /** What the parent may carry at a unit whose loci all matter. */
    AtUnit at(Unit unit) {
        int count = unit.loci().size();
        BigInteger[][] pairs = new BigInteger[count][];
        int[] @Nullable [] strands = new int[count][];
        for (int l = 0; l < count; l++) {
            Locus locus = unit.loci().get(l);
            pairs[l] = at(locus.id());
            int[] lying = KnownParents.strands(locus, phase);
            strands[l] = lying.length == 0 ? null : lying;
        }
        return new AtUnit(sex, pairs, strands);
    }

    /** The weight that loci outside the question give to the box. */
    BigInteger outside(Set<String> read) {
        BigInteger mass = weight;
        for (Map.Entry<String, BigInteger[]> locus : weights.entrySet()) {
            if (!read.contains(locus.getKey())) {
                BigInteger sum = BigInteger.ZERO;
                for (BigInteger pair : locus.getValue()) {
                    sum = sum.add(pair);
                }
                mass = mass.multiply(sum);
            }
        }
        return mass;
    }
}
