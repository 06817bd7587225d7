package org.geneticsrules.planning;

import java.util.Arrays;
import java.util.function.Consumer;

/** The ways in which several animals may fall into classes, by how many are in each. */
final class Counts {

    private Counts() {}

    /** How many ways there are. */
    static double size(int animals, int classes) {
        double size = 1;
        for (int i = 1; i < classes; i++) {
            size = size * (animals + i) / i;
        }
        return classes == 0 ? animals == 0 ? 1 : 0 : Math.rint(size);
    }

    /** Goes through all; the array is the same each time. */
    static void each(int animals, int classes, Consumer<int[]> use) {
        if (classes > 0) {
            each(animals, 0, new int[classes], use);
        }
    }

    private static void each(int left, int at, int[] counts, Consumer<int[]> use) {
        if (at == counts.length - 1) {
            counts[at] = left;
            use.accept(counts);
            return;
        }
        for (int here = left; here >= 0; here--) {
            counts[at] = here;
            each(left - here, at + 1, counts, use);
        }
    }

    /** In how many orders so many animals of each class may come. Not thread-safe. */
    static final class Orders {

        /** The natural logarithms of factorials. */
        private double[] factorials = {0};

        /** The natural logarithm of the number of orders. */
        double log(int[] counts) {
            int sum = 0;
            for (int count : counts) {
                sum += count;
            }
            grow(sum);
            double log = factorials[sum];
            for (int count : counts) {
                log -= factorials[count];
            }
            return log;
        }

        private void grow(int most) {
            if (factorials.length <= most) {
                int old = factorials.length;
                factorials = Arrays.copyOf(factorials, 2 * most + 1);
                for (int i = old; i < factorials.length; i++) {
                    factorials[i] = factorials[i - 1] + Math.log(i);
                }
            }
        }
    }
}
