package org.geneticsrules.answer.estimated;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.answer.Assumption;
import org.geneticsrules.answer.EvidenceLevel;
import org.geneticsrules.answer.Rival;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.document.Reference;

/**
 * What counts or recorded animals say of a number, with everything that has to go with it.
 *
 * <p>Immutable and thread-safe.
 *
 * @param question the question in a sentence
 * @param verdict the answer in a sentence or two
 * @param informative whether the records say anything about the number
 * @param given what was counted and stated
 * @param numbers what was estimated, the number asked for first
 * @param reckonings values reckoned otherwise
 * @param tests tests of what hypotheses state
 * @param linkage LOD scores of families, where recombination was asked for by families
 * @param assumptions what is taken for granted
 * @param rivals views that differ from statements this rests on
 * @param cautions what has to be said along with it
 * @param evidence what it rests on under the model; no statement where counts alone were asked
 * @param model the model; none where counts alone were asked
 * @param pedigree id and version of the records; none where counts were stated
 * @param notices what makes it weaker than it looks, and what was left out
 */
public record EstimateAnswer(
        String question,
        String verdict,
        boolean informative,
        List<String> given,
        List<EstimatedNumber> numbers,
        List<Reckoning> reckonings,
        List<EstimateTest> tests,
        Optional<LinkageScores> linkage,
        List<Assumption> assumptions,
        List<Rival> rivals,
        List<Caution> cautions,
        EvidenceLevel evidence,
        Optional<Reference> model,
        Optional<Reference> pedigree,
        List<String> notices) {

    /**
     * Copies the lists.
     *
     * @param question the question
     * @param verdict the answer
     * @param informative whether the records say anything
     * @param given what was counted and stated
     * @param numbers what was estimated
     * @param reckonings values reckoned otherwise
     * @param tests tests of hypotheses
     * @param linkage LOD scores
     * @param assumptions what is taken for granted
     * @param rivals differing views
     * @param cautions what has to be said
     * @param evidence what it rests on
     * @param model the model
     * @param pedigree the records
     * @param notices what makes it weaker
     */
    public EstimateAnswer {
        given = ImmutableList.copyOf(given);
        numbers = ImmutableList.copyOf(numbers);
        reckonings = ImmutableList.copyOf(reckonings);
        tests = ImmutableList.copyOf(tests);
        assumptions = ImmutableList.copyOf(assumptions);
        rivals = ImmutableList.copyOf(rivals);
        cautions = ImmutableList.copyOf(cautions);
        notices = ImmutableList.copyOf(notices);
    }
}
