package org.geneticsrules.inference;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.geneticsrules.inference.Conclusions.Standing;
import org.jspecify.annotations.Nullable;

/**
 * Exact posteriors of the variables of a factor graph, by messages along a tree of cliques (Lauritzen &amp; Spiegelhalter 1988, J. R.
 * Stat. Soc. B 50:157; for pedigrees Cannings, Thompson &amp; Skolnick 1978, Adv. Appl. Probab. 10:26).
 *
 * <p>Each variable has a clique of its own: itself and those of its neighbours that are summed out later. Upwards each clique sums its
 * variable out of the product of its factors and of the messages to it; downwards the sum over all else comes back. Every message is
 * scaled to a largest weight of 1, and the logarithms of the scales add up to that of the likelihood ({@link Weights}).
 *
 * <p>States that genotype elimination strikes out take no room.
 */
final class CliqueTree {

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
    private final Weights weights = new Weights();

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
     * @param watch is called before each step of the search, and may throw
     */
    static Plan plan(FactorGraph graph, Elimination left, double budget, Runnable watch) {
        return plan(graph, left, budget, new int[0], watch);
    }

    /**
     * Plans a tree some clique of which has several variables together.
     *
     * @param budget the search for a good order ends where it would take more cells than this
     * @param together variables
     * @param watch is called before each step of the search, and may throw
     */
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
     * @return what each variable may be; nothing if that is beyond the range of numbers
     */
    Optional<Posteriors> propagate(Runnable watch) {
        double[][] found = new double[sizes.length][0];
        double logLikelihood = weights.settle(() -> send(found, watch));
        if (Double.isNaN(logLikelihood)) {
            return Optional.empty();
        }
        return Optional.of(
                logLikelihood == Double.NEGATIVE_INFINITY
                        ? Posteriors.impossible(graph.size())
                        : new Posteriors(found, logLikelihood));
    }

    private double send(double[][] found, Runnable watch) {
        double[][] up = new double[sizes.length][];
        double logLikelihood = up(up, watch);
        if (logLikelihood == Double.NEGATIVE_INFINITY) {
            return logLikelihood;
        }
        double[] @Nullable [] down = new double[sizes.length][]; // to each clique from its parent
        for (int i = sizes.length - 1; i >= 0; i--) {
            watch.run();
            int v = order.order()[i];
            double[] table = all(v, up, down[v]);
            found[v] = marginal(v, table, found[v]);
            for (int child : children.get(v)) {
                down[child] = without(table, v, child, up[child]);
            }
            down[v] = null; // it has been heard
        }
        return logLikelihood;
    }

    /**
     * What some variables are together.
     *
     * @param standing exact, contradicted, or too large if that is beyond the range of numbers
     * @param chances the chances of their states that are left, if they are exact
     */
    record Jointly(Standing standing, Optional<Factor> chances) {}

    /**
     * Returns what variables are together that the plan was made with.
     *
     * @param watch is called before each table, and may throw
     */
    Jointly together(int[] variables, Runnable watch) {
        int first = Arrays.stream(order.order())
                .filter(v -> Arrays.stream(variables).anyMatch(one -> one == v))
                .findFirst()
                .orElseThrow();
        int[] inOrder = Arrays.stream(cliques[first])
                .filter(v -> Arrays.stream(variables).anyMatch(one -> one == v))
                .toArray();
        int length = 1;
        for (int v : inOrder) {
            length *= sizes[v];
        }
        double[] chances = new double[length];
        double logLikelihood = weights.settle(() -> {
            double[] sums = new double[chances.length];
            double log = send(first, Beside.of(cliques[first], sizes, new Factor(inOrder, sums)), watch);
            double total = Arrays.stream(sums).sum();
            for (int cell = 0; cell < sums.length && log > Double.NEGATIVE_INFINITY; cell++) {
                chances[cell] = weights.found(chances[cell], sums[cell] / total);
            }
            return log;
        });
        if (Double.isNaN(logLikelihood)) {
            return new Jointly(Standing.TOO_LARGE, Optional.empty());
        }
        return logLikelihood == Double.NEGATIVE_INFINITY
                ? new Jointly(Standing.CONTRADICTED, Optional.empty())
                : new Jointly(Standing.EXACT, Optional.of(new Factor(inOrder, chances)));
    }

    private double send(int asked, Beside sums, Runnable watch) {
        double[][] up = new double[sizes.length][];
        double logLikelihood = up(up, watch);
        if (logLikelihood == Double.NEGATIVE_INFINITY) {
            return logLikelihood;
        }
        List<Integer> path = new ArrayList<>(); // from the clique asked about to the root
        for (int v = asked; v >= 0; v = parents[v]) {
            path.add(v);
        }
        double[] table = all(path.get(path.size() - 1), up, null);
        for (int i = path.size() - 2; i >= 0; i--) {
            int v = path.get(i);
            watch.run();
            table = all(v, up, without(table, parents[v], v, up[v]));
        }
        sums.add(table);
        return logLikelihood;
    }

    /** Sends the messages upwards, and returns the logarithm of the likelihood. */
    private double up(double[][] up, Runnable watch) {
        for (int v : order.order()) {
            watch.run();
            up[v] = summed(product(v, up), sizes[v]);
            if (!weights.noted(up[v])) {
                return Double.NEGATIVE_INFINITY;
            }
        }
        return weights.log();
    }

    /** All that is said of a clique, with what its parent says. */
    private double[] all(int v, double[][] up, double @Nullable [] above) {
        double[] table = product(v, up);
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

    /** The product of the factors of a clique and of the messages to it. */
    private double[] product(int v, double[][] up) {
        int[] clique = cliques[v];
        int length = 1;
        for (int variable : clique) {
            length *= sizes[variable];
        }
        double[] table = new double[length];
        Arrays.fill(table, 1);
        for (Factor factor : factors.get(v)) {
            multiply(table, Beside.of(clique, sizes, inOrder(clique, factor)));
        }
        for (int child : children.get(v)) {
            multiply(table, beside(clique, child, up[child]));
        }
        return table;
    }

    private void multiply(double[] table, Beside by) {
        if (by.multiply(table)) {
            weights.noted(table);
        }
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
        weights.scale(sums, 0, sums.length);
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

    /** The chances of a variable, compared with what was found of it before. */
    private double[] marginal(int v, double[] table, double[] before) {
        int width = sizes[v];
        double[] sums = new double[width];
        for (int cell = 0; cell < table.length; ) {
            for (int state = 0; state < width; state++) {
                sums[state] += table[cell++];
            }
        }
        double[] all = before.length == 0 ? new double[graph.states(v)] : before;
        double total = Arrays.stream(sums).sum();
        for (int state = 0; state < width; state++) {
            int at = states[v][state];
            all[at] = weights.found(all[at], sums[state] / total);
        }
        return all;
    }
}
