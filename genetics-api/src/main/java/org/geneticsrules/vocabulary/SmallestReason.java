package org.geneticsrules.vocabulary;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.geneticsrules.problem.TooLargeException;

/**
 * Finds the fewest traits that by themselves rule out every look: a smallest set that meets each of some sets (a minimum hitting set).
 *
 * <p>Sizes are tried from 1 on. A trait is taken or passed over in the order of the catalogue, and never passed over if it is the last
 * one that rules out some look; so of several smallest sets the first in that order is found, whatever the order of the looks.
 */
final class SmallestReason {

    private static final int MOST_STEPS = 5_000_000;

    private final BitSet chosen = new BitSet();
    private int steps;

    private SmallestReason() {}

    /**
     * A smallest set that shares a number with each of the given sets.
     *
     * @param sets for each look the numbers of the traits that stand against it, at least one
     * @throws TooLargeException if that takes too many steps
     */
    static BitSet of(List<BitSet> sets) {
        if (sets.stream().anyMatch(BitSet::isEmpty)) {
            throw new IllegalArgumentException("nothing stands against one of the looks");
        }
        SmallestReason search = new SmallestReason();
        List<BitSet> smallest = withoutWider(sets);
        for (int size = 0; !search.found(0, size, smallest); size++) {
            search.chosen.clear();
        }
        return search.chosen;
    }

    /** What meets a set meets every set around it. */
    private static List<BitSet> withoutWider(List<BitSet> sets) {
        List<BitSet> kept = new ArrayList<>();
        for (BitSet set : sets) {
            if (kept.stream().noneMatch(other -> isWithin(other, set))) {
                kept.removeIf(other -> isWithin(set, other));
                kept.add(set);
            }
        }
        return kept;
    }

    private static boolean isWithin(BitSet some, BitSet others) {
        BitSet rest = (BitSet) some.clone();
        rest.andNot(others);
        return rest.isEmpty();
    }

    private boolean found(int from, int left, List<BitSet> open) {
        if (open.isEmpty()) {
            return true;
        }
        int last = open.stream().mapToInt(BitSet::length).min().orElse(0) - 1;
        for (int i = from; left > 0 && i <= last; i++) {
            int taken = i;
            count(open.size());
            List<BitSet> rest = open.stream().filter(set -> !set.get(taken)).toList();
            if (rest.size() == open.size()) {
                continue;
            }
            chosen.set(i);
            if (found(i + 1, left - 1, rest)) {
                return true;
            }
            chosen.clear(i);
        }
        return false;
    }

    private void count(int compared) {
        steps += compared;
        if (steps > MOST_STEPS) {
            throw new TooLargeException(
                    "comparisons to find the fewest traits that stand against a name",
                    steps,
                    MOST_STEPS,
                    "give the name fewer looks that differ in many traits.");
        }
    }
}
