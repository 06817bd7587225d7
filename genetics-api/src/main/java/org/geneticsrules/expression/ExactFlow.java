package org.geneticsrules.expression;

import java.math.BigInteger;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Lets weights of any size flow through a diagram, from the root to the leaves, along with the hidden states of linked loci.
 *
 * <p>What arrives at a node is one weight per hidden state of its level. A test multiplies it by what its state shows. On the way to a
 * level further down, the totals of all levels in between are multiplied in, so that all weights have one common total; within a run
 * of linked levels the states move on, at its end they are summed out.
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

    private final Map<Long, BigInteger[][]> moves = new LinkedHashMap<>();

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
        BigInteger[] @Nullable [] flow = new BigInteger[nodes.size()][];
        BigInteger[] leaves = new BigInteger[nodes.leaves()];
        Arrays.fill(leaves, BigInteger.ZERO);
        arrive(nodes.root(), total(), flow, leaves);
        for (int node = 0; node < nodes.size(); node++) {
            BigInteger[] here = flow[node];
            if (here != null) {
                leave(node, here, flow, leaves);
            }
        }
        return leaves;
    }

    private void leave(int node, BigInteger[] here, BigInteger[] @Nullable [] flow, BigInteger[] leaves) {
        int level = nodes.level(node);
        BigInteger[][] shows = layers.get(level).shows();
        for (int value = 0; value < nodes.width(level); value++) {
            BigInteger[] leaving = new BigInteger[here.length];
            boolean any = false;
            for (int s = 0; s < here.length; s++) {
                leaving[s] = here[s].multiply(shows[s][value]);
                any |= leaving[s].signum() != 0;
            }
            if (any) {
                int target = nodes.target(node, value);
                if (isSameRun(level, nodes.level(target))) {
                    add(flow, target, Matrices.times(leaving, moves(level, nodes.level(target))));
                } else {
                    // until the end, whatever happens
                    BigInteger whole = Matrices.sum(leaving).multiply(rest[level].divide(widths[level]));
                    arrive(target, whole, flow, leaves);
                }
            }
        }
    }

    /** Enters a run, with a weight that has all totals until the end multiplied in. */
    private void arrive(int place, BigInteger whole, BigInteger[] @Nullable [] flow, BigInteger[] leaves) {
        if (place >= nodes.size()) {
            leaves[place - nodes.size()] = leaves[place - nodes.size()].add(whole);
        } else {
            int level = nodes.level(place);
            add(flow, place, Matrices.times(enter[level], whole.divide(entered[level].multiply(rest[level]))));
        }
    }

    private static void add(BigInteger[] @Nullable [] flow, int place, BigInteger[] arriving) {
        BigInteger[] before = flow[place];
        if (before == null) {
            flow[place] = arriving;
        } else {
            BigInteger[] sum = new BigInteger[before.length];
            Arrays.setAll(sum, s -> before[s].add(arriving[s]));
            flow[place] = sum;
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

    /** How states move from one level of a run to another, past the levels in between. */
    private BigInteger[][] moves(int from, int to) {
        return moves.computeIfAbsent((long) from << 32 | to, key -> {
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
        });
    }
}
