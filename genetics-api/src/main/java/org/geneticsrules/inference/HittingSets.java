package org.geneticsrules.inference;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;

/**
 * The smallest sets that have an element in common with each of some sets.
 *
 * <p>One size after another is tried, from a lower bound on. An element of a set that is not hit yet is taken, each in turn, and those tried
 * before it are not taken any more, so that no set is found twice. A branch ends where sets without common elements are left over, more
 * than elements may still be taken.
 */
final class HittingSets {

    /** More branches than this are not followed. */
    private static final int MOST_BRANCHES = 1_000_000;

    private static final Comparator<BitSet> IN_ORDER = (a, b) -> {
        BitSet differing = (BitSet) a.clone();
        differing.xor(b);
        return differing.isEmpty() ? 0 : a.get(differing.nextSetBit(0)) ? -1 : 1;
    };

    private final List<BitSet> sets;
    private final int most;
    private final List<BitSet> found = new ArrayList<>();
    private int branches;
    private int size;
    private boolean more;

    private HittingSets(List<BitSet> sets, int most) {
        this.sets = sets;
        this.most = most;
        for (size = packed(new BitSet(), new BitSet()); ; size++) {
            search(new BitSet(), new BitSet(), size);
            if (!found.isEmpty() || isGivenUp()) {
                break;
            }
        }
        found.sort(IN_ORDER);
    }

    /**
     * Finds smallest hitting sets.
     *
     * @param sets the sets to be hit, none of them empty
     * @param most how many are enough
     */
    static HittingSets of(List<BitSet> sets, int most) {
        return new HittingSets(sets, most);
    }

    /** Smallest sets, in order of their elements. */
    List<BitSet> found() {
        return found;
    }

    /** How many elements they have; if the search was given up, the size that was tried last, so that there are no smaller ones. */
    int size() {
        return size;
    }

    /** Whether there are more of them. */
    boolean more() {
        return more;
    }

    /** Whether it was not found out whether these are all. */
    boolean isGivenUp() {
        return branches > MOST_BRANCHES;
    }

    private void search(BitSet taken, BitSet refused, int left) {
        if (++branches > MOST_BRANCHES || more) {
            return;
        }
        BitSet open = null;
        for (BitSet set : sets) {
            if (!set.intersects(taken)) {
                BitSet may = minus(set, refused);
                if (open == null || may.cardinality() < open.cardinality()) {
                    open = may;
                }
            }
        }
        if (open == null) {
            if (found.size() == most) {
                more = true;
            } else {
                found.add((BitSet) taken.clone());
            }
            return;
        }
        if (packed(taken, refused) > left) {
            return;
        }
        BitSet tried = (BitSet) refused.clone();
        for (int element = open.nextSetBit(0); element >= 0; element = open.nextSetBit(element + 1)) {
            taken.set(element);
            search(taken, tried, left - 1);
            taken.clear(element);
            tried.set(element);
        }
    }

    /** How many sets are left that have no elements in common: so many have to be taken at least. */
    private int packed(BitSet taken, BitSet refused) {
        BitSet used = new BitSet();
        int count = 0;
        for (BitSet set : sets) {
            BitSet may = minus(set, refused);
            if (!set.intersects(taken) && !may.intersects(used)) {
                used.or(may);
                count++;
            }
        }
        return count;
    }

    private static BitSet minus(BitSet set, BitSet other) {
        BitSet rest = (BitSet) set.clone();
        rest.andNot(other);
        return rest;
    }
}
