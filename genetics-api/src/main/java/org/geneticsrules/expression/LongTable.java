package org.geneticsrules.expression;

import java.util.Arrays;

/** A table from whole numbers to numbers of at least 0 or diagrams, in two arrays with open addressing: no object for each entry. */
final class LongTable {

    /** What {@link #get} returns for a key that is not there; no value may be this. */
    static final int NONE = Integer.MIN_VALUE;

    private long[] keys = new long[16];
    private int[] values = new int[16];
    private int size;

    LongTable() {
        Arrays.fill(values, NONE);
    }

    static long key(int first, int second) {
        return ((long) first << 32) | (second & 0xffffffffL);
    }

    int size() {
        return size;
    }

    int get(long key) {
        for (int at = slot(key); ; at = at + 1 & keys.length - 1) {
            if (values[at] == NONE || keys[at] == key) {
                return values[at];
            }
        }
    }

    void put(long key, int value) {
        if (2 * (size + 1) > keys.length) {
            grow();
        }
        int at = slot(key);
        while (values[at] != NONE && keys[at] != key) {
            at = at + 1 & keys.length - 1;
        }
        size += values[at] == NONE ? 1 : 0;
        keys[at] = key;
        values[at] = value;
    }

    private int slot(long key) {
        long mixed = key * 0x9E3779B97F4A7C15L; // spreads the bits of a key over the word
        return (int) (mixed ^ mixed >>> 32) & keys.length - 1;
    }

    private void grow() {
        long[] oldKeys = keys;
        int[] oldValues = values;
        keys = new long[2 * oldKeys.length];
        values = new int[keys.length];
        Arrays.fill(values, NONE);
        size = 0;
        for (int i = 0; i < oldKeys.length; i++) {
            if (oldValues[i] != NONE) {
                put(oldKeys[i], oldValues[i]);
            }
        }
    }
}
