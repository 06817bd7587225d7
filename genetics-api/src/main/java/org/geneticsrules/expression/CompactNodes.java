package org.geneticsrules.expression;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A finished diagram in arrays, in the order in which weights flow through it: every node after those that lead to it.
 *
 * <p>Targets at or above zero are nodes; a negative target -1-v is the leaf of value v.
 */
final class CompactNodes {

    private final int depth;
    private final int root;
    private final int[] levels;
    private final int[][] targets;

    CompactNodes(Nodes nodes, int root, int depth) {
        this.depth = depth;
        List<Integer> reached = new ArrayList<>();
        collect(nodes, root, new LinkedHashMap<>(), reached);
        reached.sort(Comparator.comparing(nodes::level));
        Map<Integer, Integer> position = new LinkedHashMap<>();
        reached.forEach(node -> position.put(node, position.size()));
        this.root = root < 0 ? root : 0;
        this.levels = reached.stream().mapToInt(nodes::level).toArray();
        this.targets = reached.stream()
                .map(node -> Arrays.stream(nodes.children(node))
                        .map(child -> child < 0 ? child : position.getOrDefault(child, 0))
                        .toArray())
                .toArray(int[][]::new);
    }

    private static void collect(Nodes nodes, int node, Map<Integer, Boolean> seen, List<Integer> into) {
        if (node >= 0 && seen.put(node, true) == null) {
            into.add(node);
            for (int child : nodes.children(node)) {
                collect(nodes, child, seen, into);
            }
        }
    }

    int size() {
        return levels.length;
    }

    /** Adds to each leaf the weight of the combinations that end in it; all sums stay below the product of the totals. */
    void weigh(long[][] weights, long[] totals, long[] leaves) {
        long[] below = new long[depth + 1]; // product of the totals from a level on
        below[depth] = 1;
        for (int level = depth - 1; level >= 0; level--) {
            below[level] = Math.multiplyExact(below[level + 1], totals[level]);
        }
        if (root < 0) {
            leaves[Nodes.value(root)] += below[0];
            return;
        }
        long[] flow = new long[levels.length];
        flow[0] = below[0] / below[levels[0]];
        for (int node = 0; node < levels.length; node++) {
            long arriving = flow[node];
            if (arriving == 0) {
                continue;
            }
            int level = levels[node];
            long[] share = weights[level];
            int[] next = targets[node];
            for (int e = 0; e < next.length; e++) {
                if (share[e] != 0) {
                    long leaving = arriving * share[e];
                    int target = next[e];
                    if (target < 0) {
                        leaves[Nodes.value(target)] += leaving * below[level + 1];
                    } else {
                        int skipped = levels[target];
                        flow[target] += skipped == level + 1 ? leaving : leaving * (below[level + 1] / below[skipped]);
                    }
                }
            }
        }
    }

    /** The same with weights of any size. */
    void weigh(BigInteger[][] weights, BigInteger[] totals, BigInteger[] leaves) {
        BigInteger[] below = new BigInteger[depth + 1];
        below[depth] = BigInteger.ONE;
        for (int level = depth - 1; level >= 0; level--) {
            below[level] = below[level + 1].multiply(totals[level]);
        }
        if (root < 0) {
            leaves[Nodes.value(root)] = leaves[Nodes.value(root)].add(below[0]);
            return;
        }
        BigInteger[] flow = new BigInteger[levels.length];
        Arrays.fill(flow, BigInteger.ZERO);
        flow[0] = below[0].divide(below[levels[0]]);
        for (int node = 0; node < levels.length; node++) {
            int level = levels[node];
            for (int e = 0; e < targets[node].length; e++) {
                BigInteger leaving = flow[node].multiply(weights[level][e]);
                int target = targets[node][e];
                if (leaving.signum() == 0) {
                    continue;
                }
                if (target < 0) {
                    int leaf = Nodes.value(target);
                    leaves[leaf] = leaves[leaf].add(leaving.multiply(below[level + 1]));
                } else {
                    flow[target] = flow[target].add(leaving.multiply(below[level + 1].divide(below[levels[target]])));
                }
            }
        }
    }

    /** Visits every path to a leaf as the sets of expressions allowed at the levels it tests; other levels are null. */
    void paths(PathVisitor visitor) {
        follow(root, new boolean[depth][], visitor);
    }

    private void follow(int at, boolean[][] path, PathVisitor visitor) {
        if (at < 0) {
            visitor.visit(Nodes.value(at), path);
            return;
        }
        int[] next = targets[at];
        boolean[] done = new boolean[next.length];
        for (int e = 0; e < next.length; e++) {
            if (!done[e]) {
                boolean[] together = new boolean[next.length];
                for (int same = e; same < next.length; same++) {
                    together[same] = next[same] == next[e];
                    done[same] |= together[same];
                }
                boolean[][] longer = path.clone();
                longer[levels[at]] = together;
                follow(next[e], longer, visitor);
            }
        }
    }

    /** Receives the paths of a diagram. */
    interface PathVisitor {
        /**
         * Receives one path.
         *
         * @param leaf the value it ends in
         * @param path allowed expressions by level, null where the level is not tested
         */
        void visit(int leaf, boolean[][] path);
    }
}
