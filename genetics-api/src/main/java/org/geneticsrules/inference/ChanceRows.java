package org.geneticsrules.inference;

import java.util.Arrays;

/**
 * The chances of the states of many animals, one row after another.
 *
 * @param first by animal, where its row begins; one more for the end
 * @param chances all rows
 */
@SuppressWarnings("ArrayRecordComponent") // never compared
record ChanceRows(int[] first, double[] chances) {

    static final ChanceRows NONE = new ChanceRows(new int[0], new double[0]);

    /** The chances of the states of an animal. */
    double[] of(int member) {
        return Arrays.copyOfRange(chances, first[member], first[member + 1]);
    }
}
