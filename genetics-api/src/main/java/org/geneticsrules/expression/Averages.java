package org.geneticsrules.expression;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.geneticsrules.probability.Probability;

/** Sums draws out of a diagram: what is left tests sex and loci and ends in chances. */
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
     * Replaces leaves by chances.
     *
     * @param root a diagram
     * @param meant the leaf value whose chance is sought
     * @return a diagram without draws whose leaf values are positions in {@link #values()}
     */
    int overDraws(int root, int meant) {
        if (root < 0) {
            return Nodes.leaf(number(Nodes.value(root) == meant ? Probability.ONE : Probability.ZERO));
        }
        Integer before = done.get(root);
        if (before != null) {
            return before;
        }
        int level = nodes.level(root);
        int[] next = new int[nodes.width(level)];
        for (int value = 0; value < next.length; value++) {
            next[value] = overDraws(nodes.child(root, value), meant);
        }
        int result =
                levels.get(level) instanceof Level.OfDraw drawn ? average(drawn.draw(), next) : nodes.node(level, next);
        done.put(root, result);
        return result;
    }

    private int average(Draw draw, int[] next) {
        List<Probability> chances = ImmutableList.copyOf(draw.outcomes().asMap().values());
        int sum = Nodes.leaf(number(Probability.ZERO));
        for (int value = 0; value < next.length; value++) {
            Probability chance = chances.get(value);
            sum = nodes.combine(
                    sum, next[value], (soFar, more) -> number(values.get(soFar).plus(chance.times(values.get(more)))));
        }
        return sum;
    }

    private int number(Probability chance) {
        return Objects.requireNonNull(known.computeIfAbsent(chance, key -> {
            values.add(key);
            return values.size() - 1;
        }));
    }
}
