package org.geneticsrules.inference;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/**
 * Makes sets of records that contradict one another irreducible, or as small as any.
 *
 * <p><b>Irreducible.</b> The records are halved: with one half taken for granted, what is needed of the other half is found, and with that
 * what is needed of the first (Junker 2004, "QuickXplain", from memory). Of n records of which k are needed, that asks about
 * k log(n/k) times instead of n times.
 *
 * <p><b>Smallest.</b> A set contradicts itself if and only if it has a record in common with each set that has to be left out for the others
 * to fit. So the smallest set that has one in common with all of those that are known is asked about; if it fits, it is filled up until
 * nothing more fits, and what is left over is known from then on (Ignatiev et al. 2015, "Smallest MUS extraction with minimal hitting set
 * dualization", from memory).
 */
final class Shrinking {

    /** Of more records than this no smallest set is looked for. */
    static final int MOST_RECORDS = 60;

    /** After so many steps the search for a smallest set is given up. */
    private static final int MOST_STEPS = 300;

    private final Fitting fitting;

    Shrinking(Fitting fitting) {
        this.fitting = fitting;
    }

    /**
     * Finds an irreducible set.
     *
     * @param all records that contradict one another
     * @return some of them; empty if that was too large to decide
     */
    Optional<BitSet> irreducible(BitSet all) {
        if (fitting.of(all) != Fit.CONTRADICTS) {
            return Optional.empty();
        }
        BitSet set = needed(new BitSet(), false, all.stream().toArray());
        return Optional.of(set).filter(this::isIrreducible);
    }

    /** Which of some records are needed for a contradiction, others being taken for granted. */
    private BitSet needed(BitSet granted, boolean changed, int[] records) {
        if (changed && fitting.of(granted) == Fit.CONTRADICTS) {
            return new BitSet();
        }
        if (records.length == 1) {
            return set(records, 0, 1);
        }
        int half = records.length / 2;
        BitSet first = set(records, 0, half);
        BitSet second = set(records, half, records.length);
        BitSet ofSecond = needed(or(granted, first), true, second.stream().toArray());
        BitSet ofFirst = needed(
                or(granted, ofSecond), !ofSecond.isEmpty(), first.stream().toArray());
        return or(ofFirst, ofSecond);
    }

    private static BitSet set(int[] records, int from, int to) {
        BitSet set = new BitSet();
        for (int i = from; i < to; i++) {
            set.set(records[i]);
        }
        return set;
    }

    private static BitSet or(BitSet a, BitSet b) {
        BitSet both = (BitSet) a.clone();
        both.or(b);
        return both;
    }

    private boolean isIrreducible(BitSet set) {
        return fitting.of(set) == Fit.CONTRADICTS
                && set.stream().allMatch(record -> {
                    BitSet rest = (BitSet) set.clone();
                    rest.clear(record);
                    return fitting.of(rest) == Fit.FITS;
                });
    }

    /**
     * Finds a smallest set.
     *
     * @param all records that contradict one another
     * @return some of them of which no fewer contradict one another; empty if that is too much to find out
     */
    Optional<BitSet> smallest(BitSet all) {
        if (all.cardinality() > MOST_RECORDS) {
            return Optional.empty();
        }
        List<BitSet> leftOut = new ArrayList<>();
        for (int step = 0; step < MOST_STEPS; step++) {
            HittingSets hitting = HittingSets.of(leftOut, 1);
            if (hitting.found().isEmpty()) {
                return Optional.empty();
            }
            BitSet set = hitting.found().get(0);
            Fit fit = fitting.of(set);
            if (fit == Fit.CONTRADICTS) {
                return Optional.of(set);
            }
            if (fit == Fit.UNDECIDED) {
                return Optional.empty();
            }
            BitSet rest = (BitSet) all.clone();
            rest.andNot(filled(set, all));
            leftOut.add(rest);
        }
        return Optional.empty();
    }

    /** As many of the records as still fit. What is not decided is left out too, which only makes a later bound weaker. */
    private BitSet filled(BitSet set, BitSet all) {
        BitSet filled = (BitSet) set.clone();
        all.stream().forEach(record -> {
            if (!filled.get(record)) {
                filled.set(record);
                if (fitting.of(filled) != Fit.FITS) {
                    filled.clear(record);
                }
            }
        });
        return filled;
    }
}
