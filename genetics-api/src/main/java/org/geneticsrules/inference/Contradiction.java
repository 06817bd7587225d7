package org.geneticsrules.inference;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Records that cannot all be true under the model: at least one of them is mistaken, or the model is.
 *
 * <p>The set is irreducible: if any one of the records is left out, the others fit one another. Which of them is mistaken cannot be told
 * from this; it is no ground for doubting one rather than another.
 *
 * @param records the records, in the order of the pedigree, at least one
 * @param smallest true if it is proven that no fewer records of these animals and their relatives contradict one another; false if that
 *     is not so, or was not proven
 */
public record Contradiction(List<RecordRef> records, boolean smallest) {

    /**
     * Copies the records.
     *
     * @param records the records
     * @param smallest whether no fewer contradict one another
     * @throws IllegalArgumentException if there are none
     */
    public Contradiction {
        records = ImmutableList.copyOf(records);
        if (records.isEmpty()) {
            throw new IllegalArgumentException("no records cannot contradict one another");
        }
    }

    /** Returns the records, as those that cannot all be true. */
    @Override
    public String toString() {
        return "not all true: " + records.stream().map(RecordRef::toString).collect(Collectors.joining("; "));
    }
}
