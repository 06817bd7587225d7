package org.geneticsrules.expression;

import java.math.BigInteger;

/**
 * Lets weights flow through a diagram of so many independent loci that their total does not fit a long.
 *
 * <p>What arrives at a test is weighed over the product of the totals of the levels above it, and a leaf over that of the levels above
 * the last test that leads to it. So numbers grow with the depth only: of a chain of masking loci the first thirty phenotypes need one
 * digit of 64 bits, and only those far down need more. Where each number lies is laid out once for each size of totals.
 */
final class WideFlow {

    private final int size;
    private final int root;

    /** The level over whose product of totals each leaf is weighed. */
    private final int[] leafLevels;

    /** The largest total of a level that the layout has room for. */
    private final long mostTotal;

    /** The digits of numbers at each level, and of leaves of each level; the last is that of the depth. */
    private final int[] digits;

    /** Where the number of each place begins, and at last their length. */
    private final int[] at;

    /** For each level, where its first number begins. */
    private final int[] starts;

    /** For each level, where the number of each target begins, first all by the first value. */
    private final int[][] targets;

    /** For each level, over which level's product each target is weighed; empty where it is the next for all. */
    private final int[][] levels;

    /** Lays numbers out for levels with totals up to a limit. */
    WideFlow(CompactNodes nodes, long mostTotal) {
        int depth = nodes.depth();
        this.size = nodes.size();
        this.root = nodes.level(nodes.root());
        this.leafLevels = nodes.leafLevels();
        this.mostTotal = mostTotal;
        this.digits = new int[depth + 1];
        for (int l = 0; l <= depth; l++) {
            digits[l] = Limbs.digits(l * Math.log((double) mostTotal) / Math.log(2));
        }
        this.at = new int[size + leafLevels.length + 1];
        for (int place = 0; place + 1 < at.length; place++) {
            at[place + 1] = at[place] + digits[level(nodes, place)];
        }
        this.starts = new int[depth + 1];
        this.targets = new int[depth][];
        this.levels = new int[depth][];
        for (int l = 0; l < depth; l++) {
            starts[l] = at[nodes.start(l)];
            int[] places = nodes.targets(l);
            targets[l] = new int[places.length];
            levels[l] = new int[places.length];
            boolean straight = true;
            for (int i = 0; i < places.length; i++) {
                targets[l][i] = at[places[i]];
                levels[l][i] = level(nodes, places[i]);
                straight &= levels[l][i] == l + 1;
            }
            if (straight) {
                levels[l] = new int[0];
            }
        }
        starts[depth] = at[size];
    }

    private int level(CompactNodes nodes, int place) {
        return place < size ? nodes.level(place) : leafLevels[place - size];
    }

    /** Whether there is room for levels with these totals. */
    boolean holds(LocusWeights[] weights) {
        for (LocusWeights level : weights) {
            if (level.total > mostTotal) {
                return false;
            }
        }
        return true;
    }

    /** Weighs all places. */
    long[] weigh(LocusWeights[] weights) {
        long[] flow = new long[at[at.length - 1]];
        int top = at[0]; // of the root, which is the first of all
        if (root == weights.length) {
            flow[at[size]] = 1;
            return flow;
        }
        skip(flow, top, -1, root, new long[] {1}, 0, 1, 1, weights);
        for (int l = root; l < weights.length; l++) {
            int wide = digits[l];
            int count = (starts[l + 1] - starts[l]) / wide;
            if (levels[l].length > 0) {
                skipping(flow, l, count, weights);
            } else if (digits[l + 1] == 1) {
                oneDigit(flow, starts[l], count, weights[l].shares, targets[l]);
            } else if (digits[l + 1] == 2) {
                twoDigits(flow, starts[l], wide, count, weights[l].shares, targets[l]);
            } else {
                manyDigits(flow, l, count, weights[l].shares);
            }
        }
        return flow;
    }

    /** Follows the edges of a level whose targets are all on the next, in numbers of one digit. */
    private static void oneDigit(long[] flow, int start, int count, long[] shares, int[] targets) {
        int edge = 0;
        for (long share : shares) {
            for (int node = 0; node < count && share != 0; node++) {
                flow[targets[edge + node]] += flow[start + node] * share;
            }
            edge += count;
        }
    }

    /** The same where the targets have two digits. */
    private static void twoDigits(long[] flow, int start, int wide, int count, long[] shares, int[] targets) {
        int edge = 0;
        for (long share : shares) {
            for (int node = 0; node < count && share != 0; node++) {
                int from = start + node * wide;
                int to = targets[edge + node];
                long digit = flow[from];
                long product = digit * share;
                long low = flow[to] + product;
                long carry = Limbs.high(digit, share) + (Long.compareUnsigned(low, product) < 0 ? 1 : 0);
                flow[to] = low;
                flow[to + 1] += (wide == 1 ? 0 : flow[from + 1] * share) + carry;
            }
            edge += count;
        }
    }

    /** The same where the targets have any number of digits. */
    private void manyDigits(long[] flow, int level, int count, long[] shares) {
        int edge = 0;
        for (long share : shares) {
            for (int node = 0; node < count && share != 0; node++) {
                int from = starts[level] + node * digits[level];
                Limbs.addProduct(
                        flow, targets[level][edge + node], digits[level + 1], flow, from, digits[level], share);
            }
            edge += count;
        }
    }

    /** The same where some targets are further down. */
    private void skipping(long[] flow, int level, int count, LocusWeights[] weights) {
        int edge = 0;
        for (long share : weights[level].shares) {
            for (int node = 0; node < count && share != 0; node++) {
                int from = starts[level] + node * digits[level];
                if (!Limbs.isZero(flow, from, digits[level])) {
                    int over = levels[level][edge + node];
                    skip(flow, targets[level][edge + node], level, over, flow, from, digits[level], share, weights);
                }
            }
            edge += count;
        }
    }

    /** Adds a weight after multiplying it with a share and with the totals of the levels that are skipped. */
    private void skip(
            long[] flow,
            int to,
            int level,
            int over,
            long[] from,
            int fromAt,
            int fromDigits,
            long share,
            LocusWeights[] weights) {
        long[] before = from;
        int beforeAt = fromAt;
        int beforeDigits = fromDigits;
        long factor = share;
        for (int l = level + 1; l < over; l++) {
            long total = weights[l].total;
            if (Math.multiplyHigh(factor, total) == 0 && factor * total > 0) {
                factor *= total;
            } else {
                long[] product = new long[beforeDigits + 1];
                Limbs.addProduct(product, 0, product.length, before, beforeAt, beforeDigits, factor);
                before = product;
                beforeAt = 0;
                beforeDigits = product[beforeDigits] == 0 ? beforeDigits : beforeDigits + 1;
                factor = total;
            }
        }
        Limbs.addProduct(flow, to, digits[over], before, beforeAt, beforeDigits, factor);
    }

    /** Over which level's product of totals a leaf is weighed. */
    int level(int leaf) {
        return leafLevels[leaf];
    }

    boolean isPositive(long[] flow, int leaf) {
        return !Limbs.isZero(flow, at[size + leaf], digits[leafLevels[leaf]]);
    }

    /** The weight of a leaf that fits a long. */
    long small(long[] flow, int leaf) {
        return flow[at[size + leaf]];
    }

    BigInteger weight(long[] flow, int leaf) {
        return Limbs.toBigInteger(flow, at[size + leaf], digits[leafLevels[leaf]]);
    }
}
