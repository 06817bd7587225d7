package org.geneticsrules.answer.recorded;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.probability.Probability;

/**
 * Which of some males may have sired a litter?
 *
 * @param litter id of the litter
 * @param males the males, in place of those recorded; empty for those recorded
 */
public record ParentageQuestion(String litter, Optional<Paternity> males) {

    /**
     * Asks about the males that are recorded as sire, or as perhaps the sire.
     *
     * @param litter id of the litter
     * @return the question
     */
    public static ParentageQuestion of(String litter) {
        return new ParentageQuestion(litter, Optional.empty());
    }

    /**
     * Asks about some recorded males, each with the same share before anything is looked at.
     *
     * @param ids ids of males, each once
     * @return a copy: one of them sired the whole litter
     * @throws IllegalArgumentException if there are none, or one is named twice
     */
    public ParentageQuestion among(Collection<String> ids) {
        if (ids.isEmpty()) {
            throw new IllegalArgumentException("expected at least one male, but none was named");
        }
        List<Paternity.Candidate> each = ids.stream()
                .map(id -> Paternity.Candidate.of(id, Probability.of(1, ids.size())))
                .toList();
        return among(new Paternity.Candidates(each, false));
    }

    /**
     * Asks about some males with shares, for the litter or for each kit.
     *
     * @param candidates the males
     * @return a copy
     */
    public ParentageQuestion among(Paternity candidates) {
        return new ParentageQuestion(litter, Optional.of(candidates));
    }
}
