package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableList;
import java.util.List;
import org.geneticsrules.answer.Assumption;
import org.geneticsrules.answer.EvidenceLevel;
import org.geneticsrules.answer.Rival;
import org.geneticsrules.answer.RivalVerdict;
import org.geneticsrules.answer.Status;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.document.Reference;
import org.geneticsrules.trait.Taxon;

/**
 * An answer about recorded animals with everything that has to go with it.
 *
 * <p>Immutable and thread-safe.
 *
 * @param kind a stable word for the kind of question: {@code may carry}, {@code carrier trail}, {@code how sure}, {@code parentage},
 *     {@code next litter}, {@code look next}, {@code later} or
 *     {@code dna test}
 * @param question the question in a sentence
 * @param verdict the answer in one sentence
 * @param status how the numbers were come by; each has a standing of its own besides
 * @param given what is recorded of the animals asked about
 * @param assumptions what is taken for granted besides
 * @param finding what was found out
 * @param conflicts records that cannot all be true and bear on the answer; none if all fit, or if it was not found out
 * @param rivalVerdicts what rival models answer that come to another verdict
 * @param rivals views that differ from statements this rests on
 * @param cautions what has to be said along with the answer
 * @param evidence what the answer rests on
 * @param model the model used
 * @param pedigree id and version of the pedigree
 * @param notices records that say nothing under the model, and what was left out
 * @param young what the young of such animals are called
 */
public record RecordedAnswer(
        String kind,
        String question,
        String verdict,
        Status status,
        List<String> given,
        List<Assumption> assumptions,
        Finding finding,
        List<Conflict> conflicts,
        List<RivalVerdict> rivalVerdicts,
        List<Rival> rivals,
        List<Caution> cautions,
        EvidenceLevel evidence,
        Reference model,
        Reference pedigree,
        List<String> notices,
        Taxon.Young young) {

    /**
     * Copies the lists.
     *
     * @param kind the kind of question
     * @param question the question
     * @param verdict the answer in one sentence
     * @param status how the numbers were come by
     * @param given what is recorded
     * @param assumptions what is taken for granted
     * @param finding what was found out
     * @param conflicts records that cannot all be true
     * @param rivalVerdicts what rival models answer otherwise
     * @param rivals differing views
     * @param cautions what has to be said
     * @param evidence what the answer rests on
     * @param model the model used
     * @param pedigree the pedigree
     * @param notices what says nothing
     * @param young what the young are called
     */
    public RecordedAnswer {
        given = ImmutableList.copyOf(given);
        assumptions = ImmutableList.copyOf(assumptions);
        conflicts = ImmutableList.copyOf(conflicts);
        rivalVerdicts = ImmutableList.copyOf(rivalVerdicts);
        rivals = ImmutableList.copyOf(rivals);
        cautions = ImmutableList.copyOf(cautions);
        notices = ImmutableList.copyOf(notices);
    }

    /** This answer with what rival models answer, and with notices and cautions that take that into account. */
    RecordedAnswer against(List<RivalVerdict> otherwise, List<String> noticed, List<Caution> due) {
        return new RecordedAnswer(
                kind,
                question,
                verdict,
                status,
                given,
                assumptions,
                finding,
                conflicts,
                otherwise,
                rivals,
                due,
                evidence,
                model,
                pedigree,
                noticed,
                young);
    }
}
