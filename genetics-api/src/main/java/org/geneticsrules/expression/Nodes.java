package org.geneticsrules.expression;

import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntUnaryOperator;
import org.geneticsrules.problem.TooLargeException;

/**
 * Decision diagrams under construction: nodes that test one level each, shared wherever they are equal.
 *
 * <p>A diagram is a number. A negative number -1-v is a leaf of value v; another is a node, whose children it tests in the order of
 * the level's values. Levels are tested in ascending order. A node whose children are all the same is never made, and two nodes with
 * the same level and children are one, so equal functions have equal numbers (Bryant 1986, IEEE Trans. Comput. C-35:677, for the
 * two-valued case).
 *
 * <p>All lies in arrays of numbers, so that a million nodes are made in well under a second and a diagram that explodes is refused as
 * soon as it is seen to.
 */
final class Nodes {

    /** How two diagrams meet: in a value where both are leaves, or before if one of them decides alone. */
    @FunctionalInterface
    interface Meeting {
        /** No diagram: both must be followed further. */
        int OPEN = LongTable.NONE;

        /** The result of two diagrams of which not both are leaves, or {@link #OPEN}. */
        default int early(int a, int b) {
            return OPEN;
        }

        /** The value where two leaves of these values meet. */
        int value(int a, int b);
    }

    private static final int MOST_NAMED = 3;

    private final int[] widths;
    private final int mostNodes;
    private final long mostSteps;
    private final String subject;
    private final String advice;
    private int[] levels = new int[64];
    private int[] offsets = new int[64];
    private int[] children = new int[256];
    private int used;
    private int count;
    private int[] unique = new int[128]; // number of a node plus one; 0 where free
    private long steps;
    private final Map<String, long[]> charges = new LinkedHashMap<>();
    private long[] charged = new long[1];

    /**
     * Starts with no node.
     *
     * @param widths number of values of each level
     * @param mostNodes most nodes to make before refusing
     * @param subject what the diagram is about, for the refusal
     * @param advice what to ask instead, as a sentence
     */
    Nodes(int[] widths, int mostNodes, String subject, String advice) {
        this.widths = widths;
        this.mostNodes = mostNodes;
        this.mostSteps = 8L * mostNodes;
        this.subject = subject;
        this.advice = advice;
    }

    static int leaf(int value) {
        return -1 - value;
    }

    static int value(int leaf) {
        return -1 - leaf;
    }

    int level(int node) {
        return node < 0 ? Integer.MAX_VALUE : levels[node];
    }

    /** The number of nodes made so far. */
    int count() {
        return count;
    }

    int width(int level) {
        return widths[level];
    }

    int child(int node, int value) {
        return children[offsets[node] + value];
    }

    /** The work from now on is done for the sake of a statement; a refusal names those that took most. */
    void charge(String statement) {
        charged = charges.computeIfAbsent(statement, key -> new long[1]);
    }

    /** Tests one level only, with the given leaf value for each of its values. */
    int test(int level, IntUnaryOperator valueOf) {
        int[] leaves = new int[widths[level]];
        Arrays.setAll(leaves, value -> leaf(valueOf.applyAsInt(value)));
        return node(level, leaves);
    }

    /** Combines two diagrams. */
    int combine(int a, int b, Meeting meeting) {
        return combine(a, b, meeting, new LongTable());
    }

    /** Replaces leaf values. */
    int map(int a, IntUnaryOperator operator) {
        return combine(a, leaf(0), (value, ignored) -> operator.applyAsInt(value));
    }

    /** The distinct leaf values of a diagram, in ascending order. */
    int[] leaves(int root) {
        BitSet seen = new BitSet(count);
        LongTable values = new LongTable();
        int[] found = new int[16];
        int size = 0;
        int[] stack = {root};
        int depth = 1;
        while (depth > 0) {
            int node = stack[--depth];
            if (node < 0) {
                if (values.get(node) == LongTable.NONE) {
                    values.put(node, 0);
                    found = size < found.length ? found : Arrays.copyOf(found, 2 * size);
                    found[size++] = value(node);
                }
            } else if (!seen.get(node)) {
                seen.set(node);
                int width = widths[levels[node]];
                stack = depth + width <= stack.length ? stack : Arrays.copyOf(stack, 2 * (depth + width));
                System.arraycopy(children, offsets[node], stack, depth, width);
                depth += width;
            }
        }
        int[] sorted = Arrays.copyOf(found, size);
        Arrays.sort(sorted);
        return sorted;
    }

    private int combine(int a, int b, Meeting meeting, LongTable done) {
        if (a < 0 && b < 0) {
            return leaf(meeting.value(value(a), value(b)));
        }
        int early = meeting.early(a, b);
        if (early != Meeting.OPEN) {
            return early;
        }
        long key = LongTable.key(a, b);
        int before = done.get(key);
        if (before != LongTable.NONE) {
            return before;
        }
        step();
        int level = Math.min(level(a), level(b));
        int[] next = new int[widths[level]];
        for (int i = 0; i < next.length; i++) {
            next[i] = combine(level(a) == level ? child(a, i) : a, level(b) == level ? child(b, i) : b, meeting, done);
        }
        int result = node(level, next);
        done.put(key, result);
        return result;
    }

    /** Counts one step of work, which is limited as the nodes are. */
    void step() {
        charged[0]++;
        if (++steps > mostSteps) {
            throw refusal((double) steps, (double) mostSteps);
        }
    }

    /** The node that tests a level and leads on to the given diagrams, all of later levels. */
    int node(int level, int[] next) {
        boolean same = true;
        int hash = level;
        for (int child : next) {
            same &= child == next[0];
            hash = 31 * hash + child;
        }
        if (same) {
            return next[0];
        }
        int at = slot(hash);
        for (; unique[at] != 0; at = at + 1 & unique.length - 1) {
            int node = unique[at] - 1;
            if (levels[node] == level
                    && Arrays.equals(children, offsets[node], offsets[node] + next.length, next, 0, next.length)) {
                return node;
            }
        }
        if (count >= mostNodes) {
            throw refusal(count + 1.0, mostNodes);
        }
        unique[at] = count + 1;
        add(level, next);
        if (2 * count > unique.length) {
            rehash();
        }
        return count - 1;
    }

    private void add(int level, int[] next) {
        if (count == levels.length) {
            levels = Arrays.copyOf(levels, 2 * count);
            offsets = Arrays.copyOf(offsets, 2 * count);
        }
        if (used + next.length > children.length) {
            children = Arrays.copyOf(children, 2 * (used + next.length));
        }
        levels[count] = level;
        offsets[count] = used;
        System.arraycopy(next, 0, children, used, next.length);
        used += next.length;
        count++;
    }

    private int slot(int hash) {
        int mixed = hash * 0x9E3779B9; // spreads the bits over the word
        return (mixed ^ mixed >>> 15) & unique.length - 1;
    }

    private void rehash() {
        unique = new int[2 * unique.length];
        for (int node = 0; node < count; node++) {
            int hash = levels[node];
            for (int i = 0; i < widths[levels[node]]; i++) {
                hash = 31 * hash + child(node, i);
            }
            int at = slot(hash);
            while (unique[at] != 0) {
                at = at + 1 & unique.length - 1;
            }
            unique[at] = node + 1;
        }
    }

    /** The refusal of a diagram that grows too large, with the statements that took most of the work. */
    TooLargeException refusal(double needed, double allowed) {
        List<String> most = charges.entrySet().stream()
                .sorted(Comparator.comparing(entry -> -entry.getValue()[0]))
                .limit(MOST_NAMED)
                .map(Map.Entry::getKey)
                .toList();
        return new TooLargeException(
                "steps of the decision diagram of " + subject,
                needed,
                allowed,
                most.isEmpty()
                        ? advice
                        : "most of them come of combining " + String.join(", ", most) + " with the rest: " + advice);
    }
}
