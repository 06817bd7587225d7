package org.geneticsrules.inference;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.SplittableRandom;

/**
 * Divides a graph into overlapping blocks, each as much of it as can be summed out with small tables (Jensen, Kong &amp; Kjaerulff 1995,
 * Int. J. Hum.-Comput. Stud. 42:647; Bidyuk &amp; Dechter 2007, J. Artif. Intell. Res. 28:1, both from memory).
 *
 * <p>Variables are summed out, that of the smallest table first, as long as its table is small enough. Then one of those in the smallest
 * table is left out of the block: one with many neighbours, in a pedigree a parent of many, and far from the centre of the block. So the
 * families and loops around the centre are whole. The centre is a variable that was in the fewest blocks before, and blocks are made until
 * each variable is in several: what is pinned down by those left out of one block can move together in another.
 */
final class Blocks {

    /** At least so many blocks. */
    private static final int FEWEST = 8;

    /** Each variable is in at least so many blocks. */
    private static final int EACH = 2;

    /** All blocks together list no more entries than this, of some 25 bytes each. */
    private static final double MOST_ENTRIES = 1 << 24;

    private final Narrowed graph;
    private final double most;
    private final SplittableRandom random;

    private final Runnable watch;

    /** How many blocks each variable was left out of. */
    private final int[] omitted;

    private Blocks(Narrowed graph, double most, SplittableRandom random, Runnable watch) {
        this.watch = watch;
        this.graph = graph;
        this.most = most;
        this.random = random;
        this.omitted = new int[graph.size()];
    }

    /**
     * Makes blocks in which each variable of more than one state is at least twice.
     *
     * @param graph the graph
     * @param most the cells of the largest table of a block; only a variable alone may have more
     * @param random decides between variables that are as good
     * @param watch is called now and then, and may throw
     * @return the blocks; none if they would take too much room, or if no variable has more than one state
     */
    static List<Block> of(Narrowed graph, double most, SplittableRandom random, Runnable watch) {
        return new Blocks(graph, most, random, watch).all();
    }

    private List<Block> all() {
        List<Block> blocks = new ArrayList<>();
        double entries = 0;
        while (true) {
            int centre = centre();
            if (centre < 0 || (blocks.size() >= FEWEST && blocks.size() - omitted[centre] >= EACH)) {
                return blocks;
            }
            Block block = new Cutting(centre).block();
            blocks.add(block);
            entries += block.entries();
            if (entries > MOST_ENTRIES) {
                return List.of();
            }
            for (int v = 0; v < omitted.length; v++) {
                omitted[v] += block.draws(v) ? 0 : 1;
            }
        }
    }

    /** A variable that was left out of most blocks; -1 if none has more than one state. */
    private int centre() {
        int centre = -1;
        int ties = 0;
        for (int v = 0; v < omitted.length; v++) {
            if (graph.size(v) > 1) {
                int by = centre < 0 ? 1 : Integer.compare(omitted[v], omitted[centre]);
                ties = by > 0 ? 1 : by == 0 ? ties + 1 : ties;
                if (by > 0 || (by == 0 && random.nextInt(ties) == 0)) {
                    centre = v;
                }
            }
        }
        return centre;
    }

    private record Waiting(double cells, double tie, int variable, int version) implements Comparable<Waiting> {
        @Override
        public int compareTo(Waiting other) {
            int byCells = Double.compare(cells, other.cells);
            int byTie = byCells != 0 ? byCells : Double.compare(tie, other.tie);
            return byTie != 0 ? byTie : Integer.compare(variable, other.variable);
        }
    }

    /** Makes one block. */
    private final class Cutting {

        private final List<Set<Integer>> neighbours = new ArrayList<>();

        /** How often what is known of a variable changed; -1 if it is summed out or left out. */
        private final int[] version;

        private final boolean[] out;
        private final PriorityQueue<Waiting> queue = new PriorityQueue<>();

        /** How many factors away from the centre each variable is. */
        private final int[] distances;

        Cutting(int centre) {
            this.distances = distances(centre);
            int count = graph.size();
            this.version = new int[count];
            this.out = new boolean[count];
            for (int v = 0; v < count; v++) {
                neighbours.add(new LinkedHashSet<>());
                out[v] = graph.size(v) == 1;
            }
            for (int f = 0; f < graph.factors(); f++) {
                connect(Arrays.stream(graph.scope(f)).filter(v -> !out[v]).toArray());
            }
        }

        Block block() {
            List<Integer> order = new ArrayList<>();
            List<int[]> later = new ArrayList<>();
            for (int v = 0; v < version.length; v++) {
                if (out[v]) {
                    version[v] = -1;
                } else {
                    push(v);
                }
            }
            while (!queue.isEmpty()) {
                watch.run();
                Waiting head = queue.remove();
                int v = head.variable();
                if (version[v] != head.version()) {
                    continue;
                }
                int[] around =
                        neighbours.get(v).stream().mapToInt(Integer::intValue).toArray();
                if (head.cells() > most && around.length > 0) {
                    leaveOut(v, around);
                    continue;
                }
                order.add(v);
                later.add(around);
                version[v] = -1;
                for (int other : around) {
                    neighbours.get(other).remove(v);
                }
                connect(around);
                for (int other : around) {
                    version[other]++;
                    push(other);
                }
            }
            int[][] inside = new int[later.size()][];
            for (int i = 0; i < inside.length; i++) {
                inside[i] = Arrays.stream(later.get(i)).filter(v -> !out[v]).toArray();
            }
            return Block.of(graph, order.stream().mapToInt(Integer::intValue).toArray(), inside);
        }

        private void push(int v) {
            double cells = graph.size(v);
            for (int other : neighbours.get(v)) {
                cells *= graph.size(other);
            }
            queue.add(new Waiting(cells, random.nextDouble(), v, version[v]));
        }

        /** Leaves out a variable or one of its neighbours. */
        private void leaveOut(int variable, int[] around) {
            int worst = variable;
            double most = gain(variable);
            for (int other : around) {
                double here = gain(other);
                if (here > most) {
                    most = here;
                    worst = other;
                }
            }
            out[worst] = true;
            version[worst] = -1;
            for (int other : neighbours.get(worst)) {
                neighbours.get(other).remove(worst);
                version[other]++;
                push(other);
            }
        }

        private int[] distances(int from) {
            int[] distances = new int[graph.size()];
            Arrays.fill(distances, -1);
            distances[from] = 0; // so that it is never left out
            ArrayDeque<Integer> queue = new ArrayDeque<>();
            queue.add(from);
            while (!queue.isEmpty()) {
                int v = queue.remove();
                for (int f : graph.touching(v)) {
                    for (int other : graph.scope(f)) {
                        if (distances[other] < 0 && graph.size(other) > 1) {
                            distances[other] = distances[v] + 1;
                            queue.add(other);
                        }
                    }
                }
            }
            return distances;
        }

        /** How much is gained if a variable is left out. */
        private double gain(int v) {
            return (0.5 + random.nextDouble()) * neighbours.get(v).size() * distances[v] * distances[v];
        }

        private void connect(int[] variables) {
            for (int one : variables) {
                for (int other : variables) {
                    if (one != other) {
                        neighbours.get(one).add(other);
                    }
                }
            }
        }
    }
}
