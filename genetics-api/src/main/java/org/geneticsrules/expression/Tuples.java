package org.geneticsrules.expression;

import java.util.Arrays;

/** Sequences of states, each numbered once: a longer one is the number of a shorter one and one more state. */
final class Tuples {

    /** The number of the sequence without states. */
    static final int EMPTY = 0;

    /** More phenotypes than this can neither be read nor held. */
    private static final int MOST = 1 << 18;

    private final LongTable known = new LongTable();
    private int[] shorter = new int[64];
    private int[] last = new int[64];
    private int count = 1;

    /** The number of a sequence made longer by one state. */
    int longer(int before, int state, Nodes nodes) {
        long key = LongTable.key(before, state);
        int number = known.get(key);
        if (number != LongTable.NONE) {
            return number;
        }
        if (count > MOST) {
            throw nodes.refusal(count, MOST);
        }
        if (count == last.length) {
            shorter = Arrays.copyOf(shorter, 2 * count);
            last = Arrays.copyOf(last, 2 * count);
        }
        shorter[count] = before;
        last[count] = state;
        known.put(key, count);
        return count++;
    }

    /** The states of a sequence of known length. */
    int[] tuple(int number, int length) {
        int[] states = new int[length];
        for (int at = number, i = length - 1; i >= 0; i--) {
            states[i] = last[at];
            at = shorter[at];
        }
        return states;
    }
}
