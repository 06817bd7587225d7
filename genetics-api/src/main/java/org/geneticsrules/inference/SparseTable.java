package org.geneticsrules.inference;

/**
 * A table of two parents and a kit without its zeros: a pair of parents has few kinds of kits.
 *
 * <p>The entries of parents (s, d) are those from {@code starts[s * dams + d]} up to that of the next pair.
 */
@SuppressWarnings("ArrayRecordComponent") // read in the inner loops, never compared
record SparseTable(int sires, int dams, int kits, int[] starts, int[] kit, double[] weight) {

    static SparseTable of(double[] table, int sires, int dams, int kits) {
        int count = 0;
        for (double weight : table) {
            count += weight > 0 ? 1 : 0;
        }
        int[] starts = new int[sires * dams + 1];
        int[] kit = new int[count];
        double[] weights = new double[count];
        int next = 0;
        for (int pair = 0; pair < sires * dams; pair++) {
            for (int k = 0; k < kits; k++) {
                if (table[pair * kits + k] > 0) {
                    kit[next] = k;
                    weights[next++] = table[pair * kits + k];
                }
            }
            starts[pair + 1] = next;
        }
        return new SparseTable(sires, dams, kits, starts, kit, weights);
    }

    /** For each pair of parents, how likely what is known of the kit is. */
    void likelihoods(double[] message, double[] into) {
        for (int pair = 0; pair < into.length; pair++) {
            double sum = 0;
            for (int i = starts[pair]; i < starts[pair + 1]; i++) {
                sum += weight[i] * message[kit[i]];
            }
            into[pair] = sum;
        }
    }

    /** What weights of pairs of parents say of the kit. */
    double[] kit(double[] pairs) {
        double[] message = new double[kits];
        for (int pair = 0; pair < pairs.length; pair++) {
            double here = pairs[pair];
            if (here > 0) {
                for (int i = starts[pair]; i < starts[pair + 1]; i++) {
                    message[kit[i]] += here * weight[i];
                }
            }
        }
        return message;
    }
}
