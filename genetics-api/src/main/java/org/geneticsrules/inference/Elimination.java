package org.geneticsrules.inference;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.IdentityHashMap;
import java.util.List;

/**
 * Genotype elimination (Lange &amp; Goradia 1987, Am. J. Hum. Genet. 40:250): a state is struck out when some factor gives every
 * combination with it the weight 0, until nothing more can be struck out.
 *
 * <p>What is struck out is impossible. Without loops what is left is possible; with loops it need not be (O'Connell &amp; Weeks 1999, Am.
 * J. Hum. Genet. 65:1733).
 */
final class Elimination {

    /** For each variable, whether each state is left. */
    private final boolean[][] left;

    /** For each factor, by its axes and states, a combination that supports the state, as far as was known last; -1 if there is none. */
    private final int[][][] supports;

    /** The same for tables before anything is struck out, shared by the factors of a table. */
    private final IdentityHashMap<double[], int[][]> firsts = new IdentityHashMap<>();

    private int emptied = -1;

    private Elimination(int[] sizes, List<Factor> factors) {
        this.left = new boolean[sizes.length][];
        for (int v = 0; v < sizes.length; v++) {
            left[v] = new boolean[sizes[v]];
            Arrays.fill(left[v], true);
        }
        this.supports = new int[factors.size()][][];
        for (int f = 0; f < supports.length; f++) {
            Factor factor = factors.get(f);
            int[][] known = firsts.computeIfAbsent(factor.table(), key -> first(factor));
            supports[f] = isOf(known, factor) ? known : first(factor);
        }
    }

    /** Hears of what is struck out, in this order. */
    @FunctionalInterface
    interface Trail {
        /** Some states of a variable were struck out by a factor. */
        void struck(int variable, int factor);
    }

    static Elimination of(FactorGraph graph) {
        return of(graph, (variable, factor) -> {});
    }

    static Elimination of(FactorGraph graph, Trail trail) {
        Elimination result = new Elimination(graph.sizes(), graph.factors());
        result.run(graph, trail);
        return result;
    }

    private void run(FactorGraph graph, Trail trail) {
        List<Factor> factors = graph.factors();
        int[][] touching = touching(graph);
        ArrayDeque<Integer> waiting = new ArrayDeque<>();
        boolean[] queued = new boolean[factors.size()];
        for (int f = 0; f < factors.size(); f++) {
            waiting.add(f);
            queued[f] = true;
        }
        while (!waiting.isEmpty() && emptied < 0) {
            int f = waiting.remove();
            queued[f] = false;
            int[] variables = factors.get(f).variables();
            for (int axis = 0; axis < variables.length && emptied < 0; axis++) {
                if (strike(f, factors.get(f), axis)) {
                    trail.struck(variables[axis], f);
                    for (int other : touching[variables[axis]]) {
                        if (other != f && !queued[other]) {
                            queued[other] = true;
                            waiting.add(other);
                        }
                    }
                }
            }
        }
    }

    private static int[][] touching(FactorGraph graph) {
        int[] counts = new int[graph.size()];
        for (Factor factor : graph.factors()) {
            for (int variable : factor.variables()) {
                counts[variable]++;
            }
        }
        int[][] touching = new int[counts.length][];
        Arrays.setAll(touching, v -> new int[counts[v]]);
        for (int f = 0; f < graph.factors().size(); f++) {
            for (int variable : graph.factors().get(f).variables()) {
                touching[variable][--counts[variable]] = f;
            }
        }
        return touching;
    }

    /** Strikes out the states of one variable of a factor that no combination of states left supports; true if there were some. */
    private boolean strike(int number, Factor factor, int axis) {
        boolean[] mine = left[factor.variables()[axis]];
        int[][] seen = supports[number];
        boolean changed = false;
        boolean any = false;
        for (int state = 0; state < mine.length; state++) {
            if (!mine[state]) {
                continue;
            }
            int cell = seen[axis][state];
            if (cell >= 0 && !isLeft(factor, cell)) {
                cell = search(factor, axis, state);
                if (seen == firsts.get(factor.table())) {
                    seen = copy(seen); // those of the table are shared
                    supports[number] = seen;
                }
                seen[axis][state] = cell;
            }
            mine[state] = cell >= 0;
            changed |= cell < 0;
            any |= cell >= 0;
        }
        if (!any) {
            emptied = factor.variables()[axis];
        }
        return changed;
    }

    private boolean isLeft(Factor factor, int cell) {
        int rest = cell;
        for (int axis = factor.variables().length - 1; axis >= 0; axis--) {
            boolean[] states = left[factor.variables()[axis]];
            if (!states[rest % states.length]) {
                return false;
            }
            rest /= states.length;
        }
        return true;
    }

    /** A combination of states left that has a weight, with one state given; -1 if there is none. */
    private int search(Factor factor, int axis, int state) {
        int[] variables = factor.variables();
        int count = variables.length;
        int[][] states = new int[count][];
        int[] strides = new int[count];
        int stride = 1;
        int base = 0;
        for (int other = count - 1; other >= 0; other--) {
            states[other] = other == axis ? new int[] {state} : left(variables[other]);
            if (states[other].length == 0) {
                return -1;
            }
            strides[other] = stride;
            base += stride * states[other][0];
            stride *= left[variables[other]].length;
        }
        int[] at = new int[count];
        while (factor.table()[base] <= 0) {
            int moved = count - 1;
            for (; moved >= 0; moved--) {
                int before = states[moved][at[moved]];
                at[moved] = at[moved] + 1 == states[moved].length ? 0 : at[moved] + 1;
                base += strides[moved] * (states[moved][at[moved]] - before);
                if (at[moved] > 0) {
                    break;
                }
            }
            if (moved < 0) {
                return -1;
            }
        }
        return base;
    }

    /** By axis of a table and state, the first combination with it that has a weight; -1 if there is none. */
    private int[][] first(Factor factor) {
        int count = factor.variables().length;
        int[][] first = new int[count][];
        for (int axis = 0; axis < count; axis++) {
            first[axis] = new int[left[factor.variables()[axis]].length];
            Arrays.fill(first[axis], -1);
        }
        double[] table = factor.table();
        for (int cell = table.length - 1; cell >= 0; cell--) {
            if (table[cell] > 0) {
                int rest = cell;
                for (int axis = count - 1; axis >= 0; axis--) {
                    first[axis][rest % first[axis].length] = cell;
                    rest /= first[axis].length;
                }
            }
        }
        return first;
    }

    /** Whether combinations are of a table of this shape: one table may stand in factors of several. */
    private boolean isOf(int[][] known, Factor factor) {
        boolean same = known.length == factor.variables().length;
        for (int axis = 0; same && axis < known.length; axis++) {
            same = known[axis].length == left[factor.variables()[axis]].length;
        }
        return same;
    }

    private static int[][] copy(int[][] rows) {
        int[][] copy = new int[rows.length][];
        Arrays.setAll(copy, row -> rows[row].clone());
        return copy;
    }

    /** For each state of a variable, whether it is left. */
    boolean[] flags(int variable) {
        return left[variable].clone();
    }

    /** The states of a variable that are left, in order. */
    int[] left(int variable) {
        int count = 0;
        for (boolean one : left[variable]) {
            count += one ? 1 : 0;
        }
        int[] states = new int[count];
        int next = 0;
        for (int state = 0; state < left[variable].length; state++) {
            if (left[variable][state]) {
                states[next++] = state;
            }
        }
        return states;
    }

    /** A variable none of whose states is left, so that the factors contradict one another; -1 if there is none. */
    int emptied() {
        return emptied;
    }
}
