package org.geneticsrules.inference;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Exact posteriors of the variables of a factor graph, by messages along a tree of cliques (Lauritzen &amp; Spiegelhalter 1988, J. R.
 * Stat. Soc. B 50:157; for pedigrees Cannings, Thompson &amp; Skolnick 1978, Adv. Appl. Probab. 10:26).
 *
 * <p>Each variable has a clique of its own: itself and those of its neighbours that are summed out later. Upwards each clique sums its
 * variable out of the product of its factors and of the messages to it; downwards the sum over all else comes back. Every message is
 * scaled to a largest weight of 1, and the logarithms of the scales add up to that of the likelihood.
 *
 * <p>States that genotype elimination strikes out take no room.
 */
final class CliqueTree {

    /** A product is scaled after so many factors, so that those of a parent of thousands do not underflow. */
    private static final int OFTEN = 16;

    private final FactorGraph graph;
    private final int[][] states;
    private final int[] sizes;
    private final EliminationOrder order;

    /** For each variable, its clique: itself last, the others by when they are summed out, the latest first. */
    private final int[][] cliques;

    /** For each variable, that of its neighbours that is summed out next after it; -1 for the last. */
    private final int[] parents;

    private final List<List<Integer>> children = new ArrayList<>();
    private final List<List<Factor>> factors = new ArrayList<>();

    private CliqueTree(FactorGraph graph, int[][] states, int[] sizes, EliminationOrder order) {
        this.graph = graph;
        this.states = states;
        this.sizes = sizes;
        this.order = order;
        int count = sizes.length;
        int[] when = new int[count];
        for (int i = 0; i < count; i++) {
            when[order.order()[i]] = i;
        }
        this.cliques = new int[count][];
        this.parents = new int[count];
        for (int v = 0; v < count; v++) {
            children.add(new ArrayList<>());
            factors.add(new ArrayList<>());
        }
        for (int v : order.order()) {
            int[] around = order.neighbours()[v];
            int[] clique = Arrays.stream(around)
                    .boxed()
                    .sorted((a, b) -> Integer.compare(when[b], when[a]))
                    .mapToInt(Integer::intValue)
                    .toArray();
            cliques[v] = Arrays.copyOf(clique, clique.length + 1);
            cliques[v][clique.length] = v;
            parents[v] = clique.length == 0 ? -1 : clique[clique.length - 1];
            if (parents[v] >= 0) {
                children.get(parents[v]).add(v);
            }
        }
        for (Factor factor : graph.factors()) {
            int first = factor.variables()[0];
            for (int v : factor.variables()) {
                first = when[v] < when[first] ? v : first;
            }
            factors.get(first).add(factor);
        }
    }

    /** What a tree would cost, before anything of the size of a table is made. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    record Plan(FactorGraph graph, int[][] states, int[] sizes, EliminationOrder order) {

        /** The cells of all tables together; beyond the budget it is a lower bound. */
        double cells() {
            return order.cells();
        }

        /** The tree; only if its cells are within the budget that the plan was made with. */
        CliqueTree tree() {
            return new CliqueTree(graph, states, sizes, order);
        }
    }

    /**
     * Plans a tree for the states that are left of a graph.
     *
     * @param budget the search for a good order ends where it would take more cells than this
     */
    static Plan plan(FactorGraph graph, Elimination left, double budget) {
        return plan(graph, left, budget, new int[0]);
    }

    /**
     * Plans a tree some clique of which has several variables together.
     *
     * @param budget the search for a good order ends where it would take more cells than this
     * @param together variables
     */
    static Plan plan(FactorGraph graph, Elimination left, double budget, int[] together) {
        return plan(graph, left, budget, together, () -> {});
    }

    static Plan plan(FactorGraph graph, Elimination left, double budget, int[] together, Runnable watch) {
        int[][] states = new int[graph.size()][];
        int[] sizes = new int[graph.size()];
        for (int v = 0; v < sizes.length; v++) {
            states[v] = left.left(v);
            sizes[v] = states[v].length;
        }
        int[][] scopes = Stream.concat(graph.factors().stream().map(Factor::variables), Stream.of(together))
                .toArray(int[][]::new);
        return new Plan(graph, states, sizes, EliminationOrder.of(sizes, scopes, budget, watch));
    }

    /** The cells of the tables that sending all messages upwards makes. */
    double cells() {
        double cells = 0;
        for (int[] clique : cliques) {
            double table = 1;
            for (int variable : clique) {
                table *= sizes[variable];
            }
            cells += table;
        }
        return cells;
    }

    /**
     * Sends all messages.
     *
     * @param watch is called before each table, and may throw
     */
    Posteriors propagate(Runnable watch) {
        double[][] up = new double[sizes.length][];
        double logLikelihood = up(up, watch);
        if (logLikelihood == Double.NEGATIVE_INFINITY) {
            return Posteriors.impossible(graph.size());
        }
        double[] @Nullable [] down = new double[sizes.length][]; // to each clique from its parent
        double[][] found = new double[sizes.length][];
        for (int i = sizes.length - 1; i >= 0; i--) {
            watch.run();
            int v = order.order()[i];
            double[] table = all(v, up, down[v]);
            found[v] = marginal(v, table);
            for (int child : children.get(v)) {
                down[child] = without(table, v, child, up[child]);
            }
            down[v] = null; // it has been heard
        }
        return new Posteriors(found, logLikelihood);
    }

    /**
     * Returns what variables are together that the plan was made with.
     *
     * @return the chances of their states that are left, in the order of the variables of the factor; empty if all is impossible
     */
    Optional<Factor> together(int[] variables) {
        double[][] up = new double[sizes.length][];
        if (up(up, () -> {}) == Double.NEGATIVE_INFINITY) {
            return Optional.empty();
        }
        int[] when = new int[sizes.length];
        for (int i = 0; i < when.length; i++) {
            when[order.order()[i]] = i;
        }
        int first = Arrays.stream(variables)
                .boxed()
                .min(Comparator.comparing(v -> when[v]))
                .orElseThrow();
        List<Integer> path = new ArrayList<>(); // from the clique asked about to the root
        for (int v = first; v >= 0; v = parents[v]) {
            path.add(v);
        }
        double[] table = all(path.get(path.size() - 1), up, null);
        for (int i = path.size() - 2; i >= 0; i--) {
            int v = path.get(i);
            table = all(v, up, without(table, parents[v], v, up[v]));
        }
        int[] inOrder = Arrays.stream(cliques[first])
                .filter(v -> Arrays.stream(variables).anyMatch(one -> one == v))
                .toArray();
        int length = 1;
        for (int v : inOrder) {
            length *= sizes[v];
        }
        double[] sums = new double[length];
        Beside.of(cliques[first], sizes, new Factor(inOrder, sums)).add(table);
        double total = Arrays.stream(sums).sum();
        for (int cell = 0; cell < length; cell++) {
            sums[cell] /= total;
        }
        return Optional.of(new Factor(inOrder, sums));
    }

    /** Sends the messages upwards, and returns the logarithm of the likelihood. */
    private double up(double[][] up, Runnable watch) {
        double logLikelihood = 0;
        for (int v : order.order()) {
            watch.run();
            Scaled product = product(v, up);
            double[] message = summed(product.table(), sizes[v]);
            double scale = scale(message);
            if (scale == 0) {
                return Double.NEGATIVE_INFINITY;
            }
            logLikelihood += product.log() + Math.log(scale);
            up[v] = message;
        }
        return logLikelihood;
    }

    /** All that is said of a clique, with what its parent says. */
    private double[] all(int v, double[][] up, double @Nullable [] above) {
        double[] table = product(v, up).table();
        if (above != null) {
            int each = sizes[v];
            for (int row = 0, cell = 0; row < above.length; row++) {
                for (int end = cell + each; cell < end; cell++) {
                    table[cell] *= above[row];
                }
            }
        }
        return table;
    }

    /** A table that was divided by a number. */
    @SuppressWarnings("ArrayRecordComponent") // read at once, never compared
    private record Scaled(double[] table, double log) {}

    /** The product of the factors of a clique and of the messages to it. */
    private Scaled product(int v, double[][] up) {
        int[] clique = cliques[v];
        int length = 1;
        for (int variable : clique) {
            length *= sizes[variable];
        }
        double[] table = new double[length];
        Arrays.fill(table, 1);
        double log = 0;
        int multiplied = 0;
        for (Factor factor : factors.get(v)) {
            Beside.of(clique, sizes, inOrder(clique, factor)).multiply(table);
            log += ++multiplied % OFTEN == 0 ? Math.log(scale(table)) : 0;
        }
        for (int child : children.get(v)) {
            beside(clique, child, up[child]).multiply(table);
            log += ++multiplied % OFTEN == 0 ? Math.log(scale(table)) : 0;
        }
        return new Scaled(table, log);
    }

    /** A factor for the states that are left, its variables in the order of a clique. */
    private Factor inOrder(int[] clique, Factor factor) {
        int[] variables = factor.variables();
        int[] axes = new int[variables.length];
        int next = 0;
        int length = 1;
        for (int variable : clique) {
            for (int axis = 0; axis < variables.length; axis++) {
                if (variables[axis] == variable) {
                    axes[next++] = axis;
                    length *= sizes[variable];
                }
            }
        }
        int[] strides = new int[variables.length];
        int stride = 1;
        for (int axis = variables.length - 1; axis >= 0; axis--) {
            strides[axis] = stride;
            stride *= graph.states(variables[axis]);
        }
        double[] table = new double[length];
        int[] ordered = new int[axes.length];
        for (int i = 0; i < axes.length; i++) {
            ordered[i] = variables[axes[i]];
        }
        int[] at = new int[axes.length];
        for (int cell = 0; cell < length; cell++) {
            int from = 0;
            for (int i = 0; i < axes.length; i++) {
                from += strides[axes[i]] * states[ordered[i]][at[i]];
            }
            table[cell] = factor.table()[from];
            for (int i = axes.length - 1; i >= 0 && ++at[i] == sizes[ordered[i]]; i--) {
                at[i] = 0;
            }
        }
        return new Factor(ordered, table);
    }

    /** The message of a child, which is about the clique of the child without the child itself, beside a clique. */
    private Beside beside(int[] clique, int child, double[] message) {
        return Beside.of(clique, sizes, new Factor(Arrays.copyOf(cliques[child], cliques[child].length - 1), message));
    }

    /** What the table of a clique says of the clique of a child, the child's own message taken out again. */
    private double[] without(double[] table, int v, int child, double[] up) {
        double[] sums = new double[up.length];
        beside(cliques[v], child, sums).add(table);
        for (int i = 0; i < sums.length; i++) {
            // where nothing came up, nothing depends on what goes down
            sums[i] = up[i] == 0 ? 0 : sums[i] / up[i];
        }
        scale(sums);
        return sums;
    }

    private static double[] summed(double[] table, int width) {
        double[] sums = new double[table.length / width];
        for (int row = 0, cell = 0; row < sums.length; row++) {
            for (int end = cell + width; cell < end; cell++) {
                sums[row] += table[cell];
            }
        }
        return sums;
    }

    /** Divides by the largest weight, and returns it. */
    private static double scale(double[] weights) {
        double most = 0;
        for (double weight : weights) {
            most = Math.max(most, weight);
        }
        if (most > 0) {
            for (int i = 0; i < weights.length; i++) {
                weights[i] /= most;
            }
        }
        return most;
    }

    private double[] marginal(int v, double[] table) {
        int width = sizes[v];
        double[] sums = new double[width];
        for (int cell = 0; cell < table.length; ) {
            for (int state = 0; state < width; state++) {
                sums[state] += table[cell++];
            }
        }
        double[] all = new double[graph.states(v)];
        double total = 0;
        for (int state = 0; state < width; state++) {
            all[states[v][state]] = sums[state];
            total += sums[state];
        }
        for (int state = 0; state < all.length; state++) {
            all[state] /= total;
        }
        return all;
    }
}
