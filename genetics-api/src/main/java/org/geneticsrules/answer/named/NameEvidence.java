package org.geneticsrules.answer.named;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.answer.EvidenceLevel;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.model.Statement;

/**
 * The senses of names that an answer rests on, and how weak the weakest is.
 *
 * <p>Immutable and thread-safe.
 *
 * @param grade the weakest grade among the senses; empty if the answer rests on none
 * @param senses the senses, each once
 */
public record NameEvidence(Optional<Grade> grade, List<OfSense> senses) {

    /**
     * Copies the list.
     *
     * @param grade the weakest grade
     * @param senses the senses
     */
    public NameEvidence {
        senses = ImmutableList.copyOf(senses);
    }

    /**
     * A sense of a name in one vocabulary.
     *
     * @param vocabulary id of the vocabulary into whose document the statement's pointer leads
     * @param statement the sense as a statement, with its support
     */
    public record OfSense(String vocabulary, Statement statement) {}

    /**
     * Returns the evidence of some senses.
     *
     * @param senses the senses that an answer rests on
     * @return the senses with their weakest grade
     */
    public static NameEvidence of(List<OfSense> senses) {
        return new NameEvidence(
                EvidenceLevel.of(senses.stream().map(OfSense::statement).toList())
                        .grade(),
                senses);
    }

    /**
     * Returns the senses that have the weakest grade.
     *
     * @return the senses to look at first when the answer is doubted
     */
    public List<OfSense> weakest() {
        return senses.stream()
                .filter(one -> grade.isPresent() && one.statement().grade() == grade.get())
                .toList();
    }
}
