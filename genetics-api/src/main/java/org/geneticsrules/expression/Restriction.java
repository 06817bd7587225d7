package org.geneticsrules.expression;

/**
 * Diagrams where only some values of each level can occur: a value that cannot is taken for the first that can. So two diagrams agree
 * wherever they can be iff what this makes of them is the same.
 */
final class Restriction {

    private final Nodes nodes;
    private final boolean[][] allowed;
    private final LongTable done = new LongTable();

    /**
     * Restricts levels independently of each other.
     *
     * @param nodes where the diagrams are
     * @param allowed for each level, which values can occur; at least one
     */
    Restriction(Nodes nodes, boolean[][] allowed) {
        this.nodes = nodes;
        this.allowed = allowed;
    }

    boolean allows(int level, int value) {
        return allowed[level][value];
    }

    /** The restricted form of a diagram. */
    int of(int node) {
        if (node < 0) {
            return node;
        }
        int before = done.get(node);
        if (before != LongTable.NONE) {
            return before;
        }
        nodes.step();
        int level = nodes.level(node);
        int first = 0;
        while (!allowed[level][first]) {
            first++;
        }
        int[] next = new int[nodes.width(level)];
        for (int value = first; value < next.length; value++) {
            next[value] = value == first || allowed[level][value] ? of(nodes.child(node, value)) : next[first];
        }
        for (int value = 0; value < first; value++) {
            next[value] = next[first];
        }
        int result = nodes.node(level, next);
        done.put(node, result);
        return result;
    }

    /** The leaf values that can be reached, in ascending order. */
    int[] leaves(int root) {
        return nodes.leaves(of(root));
    }
}
