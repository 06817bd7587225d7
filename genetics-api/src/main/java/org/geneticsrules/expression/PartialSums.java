package org.geneticsrules.expression;

import java.util.SortedMap;
import java.util.function.IntUnaryOperator;

/**
 * The diagram of a sum of doses that is cut into states. Where two ways to a level have the same sum so far, what follows is the same
 * and is made once, so there are no more nodes than levels times sums.
 */
final class PartialSums {

    /** Partial sums differ, so many of them before equal ends are found out would take longer than so many nodes. */
    private static final int MOST = DiagramBuilder.MOST_NODES;

    private final Nodes nodes;
    private final int[] levels;
    private final int[][] doses;
    private final IntUnaryOperator state;
    private final LongTable made = new LongTable();

    /**
     * Prepares a sum.
     *
     * @param nodes where the diagram is made
     * @param doses by level, the amount that each value of the level adds
     * @param state the state of a sum
     */
    PartialSums(Nodes nodes, SortedMap<Integer, int[]> doses, IntUnaryOperator state) {
        this.nodes = nodes;
        this.levels = doses.keySet().stream().mapToInt(Integer::intValue).toArray();
        this.doses = doses.values().toArray(int[][]::new);
        this.state = state;
    }

    /** Leaf values: the state of an amount and what all levels add to it. */
    int diagram(int amount) {
        return from(0, amount);
    }

    private int from(int position, int sum) {
        if (position == levels.length) {
            return Nodes.leaf(state.applyAsInt(sum));
        }
        long key = LongTable.key(position, sum);
        int before = made.get(key);
        if (before != LongTable.NONE) {
            return before;
        }
        if (made.size() >= MOST) {
            throw nodes.refusal(made.size() + 1.0, MOST);
        }
        nodes.step();
        int[] next = new int[doses[position].length];
        for (int value = 0; value < next.length; value++) {
            next[value] = from(position + 1, Math.addExact(sum, doses[position][value]));
        }
        int node = nodes.node(levels[position], next);
        made.put(key, node);
        return node;
    }
}
