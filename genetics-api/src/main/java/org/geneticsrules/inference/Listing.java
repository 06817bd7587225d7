package org.geneticsrules.inference;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Lists the combinations of states of one clique of a block that may have a weight, and where each lies in the tables multiplied. */
final class Listing {

    /** A table that is multiplied for the weights of a clique. */
    sealed interface Source permits OfFactor, OfChild {

        /** The place that belongs to states of all variables, none if it can have no weight. */
        int place(int[] at);

        /** Whether the weights are the same whatever the states of variables not in the block. */
        boolean isFixed();

        Block.Input input(int[] places);
    }

    /** A factor; its place is that for the first states of all variables that are not in the block. */
    static final class OfFactor implements Source {
        private static final byte SOME = 1;
        private static final byte NONE = 2;

        private final double[] table;
        private final int[] drawn;
        private final int[][] steps;
        private final int[] given;
        private final int[][] distances;

        /** For each place whether some states of the variables not in the block give it a weight, once that was looked up. */
        private final byte[] known;

        OfFactor(Narrowed graph, int factor, boolean[] inBlock) {
            int[] scope = graph.scope(factor);
            List<Integer> inside = new ArrayList<>();
            List<Integer> outside = new ArrayList<>();
            for (int axis = 0; axis < scope.length; axis++) {
                (inBlock[scope[axis]] ? inside : outside).add(axis);
            }
            int[][] all = graph.offsets(factor);
            this.table = graph.table(factor);
            this.drawn = inside.stream().mapToInt(axis -> scope[axis]).toArray();
            this.steps = inside.stream().map(axis -> all[axis]).toArray(int[][]::new);
            this.given = outside.stream().mapToInt(axis -> scope[axis]).toArray();
            this.distances = outside.stream().map(axis -> all[axis]).toArray(int[][]::new);
            this.known = new byte[table.length];
        }

        @Override
        public int place(int[] at) {
            int place = 0;
            for (int i = 0; i < drawn.length; i++) {
                place += steps[i][at[drawn[i]]];
            }
            if (known[place] == 0) {
                known[place] = any(place, 0) ? SOME : NONE;
            }
            return known[place] == SOME ? place : -1;
        }

        private boolean any(int from, int axis) {
            if (axis == distances.length) {
                return table[from] > 0;
            }
            for (int distance : distances[axis]) {
                if (any(from + distance, axis + 1)) {
                    return true;
                }
            }
            return false;
        }

        @Override
        public boolean isFixed() {
            return given.length == 0;
        }

        @Override
        public Block.Input input(int[] places) {
            return new Block.Input(-1, table, places, given, distances);
        }
    }

    /** What an earlier clique says: one weight for each of its rows. */
    record OfChild(int number, Block.Clique clique) implements Source {
        @Override
        public int place(int[] at) {
            return clique.row(at);
        }

        @Override
        public boolean isFixed() {
            return false;
        }

        @Override
        public Block.Input input(int[] places) {
            return new Block.Input(number, new double[0], places, new int[0], new int[0][]);
        }
    }

    /** Whole numbers that become more. */
    private static final class Growing {
        private int[] values = new int[16];
        private int count;

        void add(int value) {
            if (count == values.length) {
                values = Arrays.copyOf(values, 2 * count);
            }
            values[count++] = value;
        }

        int[] all() {
            return Arrays.copyOf(values, count);
        }
    }

    private final Narrowed graph;
    private final int variable;
    private final int[] others;
    private final List<Source> sources;

    /**
     * Begins a list.
     *
     * @param graph the graph
     * @param variable the variable of the clique
     * @param others the other variables of the clique
     * @param sources what is multiplied
     */
    Listing(Narrowed graph, int variable, int[] others, List<Source> sources) {
        this.graph = graph;
        this.variable = variable;
        this.others = others;
        this.sources = sources;
    }

    Block.Clique clique() {
        int[] strides = new int[others.length];
        int count = 1;
        for (int i = others.length - 1; i >= 0; i--) {
            strides[i] = count;
            count *= graph.size(others[i]);
        }
        Growing rows = new Growing();
        Growing starts = new Growing();
        Growing states = new Growing();
        List<Growing> places = new ArrayList<>();
        sources.forEach(source -> places.add(new Growing()));
        int[] at = new int[graph.size()];
        int[] here = new int[sources.size()];
        for (int row = 0; row < count; row++) {
            for (int i = 0; i < others.length; i++) {
                at[others[i]] = row / strides[i] % graph.size(others[i]);
            }
            int before = states.count;
            for (at[variable] = 0; at[variable] < graph.size(variable); at[variable]++) {
                if (find(at, here)) {
                    states.add(at[variable]);
                    for (int i = 0; i < here.length; i++) {
                        places.get(i).add(here[i]);
                    }
                }
            }
            if (states.count > before) {
                rows.add(row);
                starts.add(before);
            }
        }
        starts.add(states.count);
        double[] weights = new double[states.count];
        Arrays.fill(weights, 1);
        List<Block.Input> inputs = new ArrayList<>();
        for (int i = 0; i < here.length; i++) {
            Block.Input input = sources.get(i).input(places.get(i).all());
            if (sources.get(i).isFixed()) {
                multiply(weights, input);
            } else {
                inputs.add(input);
            }
        }
        return new Block.Clique(variable, others, strides, rows.all(), starts.all(), states.all(), weights, inputs);
    }

    private static void multiply(double[] weights, Block.Input by) {
        double most = 0;
        for (int entry = 0; entry < weights.length; entry++) {
            weights[entry] *= by.table()[by.places()[entry]];
            most = Math.max(most, weights[entry]);
        }
        for (int entry = 0; entry < weights.length; entry++) {
            weights[entry] /= most; // every entry has a weight
        }
    }

    /** Finds the places of a combination; false if it can have no weight. */
    private boolean find(int[] at, int[] here) {
        for (int i = 0; i < here.length; i++) {
            here[i] = sources.get(i).place(at);
            if (here[i] < 0) {
                return false;
            }
        }
        return true;
    }
}
