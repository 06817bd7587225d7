package org.geneticsrules.expression;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.IntBinaryOperator;
import java.util.function.IntUnaryOperator;
import org.geneticsrules.problem.TooLargeException;

/**
 * Decision diagrams under construction: nodes that test one locus each, shared wherever they are equal.
 *
 * <p>A diagram is a number. A negative number -1-v is a leaf of value v; another is a node, whose children it tests in the order of
 * the locus' expressions. Loci are tested in ascending level. A node whose children are all the same is never made, and two nodes
 * with the same level and children are one, so equal functions have equal numbers (Bryant 1986, IEEE Trans. Comput. C-35:677, for
 * the two-valued case).
 */
final class Nodes {

    private record Key(int level, List<Integer> children) {}

    private final int[] widths;
    private final int limit;
    private final String subject;
    private final List<int[]> children = new ArrayList<>();
    private final List<Integer> levels = new ArrayList<>();
    private final Map<Key, Integer> unique = new LinkedHashMap<>();

    /**
     * Starts with no node.
     *
     * @param widths number of expressions of the locus at each level
     * @param limit most nodes to make before refusing
     * @param subject what the diagram is about, for the refusal
     */
    Nodes(int[] widths, int limit, String subject) {
        this.widths = widths;
        this.limit = limit;
        this.subject = subject;
    }

    static int leaf(int value) {
        return -1 - value;
    }

    static int value(int leaf) {
        return -1 - leaf;
    }

    int level(int node) {
        return node < 0 ? Integer.MAX_VALUE : levels.get(node);
    }

    int[] children(int node) {
        return children.get(node);
    }

    /** Tests one locus only, with the given leaf value for each of its expressions. */
    int test(int level, IntUnaryOperator valueOf) {
        int[] leaves = new int[widths[level]];
        Arrays.setAll(leaves, expression -> leaf(valueOf.applyAsInt(expression)));
        return node(level, leaves);
    }

    /** Combines the leaf values of two diagrams wherever they meet. */
    int combine(int a, int b, IntBinaryOperator operator) {
        return combine(a, b, operator, new LinkedHashMap<>());
    }

    /** Replaces leaf values. */
    int map(int a, IntUnaryOperator operator) {
        return combine(a, leaf(0), (value, ignored) -> operator.applyAsInt(value));
    }

    /** The distinct leaf values of a diagram. */
    List<Integer> leaves(int root) {
        Set<Integer> seen = new LinkedHashSet<>();
        Set<Integer> values = new LinkedHashSet<>();
        ArrayDeque<Integer> queue = new ArrayDeque<>(List.of(root));
        while (!queue.isEmpty()) {
            int node = queue.remove();
            if (node < 0) {
                values.add(value(node));
            } else if (seen.add(node)) {
                Arrays.stream(children(node)).forEach(queue::add);
            }
        }
        return new ArrayList<>(values);
    }

    private int combine(int a, int b, IntBinaryOperator operator, Map<Long, Integer> done) {
        if (a < 0 && b < 0) {
            return leaf(operator.applyAsInt(value(a), value(b)));
        }
        long key = ((long) a << 32) | (b & 0xffffffffL);
        Integer before = done.get(key);
        if (before != null) {
            return before;
        }
        int level = Math.min(level(a), level(b));
        int[] next = new int[widths[level]];
        for (int i = 0; i < next.length; i++) {
            next[i] = combine(
                    level(a) == level ? children(a)[i] : a, level(b) == level ? children(b)[i] : b, operator, done);
        }
        int result = node(level, next);
        done.put(key, result);
        return result;
    }

    private int node(int level, int[] next) {
        boolean same = true;
        for (int child : next) {
            same &= child == next[0];
        }
        if (same) {
            return next[0];
        }
        Key key = new Key(level, Arrays.stream(next).boxed().toList());
        Integer before = unique.get(key);
        if (before != null) {
            return before;
        }
        if (children.size() >= limit) {
            throw new TooLargeException(
                    "steps of the decision diagram of " + subject,
                    limit + 1.0,
                    limit,
                    "ask about fewer traits at a time.");
        }
        children.add(next);
        levels.add(level);
        unique.put(key, children.size() - 1);
        return children.size() - 1;
    }
}
