package org.geneticsrules.inference;

import java.util.function.ToIntFunction;

/**
 * What is known of animals of one kind by themselves at one unit.
 *
 * @param number its number at this unit
 * @param support number of the set of states that are left; the same set has the same number
 * @param states the states that are left
 * @param weights the weight of each of them, the largest 1
 * @param log natural logarithm of what the weights were divided by
 * @param width how many states there are
 */
@SuppressWarnings("ArrayRecordComponent") // read in the inner loops, never compared
record Known(int number, int support, int[] states, double[] weights, double log, int width) {

    /**
     * What weights of all states say.
     *
     * @param number its number
     * @param all the weight of each state
     * @param support gives each set of states its number
     */
    static Known of(int number, double[] all, ToIntFunction<int[]> support) {
        double most = 0;
        int count = 0;
        for (double weight : all) {
            most = Math.max(most, weight);
            count += weight > 0 ? 1 : 0;
        }
        int[] states = new int[count];
        double[] weights = new double[count];
        int next = 0;
        for (int state = 0; state < all.length; state++) {
            if (all[state] > 0) {
                states[next] = state;
                weights[next++] = all[state] / most;
            }
        }
        return new Known(
                number, support.applyAsInt(states), states, weights, count == 0 ? 0 : Math.log(most), all.length);
    }
}
