package org.geneticsrules.inference;

import java.util.List;

/**
 * A factor graph without the states that genotype elimination strikes out: those left are numbered anew, and for each it is known where it
 * lies in the tables of the factors.
 */
final class Narrowed {

    private final int[][] states;
    private final List<Factor> factors;

    /** For each factor, variable of it and state, the distance in its table. */
    private final int[][][] offsets;

    /** For each variable, the factors with it. */
    private final int[][] touching;

    Narrowed(FactorGraph graph, Elimination left) {
        this.factors = graph.factors();
        this.states = new int[graph.size()][];
        for (int v = 0; v < states.length; v++) {
            states[v] = left.left(v);
        }
        this.offsets = new int[factors.size()][][];
        int[] counts = new int[states.length];
        for (int f = 0; f < factors.size(); f++) {
            int[] variables = factors.get(f).variables();
            offsets[f] = new int[variables.length][];
            int stride = 1;
            for (int axis = variables.length - 1; axis >= 0; axis--) {
                int[] here = states[variables[axis]].clone();
                for (int s = 0; s < here.length; s++) {
                    here[s] *= stride;
                }
                offsets[f][axis] = here;
                stride *= graph.states(variables[axis]);
                counts[variables[axis]]++;
            }
        }
        this.touching = new int[states.length][];
        for (int v = 0; v < states.length; v++) {
            touching[v] = new int[counts[v]];
        }
        for (int f = 0; f < factors.size(); f++) {
            for (int v : scope(f)) {
                touching[v][--counts[v]] = f;
            }
        }
    }

    /** The number of variables. */
    int size() {
        return states.length;
    }

    /** The number of variables of more than one state. */
    int open() {
        int count = 0;
        for (int[] one : states) {
            count += one.length > 1 ? 1 : 0;
        }
        return count;
    }

    /** The number of states of a variable. */
    int size(int variable) {
        return states[variable].length;
    }

    /** Which state of the graph a state is. */
    int state(int variable, int state) {
        return states[variable][state];
    }

    int factors() {
        return factors.size();
    }

    /** The variables of a factor. */
    int[] scope(int factor) {
        return factors.get(factor).variables();
    }

    double[] table(int factor) {
        return factors.get(factor).table();
    }

    /** For each variable of a factor and each state of it, the distance in the table. */
    int[][] offsets(int factor) {
        return offsets[factor];
    }

    /** The factors with a variable. */
    int[] touching(int variable) {
        return touching[variable];
    }
}
