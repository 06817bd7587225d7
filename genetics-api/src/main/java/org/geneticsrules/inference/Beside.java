package org.geneticsrules.inference;

import java.util.Arrays;

/**
 * A smaller table laid beside that of a clique: its variables are some of the clique's, in the same order, the last changing fastest.
 *
 * <p>Neighbouring variables that are both in the smaller table, or both not, are gone through as one, so that the innermost loop is a
 * long run either along the smaller table or at one place of it.
 */
final class Beside {

    private final double[] small;

    /** By run from the outermost to the innermost, its length and how far the smaller table moves on with each step of it. */
    private final int[] lengths;

    private final int[] strides;

    private Beside(double[] small, int[] lengths, int[] strides) {
        this.small = small;
        this.lengths = lengths;
        this.strides = strides;
    }

    /**
     * Lays a table beside that of a clique.
     *
     * @param clique the variables of the clique
     * @param sizes the number of states of each variable
     * @param small the smaller table
     */
    static Beside of(int[] clique, int[] sizes, Factor small) {
        int[] lengths = new int[clique.length + 2];
        int[] strides = new int[clique.length + 2];
        int from = lengths.length; // runs are found from the innermost outwards
        int axis = small.variables().length - 1;
        int stride = 1;
        for (int i = clique.length - 1; i >= 0; i--) {
            int size = sizes[clique[i]];
            boolean both = axis >= 0 && small.variables()[axis] == clique[i];
            axis -= both ? 1 : 0;
            if (size == 1) {
                continue;
            }
            int here = both ? stride : 0;
            stride *= both ? size : 1;
            boolean goesOn = from < lengths.length && here == strides[from] * (both ? lengths[from] : 1);
            if (goesOn) {
                lengths[from] *= size;
            } else {
                lengths[--from] = size;
                strides[from] = here;
            }
        }
        if (axis >= 0) {
            throw new IllegalStateException("a table is not of variables of the clique, in its order");
        }
        while (lengths.length - from < 2) {
            lengths[--from] = 1; // so that there are always two innermost runs
        }
        return new Beside(
                small.table(),
                Arrays.copyOfRange(lengths, from, lengths.length),
                Arrays.copyOfRange(strides, from, strides.length));
    }

    /** Multiplies each cell of the clique by that of the smaller table, and tells whether something that is possible has become small. */
    boolean multiply(double[] table) {
        boolean tiny = false;
        int runs = lengths.length;
        int inner = lengths[runs - 1];
        int step = strides[runs - 1];
        int middle = lengths[runs - 2];
        int stride = strides[runs - 2];
        int[] at = new int[runs];
        int base = 0;
        for (int cell = 0; cell < table.length; ) {
            for (int i = 0, from = base; i < middle; i++, from += stride, cell += inner) {
                if (step == 0) {
                    double weight = small[from];
                    for (int j = 0; j < inner; j++) {
                        double next = table[cell + j] * weight;
                        table[cell + j] = next;
                        tiny |= Weights.isSmall(next);
                    }
                } else {
                    for (int j = 0; j < inner; j++) {
                        double next = table[cell + j] * small[from + j];
                        table[cell + j] = next;
                        tiny |= Weights.isSmall(next);
                    }
                }
            }
            base = next(at, base);
        }
        return tiny;
    }

    /** Adds each cell of the clique to that of the smaller table. */
    void add(double[] table) {
        int runs = lengths.length;
        int inner = lengths[runs - 1];
        int step = strides[runs - 1];
        int middle = lengths[runs - 2];
        int stride = strides[runs - 2];
        int[] at = new int[runs];
        int base = 0;
        for (int cell = 0; cell < table.length; ) {
            for (int i = 0, to = base; i < middle; i++, to += stride, cell += inner) {
                if (step == 0) {
                    double sum = 0;
                    for (int j = 0; j < inner; j++) {
                        sum += table[cell + j];
                    }
                    small[to] += sum;
                } else {
                    for (int j = 0; j < inner; j++) {
                        small[to + j] += table[cell + j];
                    }
                }
            }
            base = next(at, base);
        }
    }

    /** The place in the smaller table after the next step of the outer runs. */
    private int next(int[] at, int base) {
        int now = base;
        for (int run = lengths.length - 3; run >= 0; run--) {
            now += strides[run];
            if (++at[run] < lengths[run]) {
                return now;
            }
            now -= strides[run] * lengths[run];
            at[run] = 0;
        }
        return now;
    }
}
