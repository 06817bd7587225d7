package org.geneticsrules.expression;

import java.nio.IntBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Lets weights that fit longs flow through a diagram whose levels are independent of one another.
 *
 * <p>Where traits do not interact, large parts of a diagram differ in nothing but where they end: below each coat pattern hang the same
 * tests of colour, with other phenotypes as leaves. So the diagram is cut at a level. Above the cut weights flow from the root to the
 * places at the cut. Below it each kind of part is weighed only once, and the weights of its leaves are multiplied with what arrives at
 * each of its places. The level of the cut is that of the least work.
 */
final class SplitFlow {

    /** More tests than this are not compared with one another. */
    private static final int MOST_COMPARED = 1 << 18;

    /** Multiplying a leaf's weight in takes about half the time of following an edge. */
    private static final double LEAF = 0.5;

    /** Parts that are alike. */
    @SuppressWarnings("ArrayRecordComponent") // read in the inner loops, never compared
    private record Part(Stretch stretch, int[] ends, int[][] leaves) {}

    private final Stretch head;
    private final Part[] parts;

    /** For each place where the head ends without a part below, its leaf. */
    private final int[] direct;

    private final int leaves;
    private final int root;

    /** Whether each leaf is reached from one place only. */
    private final boolean once;

    private SplitFlow(CompactNodes nodes, Stretch head, List<Part> parts, int[] direct) {
        this.head = head;
        this.parts = parts.toArray(Part[]::new);
        this.direct = direct;
        this.leaves = nodes.leaves();
        this.root = nodes.level(nodes.root());
        this.once = direct.length
                        + parts.stream()
                                .mapToInt(part ->
                                        part.ends().length * part.stretch().ends())
                                .sum()
                <= leaves;
    }

    /** Finds the best cut. */
    static SplitFlow of(CompactNodes nodes) {
        int depth = nodes.depth();
        int[] all = new int[nodes.leaves()];
        Arrays.setAll(all, leaf -> nodes.size() + leaf);
        Stretch whole = new Stretch(nodes, nodes.root(), depth, all);
        SplitFlow best = new SplitFlow(nodes, whole, List.of(), new int[0]);
        double least = whole.edges();
        long compared = 0;
        for (int cut = nodes.level(nodes.root()) + 1; cut < depth && compared < MOST_COMPARED; cut++) {
            Cut tried = new Cut(nodes, cut);
            compared += tried.compared;
            if (tried.work() < least) {
                least = tried.work();
                best = new SplitFlow(nodes, tried.head, tried.parts, tried.direct);
            }
        }
        return best;
    }

    /** One way to cut. */
    private static final class Cut {
        private final Stretch head;
        private final List<Part> parts = new ArrayList<>();
        private final int[] direct;
        private long compared;

        Cut(CompactNodes nodes, int cut) {
            List<Integer> ends = new ArrayList<>();
            boolean[] seen = new boolean[nodes.size() + nodes.leaves()];
            for (int node = 0; node < nodes.size() && nodes.level(node) < cut; node++) {
                for (int value = 0; value < nodes.width(nodes.level(node)); value++) {
                    int target = nodes.target(node, value);
                    if (nodes.level(target) >= cut && !seen[target]) {
                        seen[target] = true;
                        ends.add(target);
                    }
                }
            }
            // leaves first, so that they need no part
            List<Integer> places = new ArrayList<>();
            ends.stream().filter(end -> end >= nodes.size()).forEach(places::add);
            this.direct = places.stream().mapToInt(leaf -> leaf - nodes.size()).toArray();
            ends.stream().filter(end -> end < nodes.size()).forEach(places::add);
            int[] numbered = places.stream().mapToInt(Integer::intValue).toArray();
            this.head = new Stretch(nodes, nodes.root(), cut, numbered);
            Map<IntBuffer, List<Integer>> alike = new LinkedHashMap<>();
            Map<Integer, int[]> leaves = new LinkedHashMap<>();
            for (int i = direct.length; i < numbered.length; i++) {
                Form form = new Form(nodes, numbered[i]);
                compared += form.size();
                leaves.put(i, form.leaves());
                alike.computeIfAbsent(IntBuffer.wrap(form.structure()), key -> new ArrayList<>())
                        .add(i);
            }
            alike.values().forEach(same -> {
                int[][] reached = same.stream().map(leaves::get).toArray(int[][]::new);
                int[] below = Arrays.stream(reached[0])
                        .map(leaf -> leaf + nodes.size())
                        .toArray();
                Stretch stretch = new Stretch(nodes, numbered[same.get(0)], nodes.depth(), below);
                parts.add(new Part(stretch, same.stream().mapToInt(i -> i).toArray(), reached));
            });
        }

        double work() {
            double work = head.edges() + LEAF * direct.length;
            for (Part part : parts) {
                work += part.stretch().edges()
                        + LEAF * part.ends().length * part.stretch().ends();
            }
            return work;
        }
    }

    /** What a part of a diagram looks like when its leaves are numbered in the order in which they are met. */
    private static final class Form {
        private final CompactNodes nodes;
        private final Map<Integer, Integer> numbers = new LinkedHashMap<>();
        private final List<Integer> leaves = new ArrayList<>();
        private int[] structure = new int[64];
        private int used;

        Form(CompactNodes nodes, int root) {
            this.nodes = nodes;
            visit(root);
        }

        private int visit(int place) {
            Integer before = numbers.get(place);
            if (before != null) {
                return before;
            }
            if (place >= nodes.size()) {
                leaves.add(place - nodes.size());
                numbers.put(place, -leaves.size());
                return -leaves.size();
            }
            int level = nodes.level(place);
            int[] children = new int[nodes.width(level)];
            for (int value = 0; value < children.length; value++) {
                children[value] = visit(nodes.target(place, value));
            }
            int number = numbers.size() - leaves.size();
            numbers.put(place, number);
            write(level);
            for (int child : children) {
                write(child);
            }
            return number;
        }

        private void write(int word) {
            if (used == structure.length) {
                structure = Arrays.copyOf(structure, 2 * used);
            }
            structure[used++] = word;
        }

        int size() {
            return used;
        }

        int[] structure() {
            return Arrays.copyOf(structure, used);
        }

        int[] leaves() {
            return leaves.stream().mapToInt(Integer::intValue).toArray();
        }
    }

    /**
     * Weighs the leaves.
     *
     * @param shares the weight of each value of each level
     * @param above for each level the product of the totals of all levels before it, and at last that of all, which fits a long
     * @return the weight of the combinations that end in each leaf, over the product of all totals
     */
    long[] weigh(long[][] shares, long[] above) {
        long[] arriving = head.flow(above[root], shares, above);
        int first = head.nodes();
        if (parts.length == 0 && direct.length == 0) {
            return Arrays.copyOfRange(arriving, first, arriving.length);
        }
        long[] weights = new long[leaves];
        for (int i = 0; i < direct.length; i++) {
            weights[direct[i]] = arriving[first + i];
        }
        for (Part part : parts) {
            long[] below = part.stretch().flow(1, shares, above);
            for (int i = 0; i < part.ends().length; i++) {
                long times = arriving[first + part.ends()[i]];
                if (times != 0) {
                    spread(times, below, part.stretch().nodes(), part.leaves()[i], weights);
                }
            }
        }
        return weights;
    }

    private void spread(long times, long[] below, int first, int[] leaves, long[] weights) {
        if (once) {
            for (int i = 0; i < leaves.length; i++) {
                weights[leaves[i]] = times * below[first + i];
            }
        } else {
            for (int i = 0; i < leaves.length; i++) {
                weights[leaves[i]] += times * below[first + i];
            }
        }
    }
}
