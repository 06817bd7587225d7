package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Records that cannot all be true under the model, in words. If any one of them is left out, the others fit.
 *
 * <p>Which of them is mistaken cannot be told from this, and nobody is accused: it may as well be the model.
 *
 * @param records the records, in the order of the pedigree
 * @param smallest true if it is proven that no fewer records contradict one another
 */
public record Conflict(List<Cited> records, boolean smallest) {

    /**
     * Copies the records.
     *
     * @param records the records
     * @param smallest whether no fewer contradict one another
     */
    public Conflict {
        records = ImmutableList.copyOf(records);
    }

    /** Returns the choice that is left, as a sentence: {@code Either the look of .., or the recorded sire .., or the model is mistaken.} */
    @Override
    public String toString() {
        return "Either "
                + records.stream().map(Cited::words).collect(Collectors.joining(", or "))
                + ", or the model is mistaken.";
    }
}
