package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.Assumption;
import org.geneticsrules.answer.EvidenceLevel;
import org.geneticsrules.trait.Confusions;

/**
 * What an answer from the records of animals rests on.
 *
 * @param answers the model and its cautions
 * @param population id of the population of founders for whom the records state none, if one is named
 * @param confusions how often a state is recorded as another
 * @param assumptions what is taken for granted
 * @param evidence the statements of the model that records are read by
 * @param notices records that say nothing under the model
 */
public record RecordBasis(
        Answers answers,
        Optional<String> population,
        Confusions confusions,
        List<Assumption> assumptions,
        EvidenceLevel evidence,
        List<String> notices) {

    /**
     * Copies the lists.
     *
     * @param answers the model and its cautions
     * @param population id of a population
     * @param confusions naming errors
     * @param assumptions what is taken for granted
     * @param evidence what it rests on
     * @param notices records that say nothing
     */
    public RecordBasis {
        assumptions = ImmutableList.copyOf(assumptions);
        notices = ImmutableList.copyOf(notices);
    }
}
