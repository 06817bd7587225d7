package org.geneticsrules.inference;

import com.google.common.collect.ImmutableList;
import java.util.List;

/**
 * The fewest records of related animals to look at again: without them all others fit one another, and without fewer they do not.
 *
 * <p>Usually there are several such sets, and nothing tells which of them holds the mistakes. Fewest is not likeliest: one mistake may
 * stand in several records, as where two kits were exchanged.
 *
 * @param kindred ids of the animals, in the order of the pedigree, which relations connect with one another and with no others
 * @param sets all smallest sets, each in the order of the pedigree; none if they were not found
 * @param more true if there are more sets of this size than were asked for
 * @param atLeast how many records have to be left out at least; the size of each set if there are sets
 */
public record FewestToRecheck(List<String> kindred, List<List<RecordRef>> sets, boolean more, int atLeast) {

    /**
     * Copies the lists.
     *
     * @param kindred the animals
     * @param sets the sets
     * @param more whether there are more of them
     * @param atLeast a lower bound of their size
     * @throws IllegalArgumentException if the sets are not all of the stated size
     */
    public FewestToRecheck {
        kindred = ImmutableList.copyOf(kindred);
        sets = sets.stream().map(ImmutableList::copyOf).collect(ImmutableList.toImmutableList());
        for (List<RecordRef> set : sets) {
            if (set.size() != atLeast) {
                throw new IllegalArgumentException(set + " has not " + atLeast + " records");
            }
        }
    }

    /**
     * Tells whether smallest sets were found.
     *
     * @return false if that would have taken more room or more steps than allowed; then only {@link #atLeast} is known
     */
    public boolean isDecided() {
        return !sets.isEmpty();
    }
}
