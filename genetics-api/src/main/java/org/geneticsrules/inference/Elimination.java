package org.geneticsrules.inference;

import java.util.ArrayDeque;
import java.util.Arrays;
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

    private int emptied = -1;

    private Elimination(int[] sizes) {
        this.left = new boolean[sizes.length][];
        for (int v = 0; v < sizes.length; v++) {
            left[v] = new boolean[sizes[v]];
            Arrays.fill(left[v], true);
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
        Elimination result = new Elimination(graph.sizes());
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
            Factor factor = factors.get(f);
            boolean[][] supported = supported(factor);
            for (int axis = 0; axis < factor.variables().length; axis++) {
                int variable = factor.variables()[axis];
                if (strike(variable, supported[axis])) {
                    trail.struck(variable, f);
                    for (int other : touching[variable]) {
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

    /** For each variable of a factor, which states some combination of states that are left supports. */
    private boolean[][] supported(Factor factor) {
        int[] variables = factor.variables();
        int count = variables.length;
        boolean[][] supported = new boolean[count][];
        for (int axis = 0; axis < count; axis++) {
            supported[axis] = new boolean[left[variables[axis]].length];
        }
        int[] at = new int[count];
        int blocked = 0; // how many variables are in a state that is struck out
        for (int axis = 0; axis < count; axis++) {
            blocked += left[variables[axis]][0] ? 0 : 1;
        }
        double[] table = factor.table();
        for (int cell = 0; ; ) {
            if (blocked == 0 && table[cell] > 0) {
                for (int axis = 0; axis < count; axis++) {
                    supported[axis][at[axis]] = true;
                }
            }
            if (++cell == table.length) {
                return supported;
            }
            for (int axis = count - 1; ; axis--) {
                boolean[] states = left[variables[axis]];
                blocked -= states[at[axis]] ? 0 : 1;
                at[axis] = at[axis] + 1 == states.length ? 0 : at[axis] + 1;
                blocked += states[at[axis]] ? 0 : 1;
                if (at[axis] > 0) {
                    break;
                }
            }
        }
    }

    private boolean strike(int variable, boolean[] supported) {
        boolean changed = false;
        boolean any = false;
        for (int state = 0; state < supported.length; state++) {
            if (left[variable][state] && !supported[state]) {
                left[variable][state] = false;
                changed = true;
            }
            any |= left[variable][state];
        }
        if (!any) {
            emptied = variable;
        }
        return changed;
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
