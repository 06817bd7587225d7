package org.geneticsrules.inference;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.function.IntPredicate;
import org.jspecify.annotations.Nullable;

/**
 * One combination of states to which no factor gives the weight 0, or the proof that there is none.
 *
 * <p>Variables are taken out one after another as in {@link CliqueTree}, with "some state fits" in the place of the sum, so that no number
 * can become too small to see. Then states are chosen from the last variable back to the first, each so that it fits those chosen before
 * (Dechter 1999, Artif. Intell. 113:41, from memory).
 */
final class Realisation {

    /** No table has more cells than an array may. */
    private static final double MOST_CELLS = 1 << 30;

    private final FactorGraph graph;
    private final int[][] states;
    private final EliminationOrder order;
    private final Fit fit;

    /** For each variable, itself last, those that it is taken out of, and which combinations fit so far. */
    private final int[][] cliques;

    private final boolean[][] tables;

    private final List<List<Integer>> children = new ArrayList<>();

    private Realisation(FactorGraph graph, Elimination left, double budget, Runnable watch) {
        this.graph = graph;
        int count = graph.size();
        this.states = new int[count][];
        int[] sizes = new int[count];
        for (int v = 0; v < count; v++) {
            states[v] = left.left(v);
            sizes[v] = states[v].length;
            children.add(new ArrayList<>());
        }
        this.cliques = new int[count][];
        this.tables = new boolean[count][];
        double most = Math.min(budget, MOST_CELLS);
        this.order = EliminationOrder.of(
                sizes, graph.factors().stream().map(Factor::variables).toArray(int[][]::new), most, watch);
        this.fit = order.cells() > most ? Fit.UNDECIDED : run(watch) ? Fit.FITS : Fit.CONTRADICTS;
    }

    /**
     * Looks for a combination.
     *
     * @param graph the factors
     * @param left the states that are not struck out, of each variable at least one
     * @param budget the cells that all tables may have together
     * @param watch is called before each table, and may throw
     */
    static Realisation of(FactorGraph graph, Elimination left, double budget, Runnable watch) {
        return new Realisation(graph, left, budget, watch);
    }

    /** Whether there is such a combination. */
    Fit fit() {
        return fit;
    }

    /** The cells of all tables together; beyond the budget it is a lower bound. */
    double cells() {
        return order.cells();
    }

    private boolean run(Runnable watch) {
        int count = states.length;
        int[] when = new int[count];
        for (int i = 0; i < count; i++) {
            when[order.order()[i]] = i;
        }
        List<List<Factor>> factors = new ArrayList<>();
        for (int v = 0; v < count; v++) {
            factors.add(new ArrayList<>());
        }
        for (Factor factor : graph.factors()) {
            int first = factor.variables()[0];
            for (int v : factor.variables()) {
                first = when[v] < when[first] ? v : first;
            }
            factors.get(first).add(factor);
        }
        boolean[] @Nullable [] messages = new boolean[count][];
        for (int v : order.order()) {
            watch.run();
            cliques[v] = clique(v, when);
            int length = 1;
            for (int variable : cliques[v]) {
                length *= states[variable].length;
            }
            boolean[] table = new boolean[length];
            Arrays.fill(table, true);
            for (Factor factor : factors.get(v)) {
                double[] weights = factor.table();
                restrict(table, cliques[v], offsets(cliques[v], factor), cell -> weights[cell] > 0);
            }
            for (int child : children.get(v)) {
                boolean[] message = Objects.requireNonNull(messages[child]);
                restrict(table, cliques[v], offsets(cliques[v], child), cell -> message[cell]);
                messages[child] = null;
            }
            tables[v] = table;
            boolean[] message = anyOf(table, states[v].length);
            if (!any(message)) {
                return false;
            }
            messages[v] = message;
            if (cliques[v].length > 1) {
                children.get(cliques[v][cliques[v].length - 2]).add(v);
            }
        }
        return true;
    }

    /** A variable and its neighbours, itself last and before it those that are taken out the sooner the later they stand. */
    private int[] clique(int v, int[] when) {
        int[] around = Arrays.stream(order.neighbours()[v])
                .boxed()
                .sorted((a, b) -> Integer.compare(when[b], when[a]))
                .mapToInt(Integer::intValue)
                .toArray();
        int[] clique = Arrays.copyOf(around, around.length + 1);
        clique[around.length] = v;
        return clique;
    }

    /** For each variable of a clique, where each of its states that are left lies in the table of a factor; nowhere if it is not in it. */
    private int[] @Nullable [] offsets(int[] clique, Factor factor) {
        int[] @Nullable [] offsets = new int[clique.length][];
        int stride = 1;
        for (int axis = factor.variables().length - 1; axis >= 0; axis--) {
            int variable = factor.variables()[axis];
            int[] here = states[variable].clone();
            for (int s = 0; s < here.length; s++) {
                here[s] *= stride;
            }
            offsets[position(clique, variable)] = here;
            stride *= graph.states(variable);
        }
        return offsets;
    }

    /** The same for what a child says of the others of its clique. */
    private int[] @Nullable [] offsets(int[] clique, int child) {
        int[] @Nullable [] offsets = new int[clique.length][];
        int stride = 1;
        for (int axis = cliques[child].length - 2; axis >= 0; axis--) {
            int variable = cliques[child][axis];
            int[] here = new int[states[variable].length];
            for (int s = 0; s < here.length; s++) {
                here[s] = s * stride;
            }
            offsets[position(clique, variable)] = here;
            stride *= here.length;
        }
        return offsets;
    }

    private static int position(int[] clique, int variable) {
        for (int i = 0; i < clique.length; i++) {
            if (clique[i] == variable) {
                return i;
            }
        }
        throw new IllegalStateException("variable " + variable + " is not in its clique");
    }

    /** Strikes out the combinations that a smaller table does not allow. */
    private void restrict(boolean[] table, int[] clique, int[] @Nullable [] offsets, IntPredicate allowed) {
        int[] at = new int[clique.length];
        int base = 0;
        for (int[] here : offsets) {
            base += here == null ? 0 : here[0];
        }
        for (int cell = 0; cell < table.length; cell++) {
            table[cell] &= allowed.test(base);
            for (int axis = clique.length - 1; axis >= 0; axis--) {
                int[] here = offsets[axis];
                int before = here == null ? 0 : here[at[axis]];
                at[axis] = at[axis] + 1 == states[clique[axis]].length ? 0 : at[axis] + 1;
                base += (here == null ? 0 : here[at[axis]]) - before;
                if (at[axis] > 0) {
                    break;
                }
            }
        }
    }

    private static boolean[] anyOf(boolean[] table, int width) {
        boolean[] any = new boolean[table.length / width];
        for (int cell = 0; cell < table.length; cell++) {
            any[cell / width] |= table[cell];
        }
        return any;
    }

    private static boolean any(boolean[] cells) {
        for (boolean one : cells) {
            if (one) {
                return true;
            }
        }
        return false;
    }

    /** One state of each variable, which fit one another. */
    int[] witness() {
        int[] at = new int[states.length];
        for (int i = states.length - 1; i >= 0; i--) {
            int v = order.order()[i];
            int[] clique = cliques[v];
            int from = 0;
            for (int axis = 0; axis < clique.length - 1; axis++) {
                from = from * states[clique[axis]].length + at[clique[axis]];
            }
            from *= states[v].length;
            while (!tables[v][from + at[v]]) {
                at[v]++;
            }
        }
        for (int v = 0; v < at.length; v++) {
            at[v] = states[v][at[v]];
        }
        return at;
    }
}
