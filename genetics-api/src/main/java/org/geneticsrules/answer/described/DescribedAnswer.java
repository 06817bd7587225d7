package org.geneticsrules.answer.described;

import com.google.common.collect.ImmutableList;
import java.util.List;
import org.geneticsrules.answer.Assumption;
import org.geneticsrules.answer.EvidenceLevel;
import org.geneticsrules.answer.Rival;
import org.geneticsrules.answer.RivalVerdict;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.document.Reference;

/**
 * A description with everything that has to go with it.
 *
 * <p>Immutable and thread-safe.
 *
 * @param question the question in a sentence
 * @param verdict the answer in one sentence or two
 * @param given what was stated
 * @param description what was seen, sorted
 * @param assumptions what is taken for granted
 * @param rivalVerdicts what rival models answer that come to another verdict
 * @param rivals views that differ from statements this rests on
 * @param cautions what has to be said along with the answer
 * @param evidence what it rests on that it can, or cannot, be one animal
 * @param model the model used
 * @param notices what could not be found out, and which rivals were not asked
 */
public record DescribedAnswer(
        String question,
        String verdict,
        List<String> given,
        Description description,
        List<Assumption> assumptions,
        List<RivalVerdict> rivalVerdicts,
        List<Rival> rivals,
        List<Caution> cautions,
        EvidenceLevel evidence,
        Reference model,
        List<String> notices) {

    /**
     * Copies the lists.
     *
     * @param question the question
     * @param verdict the answer
     * @param given what was stated
     * @param description what was seen
     * @param assumptions what is taken for granted
     * @param rivalVerdicts what rivals answer otherwise
     * @param rivals differing views
     * @param cautions what has to be said
     * @param evidence what it rests on
     * @param model the model
     * @param notices what could not be found out
     */
    public DescribedAnswer {
        given = ImmutableList.copyOf(given);
        assumptions = ImmutableList.copyOf(assumptions);
        rivalVerdicts = ImmutableList.copyOf(rivalVerdicts);
        rivals = ImmutableList.copyOf(rivals);
        cautions = ImmutableList.copyOf(cautions);
        notices = ImmutableList.copyOf(notices);
    }
}
