package org.geneticsrules.answer.named;

import com.google.common.collect.ImmutableList;
import java.util.List;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.document.Reference;

/**
 * An answer about names with everything that has to go with it.
 *
 * <p>Immutable and thread-safe.
 *
 * @param kind a stable word for the kind of question: {@code name}, {@code meaning} or {@code conversion}
 * @param question the question in a sentence
 * @param verdict the answer in one sentence
 * @param given what was stated
 * @param finding what was found out
 * @param cautions what has to be said along with the answer
 * @param evidence the senses that the answer rests on, each with the vocabulary whose it is
 * @param vocabularies the vocabularies asked, in this order
 * @param notices what says nothing, and what was taken for granted
 */
public record NamedAnswer(
        String kind,
        String question,
        String verdict,
        List<String> given,
        NameFinding finding,
        List<Caution> cautions,
        NameEvidence evidence,
        List<Reference> vocabularies,
        List<String> notices) {

    /**
     * Copies the lists.
     *
     * @param kind the kind of question
     * @param question the question
     * @param verdict the answer in one sentence
     * @param given what was stated
     * @param finding what was found out
     * @param cautions what has to be said
     * @param evidence the senses it rests on
     * @param vocabularies the vocabularies asked
     * @param notices what says nothing
     */
    public NamedAnswer {
        given = ImmutableList.copyOf(given);
        cautions = ImmutableList.copyOf(cautions);
        vocabularies = ImmutableList.copyOf(vocabularies);
        notices = ImmutableList.copyOf(notices);
    }
}
