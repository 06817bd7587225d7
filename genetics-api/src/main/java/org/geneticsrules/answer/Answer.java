package org.geneticsrules.answer;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.document.Reference;
import org.geneticsrules.explanation.Hidden;
import org.geneticsrules.explanation.Reason;
import org.geneticsrules.probability.Probability;

/**
 * An answer with everything that has to go with it.
 *
 * <p>Immutable and thread-safe.
 *
 * @param question the question
 * @param verdict the answer in one sentence
 * @param status how the numbers were come by
 * @param probability the chance asked for, if one number answers the question
 * @param lost the share of the kits conceived that are lost before they are counted, where any may be and it can be said without
 *     assuming frequencies
 * @param given what was stated
 * @param assumptions what is taken for granted besides
 * @param because the reasons, from which the numbers can be computed again
 * @param outcomes the looks that may occur, in the declared order of states
 * @param litter the litter asked for, where no frequencies are needed
 * @param weightings what is probable under each population considered
 * @param tests what test matings would take
 * @param hidden the loci that cannot be read off a look
 * @param rivalVerdicts what rival models answer that come to another verdict
 * @param rivals views that differ from statements this rests on
 * @param cautions what has to be said along with the answer
 * @param evidence what the answer rests on
 * @param model the model used
 * @param notices what was stated or asked but says nothing under the model
 */
public record Answer(
        Question question,
        String verdict,
        Status status,
        Optional<Probability> probability,
        Optional<Probability> lost,
        List<String> given,
        List<Assumption> assumptions,
        List<Reason> because,
        List<Outcome> outcomes,
        Optional<Litter> litter,
        List<Weighting> weightings,
        List<TestResult> tests,
        List<Hidden> hidden,
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
     * @param verdict the answer in one sentence
     * @param status how the numbers were come by
     * @param probability the chance asked for, if one number answers the question
     * @param lost the share of kits lost
     * @param given what was stated
     * @param assumptions what is taken for granted besides
     * @param because the reasons, from which the numbers can be computed again
     * @param outcomes the looks that may occur, in the declared order of states
     * @param litter the litter asked for, where no frequencies are needed
     * @param weightings what is probable under each population considered
     * @param tests what test matings would take
     * @param hidden the loci that cannot be read off a look
     * @param rivalVerdicts what rival models answer otherwise
     * @param rivals views that differ from statements this rests on
     * @param cautions what has to be said along with the answer
     * @param evidence what the answer rests on
     * @param model the model used
     * @param notices what was stated or asked but says nothing under the model
     */
    public Answer {
        given = ImmutableList.copyOf(given);
        assumptions = ImmutableList.copyOf(assumptions);
        because = ImmutableList.copyOf(because);
        outcomes = ImmutableList.copyOf(outcomes);
        weightings = ImmutableList.copyOf(weightings);
        tests = ImmutableList.copyOf(tests);
        hidden = ImmutableList.copyOf(hidden);
        rivalVerdicts = ImmutableList.copyOf(rivalVerdicts);
        rivals = ImmutableList.copyOf(rivals);
        cautions = ImmutableList.copyOf(cautions);
        notices = ImmutableList.copyOf(notices);
    }
}
