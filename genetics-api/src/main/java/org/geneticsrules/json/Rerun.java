package org.geneticsrules.json;

import com.google.common.collect.ImmutableList;
import java.util.List;
import org.geneticsrules.answer.compared.DocumentChange;
import org.geneticsrules.document.Differences;

/**
 * What came of running an analysis again.
 *
 * <p>Immutable and thread-safe.
 *
 * @param before the analysis as it was frozen
 * @param after the analysis as it came out now
 * @param answer what is otherwise in the answer
 * @param documents the records, models, cautions and vocabularies that are otherwise
 */
public record Rerun(FrozenAnalysis before, FrozenAnalysis after, Differences answer, List<DocumentChange> documents) {

    /**
     * Copies the list.
     *
     * @param before the analysis as it was frozen
     * @param after the analysis now
     * @param answer what is otherwise in the answer
     * @param documents the documents that are otherwise
     */
    public Rerun {
        documents = ImmutableList.copyOf(documents);
    }

    /**
     * Tells whether another version of the library answers now.
     *
     * @return true if the analysis was frozen by another version
     */
    public boolean isOtherLibrary() {
        return !before.library().equals(after.library());
    }
}
