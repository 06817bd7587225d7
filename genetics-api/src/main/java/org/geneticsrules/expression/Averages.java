package org.geneticsrules.expression;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.geneticsrules.probability.Probability;

/** Diagrams that end in chances; draws are summed out of them, so that what is left tests sex and loci. */
final class Averages {

    private final Nodes nodes;
    private final List<Level> levels;
    private final List<Probability> values = new ArrayList<>();
    private final Map<Probability, Integer> known = new LinkedHashMap<>();
    private final Map<Integer, Integer> done = new LinkedHashMap<>();

    Averages(Nodes nodes, List<Level> levels) {
        this.nodes = nodes;
        this.levels = levels;
    }

    /** The chances that leaf values stand for, in the order of these. */
    List<Probability> values() {
        return values;
    }

    /**
     * Sums out the draws.
     *
     * @param root a diagram whose leaf values are positions in {@link #values()}
     * @return such a diagram without draws
     */
    int overDraws(int root) {
        if (root < 0) {
            return root;
        }
        Integer before = done.get(root);
        if (before != null) {
            return before;
        }
        int level = nodes.level(root);
        int[] next = new int[nodes.width(level)];
        for (int value = 0; value < next.length; value++) {
            next[value] = overDraws(nodes.child(root, value));
        }
        int result =
                levels.get(level) instanceof Level.OfDraw drawn ? average(drawn.draw(), next) : nodes.node(level, next);
        done.put(root, result);
        return result;
    }

    /** How two diagrams of chances of independent things meet. */
    Nodes.Meeting product() {
        return new Nodes.Meeting() {
            @Override
            public int early(int a, int b) {
                if (a == leaf(Probability.ZERO) || b == leaf(Probability.ONE)) {
                    return a;
                }
                return b == leaf(Probability.ZERO) || a == leaf(Probability.ONE) ? b : OPEN;
            }

            @Override
            public int value(int a, int b) {
                return number(values.get(a).times(values.get(b)));
            }
        };
    }

    private int leaf(Probability chance) {
        return Nodes.leaf(number(chance));
    }

    private int average(Draw draw, int[] next) {
        List<Probability> chances = ImmutableList.copyOf(draw.outcomes().asMap().values());
        int sum = leaf(Probability.ZERO);
        for (int value = 0; value < next.length; value++) {
            Probability chance = chances.get(value);
            sum = nodes.combine(
                    sum, next[value], (soFar, more) -> number(values.get(soFar).plus(chance.times(values.get(more)))));
        }
        return sum;
    }

    /** The leaf value that stands for a chance. */
    int number(Probability chance) {
        return Objects.requireNonNull(known.computeIfAbsent(chance, key -> {
            values.add(key);
            return values.size() - 1;
        }));
    }
}
