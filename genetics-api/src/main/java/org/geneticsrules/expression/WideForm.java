package org.geneticsrules.expression;

import java.math.BigInteger;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.probability.Weighing;
import org.jspecify.annotations.Nullable;

/** As {@link ProductForm}, for weights whose total does not fit a long. */
final class WideForm implements Weighing {

    private final WideFlow flow;
    private final LocusWeights[] levels;

    /** Null until it is asked for. Final fields make it safe to hand to other threads; those that race find the same. */
    private @Nullable Leaves multiplied;

    private @Nullable Totals totals;

    /** What the flow leaves behind, and for each level the product of the totals before it, 0 where it does not fit a long. */
    @SuppressWarnings("ArrayRecordComponent") // owned, never compared
    private record Leaves(long[] weights, long[] above) {}

    /** The products of totals that do not fit a long. */
    @SuppressWarnings("ArrayRecordComponent") // owned, never compared
    private record Totals(BigInteger[] above) {}

    WideForm(WideFlow flow, LocusWeights[] levels) {
        this.flow = flow;
        this.levels = levels;
    }

    private Leaves leaves() {
        Leaves found = multiplied;
        if (found == null) {
            long[] above = new long[levels.length + 1];
            above[0] = 1;
            for (int l = 0; l < levels.length; l++) {
                long product = above[l] * levels[l].total;
                above[l + 1] = Math.multiplyHigh(above[l], levels[l].total) == 0 && product > 0 ? product : 0;
            }
            found = new Leaves(flow.weigh(levels), above);
            multiplied = found;
        }
        return found;
    }

    @Override
    public boolean isPositive(int outcome) {
        return flow.isPositive(leaves().weights(), outcome);
    }

    @Override
    public Probability chance(int outcome) {
        Leaves found = leaves();
        long total = found.above()[flow.level(outcome)];
        return total > 0
                ? Probability.of(flow.small(found.weights(), outcome), total)
                : Probability.of(flow.weight(found.weights(), outcome), totals().above()[flow.level(outcome)]);
    }

    private Totals totals() {
        Totals found = totals;
        if (found == null) {
            long[] fitting = leaves().above();
            BigInteger[] above = new BigInteger[fitting.length];
            for (int l = 1; l < above.length; l++) {
                if (fitting[l] == 0) {
                    BigInteger before = fitting[l - 1] > 0 ? BigInteger.valueOf(fitting[l - 1]) : above[l - 1];
                    above[l] = before.multiply(BigInteger.valueOf(levels[l - 1].total));
                }
            }
            found = new Totals(above);
            totals = found;
        }
        return found;
    }
}
