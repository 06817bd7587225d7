package org.geneticsrules.answer.compared;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.answer.Assumption;
import org.geneticsrules.answer.EvidenceLevel;
import org.geneticsrules.answer.Rival;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.document.Reference;
import org.geneticsrules.planning.Effort;
import org.geneticsrules.planning.ToldApart;

/**
 * What can be done next to tell models of inheritance apart, with everything that has to go with it. Nothing in it is advice to breed.
 *
 * <p>Immutable and thread-safe.
 *
 * @param question the question in a sentence
 * @param verdict the answer in a sentence or two
 * @param decided whether there is an answer: a step that tells something, the proof that none can, or records that settle it already
 * @param given what was stated
 * @param models the models that are told apart, numbered from 0
 * @param excluded models that the records exclude already, and that are left out
 * @param bar the likelihood ratio that is evidence: 20 for each rival tried, those excluded included
 * @param steps what can be done, in order: what breeds nobody first, and of one effort what is expected to tell most
 * @param tried how many steps of each effort were tried
 * @param leftOut what is not proposed, and why
 * @param apart for pairs of models, whether looks can tell them apart at all
 * @param assumptions what is taken for granted
 * @param rivals views that differ from statements this rests on
 * @param cautions what has to be said along with it
 * @param evidence what it rests on under the model in use
 * @param model the model in use
 * @param pedigree id and version of the records
 * @param notices what says nothing, and what was left out
 */
public record TellApartAnswer(
        String question,
        String verdict,
        boolean decided,
        List<String> given,
        List<OfModel> models,
        List<OfModel> excluded,
        double bar,
        List<ApartStep> steps,
        List<Tried> tried,
        List<LeftOut> leftOut,
        List<ToldApart> apart,
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
     * @param decided whether there is one
     * @param given what was stated
     * @param models the models
     * @param excluded models that the records exclude
     * @param bar the ratio that is evidence
     * @param steps what can be done
     * @param tried how many steps were tried
     * @param leftOut what is not proposed
     * @param apart whether looks can tell them apart
     * @param assumptions what is taken for granted
     * @param rivals differing views
     * @param cautions what has to be said
     * @param evidence what it rests on
     * @param model the model in use
     * @param pedigree the records
     * @param notices what says nothing
     */
    public TellApartAnswer {
        given = ImmutableList.copyOf(given);
        models = ImmutableList.copyOf(models);
        excluded = ImmutableList.copyOf(excluded);
        steps = ImmutableList.copyOf(steps);
        tried = ImmutableList.copyOf(tried);
        leftOut = ImmutableList.copyOf(leftOut);
        apart = ImmutableList.copyOf(apart);
        assumptions = ImmutableList.copyOf(assumptions);
        rivals = ImmutableList.copyOf(rivals);
        cautions = ImmutableList.copyOf(cautions);
        notices = ImmutableList.copyOf(notices);
    }

    /**
     * A model.
     *
     * @param title what it is called
     * @param model which it is
     * @param logRatio natural logarithm of how many times likelier the records held are under it than under the first; 0 of the first, and
     *     of all where nothing was recorded
     * @param belief what may be believed of it by the records, if one of the models is true
     */
    public record OfModel(String title, Reference model, double logRatio, double belief) {}

    /**
     * How many steps of one effort were tried.
     *
     * @param effort what they ask of animals
     * @param tried how many, animals recorded alike counted once
     * @param nothing how many of them tell nothing
     * @param little how many tell something, but so little beside others that they are not listed
     * @param left how many more there are that were not tried
     */
    public record Tried(Effort effort, int tried, int nothing, int little, int left) {}

    /**
     * Something that is not proposed.
     *
     * @param step what it is
     * @param reason why not
     * @param caution name of the caution that excludes it; empty for another reason. It can be asked for by that name
     */
    public record LeftOut(String step, String reason, Optional<String> caution) {}
}
