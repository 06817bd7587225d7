package org.geneticsrules.expression;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

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

    /** For each leaf, the level after the last test that leads to it. */
    private final int[] leafLevels;

    /** What may be added up on the longest way to a leaf. */
    private final int additions;

    CompactNodes(Nodes nodes, int root, int depth, int leaves) {
        this.depth = depth;
        int[][] reached = reached(nodes, root, depth);
        this.starts = new int[depth + 1];
        for (int level = 0; level < depth; level++) {
            starts[level + 1] = starts[level] + reached[level].length;
        }
        int[] place = new int[nodes.count()];
        this.levels = new int[starts[depth] + leaves];
        Arrays.fill(levels, depth);
        for (int level = 0; level < depth; level++) {
            for (int i = 0; i < reached[level].length; i++) {
                place[reached[level][i]] = starts[level] + i;
                levels[starts[level] + i] = level;
            }
        }
        this.root = place(root, place);
        this.targets = new int[depth][];
        for (int level = 0; level < depth; level++) {
            int width = reached[level].length == 0 ? 0 : nodes.width(level);
            targets[level] = new int[width * reached[level].length];
            int at = 0;
            for (int value = 0; value < width; value++) {
                for (int node : reached[level]) {
                    targets[level][at++] = place(nodes.child(node, value), place);
                }
            }
        }
        this.leafLevels = deepest();
        this.additions = countAdditions();
    }

    private int countAdditions() {
        int[] arriving = new int[levels.length];
        for (int[] from : targets) {
            for (int target : from) {
                arriving[target]++;
            }
        }
        int[] most = new int[depth + 1];
        for (int place = 0; place < arriving.length; place++) {
            most[levels[place]] = Math.max(most[levels[place]], arriving[place]);
        }
        return Arrays.stream(most).sum();
    }

    private int[] deepest() {
        int[] after = new int[leaves()];
        for (int level = 0; level < depth; level++) {
            for (int target : targets[level]) {
                if (target >= size()) {
                    after[target - size()] = level + 1;
                }
            }
        }
        return after;
    }

    private int place(int node, int[] place) {
        return node < 0 ? starts[depth] + Nodes.value(node) : place[node];
    }

    /** The nodes of each level that can be reached from the root. */
    private static int[][] reached(Nodes nodes, int root, int depth) {
        boolean[] seen = new boolean[nodes.count()];
        int[] found = new int[nodes.count()];
        int count = 0;
        if (root >= 0) {
            found[count++] = root;
            seen[root] = true;
        }
        int[] sizes = new int[depth];
        for (int at = 0; at < count; at++) {
            int node = found[at];
            sizes[nodes.level(node)]++;
            for (int value = 0; value < nodes.width(nodes.level(node)); value++) {
                int child = nodes.child(node, value);
                if (child >= 0 && !seen[child]) {
                    seen[child] = true;
                    found[count++] = child;
                }
            }
        }
        int[][] byLevel = new int[depth][];
        Arrays.setAll(byLevel, level -> new int[sizes[level]]);
        Arrays.fill(sizes, 0);
        for (int at = 0; at < count; at++) {
            int level = nodes.level(found[at]);
            byLevel[level][sizes[level]++] = found[at];
        }
        return byLevel;
    }

    /** The number of levels. */
    int depth() {
        return depth;
    }

    int size() {
        return starts[depth];
    }

    /** The first place of a level; of the depth, the first leaf. */
    int start(int level) {
        return starts[level];
    }

    /** The places to which the nodes of a level lead, first all by its first value; not to be modified. */
    int[] targets(int level) {
        return targets[level];
    }

    /** A bound on how many sums are taken one after the other until a leaf is weighed. */
    int additions() {
        return additions;
    }

    /** The number of leaves. */
    int leaves() {
        return levels.length - size();
    }

    /** For each leaf, the level after the last test that leads to it; not to be modified. */
    int[] leafLevels() {
        return leafLevels;
    }

    /** The place at which every way begins. */
    int root() {
        return root;
    }

    /** The level of a place; of a leaf, the depth. */
    int level(int place) {
        return levels[place];
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

    /**
     * Tells which leaves some values lead to.
     *
     * @param allowed for each level, which of its values there may be; null where any
     */
    boolean[] reached(boolean[] @Nullable [] allowed) {
        boolean[] reached = new boolean[levels.length];
        reached[root] = true;
        for (int level = 0; level < depth; level++) {
            boolean[] values = allowed[level];
            int count = starts[level + 1] - starts[level];
            for (int node = 0; node < count; node++) {
                for (int at = node, value = 0; reached[starts[level] + node] && at < targets[level].length; value++) {
                    reached[targets[level][at]] |= values == null || values[value];
                    at += count;
                }
            }
        }
        return Arrays.copyOfRange(reached, size(), levels.length);
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
