package org.geneticsrules.expression;

import java.math.BigInteger;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.probability.Weighing;
import org.jspecify.annotations.Nullable;

/**
 * The chances of the leaves of a diagram, kept as one factor for each level, and multiplied out when one is first read. All weights and
 * their total fit longs.
 */
final class ProductForm implements Weighing {

    /** What the relative error of a chance in floating point is at most: the weight, the total and the quotient are each rounded once. */
    static final double ROUNDINGS = 4 * 0x1p-53;

    private final SplitFlow flow;
    private final LocusWeights[] levels;
    private final long total;

    /** Null until it is asked for. Final fields make it safe to hand to other threads; those that race find the same. */
    private @Nullable Leaves multiplied;

    @SuppressWarnings("ArrayRecordComponent") // owned, never compared
    private record Leaves(long[] weights) {}

    ProductForm(SplitFlow flow, LocusWeights[] levels, long total) {
        this.flow = flow;
        this.levels = levels;
        this.total = total;
    }

    private long[] weights() {
        Leaves found = multiplied;
        if (found == null) {
            long[][] shares = new long[levels.length][];
            long[] above = new long[levels.length + 1];
            above[0] = 1;
            for (int l = 0; l < levels.length; l++) {
                shares[l] = levels[l].shares;
                above[l + 1] = above[l] * levels[l].total;
            }
            found = new Leaves(flow.weigh(shares, above));
            multiplied = found;
        }
        return found.weights();
    }

    @Override
    public boolean isPositive(int outcome) {
        return weights()[outcome] != 0;
    }

    @Override
    public Probability chance(int outcome) {
        return Probability.of(weights()[outcome], total);
    }

    /** The chances of the first leaves in floating point; 0 for leaves that are not there. */
    double[] chances(int leaves) {
        long[] weights = weights();
        double[] chances = new double[leaves];
        for (int leaf = 0; leaf < Math.min(leaves, weights.length); leaf++) {
            chances[leaf] = (double) weights[leaf] / total;
        }
        return chances;
    }

    /** The weights as numbers of any size. */
    BigInteger weight(int outcome) {
        return BigInteger.valueOf(weights()[outcome]);
    }
}
