package org.geneticsrules.answer.compared;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.answer.Assumption;
import org.geneticsrules.answer.EvidenceLevel;
import org.geneticsrules.answer.Rival;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.comparison.FittedModel;
import org.geneticsrules.document.Reference;

/**
 * What litters say of one model, or of several, with everything that has to go with it.
 *
 * <p>Immutable and thread-safe.
 *
 * @param question the question in a sentence
 * @param verdict the answer in a sentence or two
 * @param decided whether the records answer the question: whether litters go with a model was tested, or is settled by one that cannot be;
 *     of several models, one is ahead by the bar, or none fits. Whether a model is rejected is told by its fit
 * @param given what was stated
 * @param fit how well the model, or the best of several, goes with the records; none if all exclude them
 * @param fitOtherwise how well the one model that was asked about goes with the records under other assumptions
 * @param comparison how several models compare; none if one was asked about
 * @param assumptions what is taken for granted
 * @param rivals views that differ from statements this rests on
 * @param cautions what has to be said along with it
 * @param evidence what it rests on under the first model
 * @param model the first model
 * @param pedigree id and version of the records
 * @param notices what says nothing, and what was left out
 */
public record LitterAnswer(
        String question,
        String verdict,
        boolean decided,
        List<String> given,
        Optional<FittedModel> fit,
        List<FitOtherwise> fitOtherwise,
        Optional<Standings> comparison,
        List<Assumption> assumptions,
        List<Rival> rivals,
        List<Caution> cautions,
        EvidenceLevel evidence,
        Reference model,
        Reference pedigree,
        List<String> notices) {

    /**
     * Copies the lists.
     *
     * @param question the question
     * @param verdict the answer
     * @param decided whether the records answer it
     * @param given what was stated
     * @param fit how well it goes with the records
     * @param fitOtherwise how well it goes with them otherwise
     * @param comparison how models compare
     * @param assumptions what is taken for granted
     * @param rivals differing views
     * @param cautions what has to be said
     * @param evidence what it rests on
     * @param model the first model
     * @param pedigree the records
     * @param notices what says nothing
     */
    public LitterAnswer {
        given = ImmutableList.copyOf(given);
        fitOtherwise = ImmutableList.copyOf(fitOtherwise);
        assumptions = ImmutableList.copyOf(assumptions);
        rivals = ImmutableList.copyOf(rivals);
        cautions = ImmutableList.copyOf(cautions);
        notices = ImmutableList.copyOf(notices);
    }
}
