package org.geneticsrules.expression;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * A finished diagram in arrays, in the order in which weights flow through it: every node after those that lead to it, and all leaves
 * after the nodes. The places of nodes and leaves are numbered through, so leaf v is place size() + v.
 *
 * <p>The targets of one level lie together, and those of one expression of it in the order of the nodes: weights then flow in long
 * straight runs.
 */
final class CompactNodes {

    private final int depth;
    private final int root;

    /** The level of each place; of leaves, the depth. */
    private final int[] levels;

    /** Where the nodes of each level begin, and at last the number of nodes. */
    private final int[] starts;

    /** The places to which the nodes of a level lead, first all by its first expression. */
    private final int[][] targets;

    /** Whether all targets of a level are on the next, so that no level in between multiplies the weights. */
    private final boolean[] straight;

    CompactNodes(Nodes nodes, int root, int depth, int leaves) {
        this.depth = depth;
        List<Integer> reached = new ArrayList<>();
        collect(nodes, root, new LinkedHashMap<>(), reached);
        reached.sort(Comparator.comparing(nodes::level));
        Map<Integer, Integer> place = new LinkedHashMap<>();
        reached.forEach(node -> place.put(node, place.size()));
        for (int leaf = 0; leaf < leaves; leaf++) {
            place.put(Nodes.leaf(leaf), reached.size() + leaf);
        }
        this.root = Objects.requireNonNull(place.get(root));
        this.levels = new int[place.size()];
        Arrays.fill(levels, depth);
        for (int node = 0; node < reached.size(); node++) {
            levels[node] = nodes.level(reached.get(node));
        }
        this.starts = new int[depth + 1];
        starts[depth] = reached.size();
        this.targets = new int[depth][];
        this.straight = new boolean[depth];
        for (int level = 0; level < depth; level++) {
            int current = level;
            List<Integer> together = reached.stream()
                    .filter(node -> nodes.level(node) == current)
                    .toList();
            starts[level + 1] = starts[level] + together.size();
            int width = together.isEmpty() ? 0 : nodes.children(together.get(0)).length;
            targets[level] = new int[width * together.size()];
            int at = 0;
            for (int e = 0; e < width; e++) {
                for (int node : together) {
                    targets[level][at++] = Objects.requireNonNull(place.get(nodes.children(node)[e]));
                }
            }
            straight[level] = Arrays.stream(targets[level]).allMatch(target -> levels[target] == current + 1);
        }
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
        return starts[depth];
    }

    /** The number of leaves. */
    int leaves() {
        return levels.length - size();
    }

    /** The place at which every way begins. */
    int root() {
        return root;
    }

    /** The level of a place; of a leaf, the depth. */
    int level(int place) {
        return levels[place];
    }

    /**
     * Lets the weights of expressions flow from the root to the leaves; all sums stay below the product of the totals.
     *
     * @return the weight of the combinations that end in each leaf
     */
    long[] weigh(long[][] weights, long[] totals) {
        long[] below = new long[depth + 1]; // product of the totals from a level on
        below[depth] = 1;
        for (int level = depth - 1; level >= 0; level--) {
            below[level] = Math.multiplyExact(below[level + 1], totals[level]);
        }
        long[] flow = new long[levels.length];
        flow[root] = below[0] / below[levels[root]];
        for (int level = levels[root]; level < depth; level++) {
            int count = starts[level + 1] - starts[level];
            for (int from = 0, e = 0; from < targets[level].length; from += count, e++) {
                if (weights[level][e] != 0) {
                    flow(level, from, weights[level][e], below, flow);
                }
            }
        }
        return Arrays.copyOfRange(flow, starts[depth], flow.length);
    }

    /** Passes on what arrives at the nodes of a level, along one expression. */
    private void flow(int level, int from, long weight, long[] below, long[] flow) {
        int start = starts[level];
        int count = starts[level + 1] - start;
        int[] to = targets[level];
        if (straight[level]) {
            for (int i = 0; i < count; i++) {
                long arriving = flow[start + i];
                if (arriving != 0) {
                    flow[to[from + i]] += arriving * weight;
                }
            }
        } else {
            for (int i = 0; i < count; i++) {
                if (flow[start + i] != 0) {
                    int target = to[from + i];
                    flow[target] += flow[start + i] * weight * (below[level + 1] / below[levels[target]]);
                }
            }
        }
    }

    int width(int level) {
        return targets[level].length / (starts[level + 1] - starts[level]);
    }

    /** The place to which a node leads with a value. */
    int target(int node, int expression) {
        int level = levels[node];
        int count = starts[level + 1] - starts[level];
        return targets[level][expression * count + node - starts[level]];
    }

    /** Visits every path to a leaf as the sets of expressions allowed at the levels it tests; other levels are null. */
    void paths(PathVisitor visitor) {
        follow(root, new boolean[depth][], visitor);
    }

    private boolean follow(int at, boolean[][] path, PathVisitor visitor) {
        if (at >= size()) {
            return visitor.visit(at - size(), path);
        }
        int width = width(levels[at]);
        boolean[] done = new boolean[width];
        for (int e = 0; e < width; e++) {
            if (!done[e]) {
                int next = target(at, e);
                boolean[] together = new boolean[width];
                for (int same = e; same < width; same++) {
                    together[same] = target(at, same) == next;
                    done[same] |= together[same];
                }
                boolean[][] longer = path.clone();
                longer[levels[at]] = together;
                if (!follow(next, longer, visitor)) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Receives the paths of a diagram. */
    interface PathVisitor {
        /**
         * Receives one path.
         *
         * @param leaf the value it ends in
         * @param path allowed expressions by level, null where the level is not tested
         * @return true to go on
         */
        boolean visit(int leaf, boolean[][] path);
    }
}
