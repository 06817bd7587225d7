package org.geneticsrules.expression;

import java.math.BigInteger;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Lets weights of any size flow through a diagram, from the root to the leaves, along with the hidden states of linked loci.
 *
 * <p>What arrives at a node is one weight per hidden state of its level. A test multiplies it by what its state shows. On the way to a
 * level further down, the totals of all levels in between are multiplied in, so that all weights have one common total; within a run
 * of linked levels the states move on, at its end they are summed out. Weights are {@link Limbs}, as many digits as the total needs.
 */
final class ExactFlow {

    private final CompactNodes nodes;
    private final List<Layer> layers;
    private final int depth;

    /** States at each level for ways that enter its run there, and their sum. */
    private final BigInteger[][] enter;

    private final BigInteger[] entered;

    /** What a weight that arrives at a level is multiplied by until the end. */
    private final BigInteger[] rest;

    private final BigInteger[] widths;

    /** Digits of a weight. */
    private final int digits;

    /** What states show, at each level. */
    private final Factors[] shows;

    /** How states move between two levels of a run, and what a weight that leaves a run is multiplied by on entering another. */
    private final Map<Long, Factors> ways = new LinkedHashMap<>();

    /** Multipliers by row and column, each of the same number of digits. */
    @SuppressWarnings("ArrayRecordComponent") // read in the inner loops, never compared
    private record Factors(long[] all, int columns, int digits) {

        static Factors of(BigInteger[][] rows) {
            int bits = 1;
            for (BigInteger[] row : rows) {
                for (BigInteger factor : row) {
                    bits = Math.max(bits, factor.bitLength());
                }
            }
            int digits = (bits + Long.SIZE - 1) / Long.SIZE;
            int columns = rows[0].length;
            long[] all = new long[rows.length * columns * digits];
            for (int i = 0, at = 0; i < rows.length; i++) {
                for (int j = 0; j < columns; j++, at += digits) {
                    Limbs.put(rows[i][j], all, at, digits);
                }
            }
            return new Factors(all, columns, digits);
        }

        int at(int row, int column) {
            return (row * columns + column) * digits;
        }
    }

    ExactFlow(CompactNodes nodes, List<Layer> layers) {
        this.nodes = nodes;
        this.layers = layers;
        this.depth = layers.size();
        this.widths = new BigInteger[depth];
        this.enter = new BigInteger[depth][];
        this.entered = new BigInteger[depth];
        this.rest = new BigInteger[depth + 1];
        for (int l = 0; l < depth; l++) {
            Layer layer = layers.get(l);
            widths[l] = layer.width();
            enter[l] = layer.start() != null
                    ? layer.start()
                    : Matrices.times(Matrices.times(enter[l - 1], widths[l - 1]), next(l - 1));
            entered[l] = Matrices.sum(enter[l]);
        }
        rest[depth] = BigInteger.ONE;
        for (int l = depth - 1; l >= 0; l--) {
            BigInteger between = layers.get(l).next() != null
                    ? Matrices.sum(next(l)[0])
                    : l + 1 < depth ? entered[l + 1] : BigInteger.ONE;
            rest[l] = widths[l].multiply(between).multiply(rest[l + 1]);
        }
        this.digits = total().bitLength() / Long.SIZE + 1;
        this.shows = new Factors[depth];
        for (int l = 0; l < depth; l++) {
            shows[l] = Factors.of(layers.get(l).shows());
        }
    }

    private BigInteger[][] next(int level) {
        return Objects.requireNonNull(layers.get(level).next());
    }

    /** The weight of all combinations. */
    BigInteger total() {
        return depth == 0 ? BigInteger.ONE : entered[0].multiply(rest[0]);
    }

    /** The weight of the combinations that end in each leaf. */
    BigInteger[] weigh() {
        int size = nodes.size();
        int[] at = new int[size + nodes.leaves() + 1];
        for (int place = 0; place + 1 < at.length; place++) {
            int states = place < size ? layers.get(nodes.level(place)).states() : 1;
            at[place + 1] = at[place] + states * digits;
        }
        long[] flow = new long[at[at.length - 1]];
        int root = nodes.root();
        if (root < size) {
            int top = nodes.level(root);
            BigInteger above = total().divide(entered[top].multiply(rest[top]));
            for (int s = 0; s < enter[top].length; s++) {
                Limbs.put(enter[top][s].multiply(above), flow, at[root] + s * digits, digits);
            }
        } else {
            Limbs.put(total(), flow, at[root], digits);
        }
        long[] leaving = new long[digits];
        for (int node = 0; node < size; node++) {
            if (!Limbs.isZero(flow, at[node], at[node + 1] - at[node])) {
                leave(node, at, flow, leaving);
            }
        }
        BigInteger[] leaves = new BigInteger[nodes.leaves()];
        Arrays.setAll(leaves, leaf -> Limbs.toBigInteger(flow, at[size + leaf], digits));
        return leaves;
    }

    private void leave(int node, int[] at, long[] flow, long[] leaving) {
        int level = nodes.level(node);
        int states = layers.get(level).states();
        Factors seen = shows[level];
        for (int value = 0; value < nodes.width(level); value++) {
            int target = nodes.target(node, value);
            Factors way = way(level, nodes.level(target));
            for (int s = 0; s < states; s++) {
                Arrays.fill(leaving, 0);
                addProduct(leaving, 0, flow, at[node] + s * digits, seen, seen.at(s, value));
                if (!Limbs.isZero(leaving, 0, digits)) {
                    for (int to = 0; to < way.columns(); to++) {
                        addProduct(flow, at[target] + to * digits, leaving, 0, way, way.at(s, to));
                    }
                }
            }
        }
    }

    /** Adds a product that is known to need no more digits than a weight has. */
    private void addProduct(long[] to, int toAt, long[] from, int fromAt, Factors factors, int factor) {
        for (int j = 0; j < factors.digits() && j < digits; j++) {
            long digit = factors.all()[factor + j];
            if (digit != 0) {
                Limbs.addProduct(to, toAt + j, digits - j, from, fromAt, digits - j, digit);
            }
        }
    }

    private boolean isSameRun(int from, int to) {
        if (to == depth) {
            return false;
        }
        for (int l = from; l < to; l++) {
            if (layers.get(l).next() == null) {
                return false;
            }
        }
        return true;
    }

    /** What the weights of the states at a level are multiplied by to become those at another, or at the leaves. */
    private Factors way(int from, int to) {
        return ways.computeIfAbsent((long) from << Integer.SIZE | to, key -> {
            if (isSameRun(from, to)) {
                return Factors.of(moves(from, to));
            }
            BigInteger until = rest[from].divide(widths[from]); // the end, whatever happens
            BigInteger[] row = {until};
            if (to < depth) {
                row = Matrices.times(enter[to], until.divide(entered[to].multiply(rest[to])));
            }
            BigInteger[][] rows = new BigInteger[layers.get(from).states()][];
            Arrays.fill(rows, row); // the states are summed out
            return Factors.of(rows);
        });
    }

    /** How states move from one level of a run to another, past the levels in between. */
    private BigInteger[][] moves(int from, int to) {
        BigInteger[][] product = next(from);
        for (int l = from + 1; l < to; l++) {
            BigInteger width = widths[l];
            BigInteger[][] wider = new BigInteger[product.length][];
            for (int i = 0; i < wider.length; i++) {
                wider[i] = Matrices.times(product[i], width);
            }
            product = Matrices.times(wider, next(l));
        }
        return product;
    }
}
