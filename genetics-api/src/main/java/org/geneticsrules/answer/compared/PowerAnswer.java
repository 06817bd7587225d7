package org.geneticsrules.answer.compared;

import com.google.common.collect.ImmutableList;
import java.util.List;
import org.geneticsrules.answer.Assumption;
import org.geneticsrules.answer.EvidenceLevel;
import org.geneticsrules.answer.Rival;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.document.Reference;
import org.geneticsrules.planning.EstimatedPower;
import org.geneticsrules.simulation.LitterPlan;

/**
 * How often litters of a plan would tell models apart, with everything that has to go with it. All numbers are of drawn animals.
 *
 * <p>Immutable and thread-safe.
 *
 * @param question the question in a sentence
 * @param verdict the answer in a few sentences
 * @param given what was stated
 * @param plan the litters
 * @param power what was found; its true model is the first
 * @param models the models by name, the one from which litters are drawn first
 * @param inseparable numbers of the rivals that no look at any mating tells from the first model, which is proved
 * @param assumptions what is taken for granted
 * @param rivals views that differ from statements this rests on
 * @param cautions what has to be said along with such matings
 * @param evidence what it rests on under the first model
 * @param model the first model
 * @param notices what was left out, and what it does not say
 */
public record PowerAnswer(
        String question,
        String verdict,
        List<String> given,
        LitterPlan plan,
        EstimatedPower power,
        List<Compared> models,
        List<Integer> inseparable,
        List<Assumption> assumptions,
        List<Rival> rivals,
        List<Caution> cautions,
        EvidenceLevel evidence,
        Reference model,
        List<String> notices) {

    /**
     * A model that takes part.
     *
     * @param title what it is called
     * @param model which it is
     */
    public record Compared(String title, Reference model) {}

    /**
     * Copies the lists.
     *
     * @param question the question
     * @param verdict the answer
     * @param given what was stated
     * @param plan the litters
     * @param power what was found
     * @param models the models
     * @param inseparable rivals that no look tells apart
     * @param assumptions what is taken for granted
     * @param rivals differing views
     * @param cautions what has to be said
     * @param evidence what it rests on
     * @param model the first model
     * @param notices what was left out
     */
    public PowerAnswer {
        given = ImmutableList.copyOf(given);
        models = ImmutableList.copyOf(models);
        inseparable = ImmutableList.copyOf(inseparable);
        assumptions = ImmutableList.copyOf(assumptions);
        rivals = ImmutableList.copyOf(rivals);
        cautions = ImmutableList.copyOf(cautions);
        notices = ImmutableList.copyOf(notices);
    }

    /**
     * Tells whether litters can tell the first model from every rival at all.
     *
     * @return false if it is proved of some rival that no look at any mating does
     */
    public boolean decided() {
        return inseparable.isEmpty();
    }

    /**
     * Says a number of sets as a share of all.
     *
     * @param sets a number of sets
     * @return percent with one digit after the point: 100 only if it is all of them, 0 only if it is none
     */
    public String share(int sets) {
        return Shares.share(power, sets);
    }

    /**
     * Says the lower end of the interval of such a share ({@link EstimatedPower#interval}).
     *
     * @param sets a number of sets
     * @return percent with one digit after the point, rounded down
     */
    public String least(int sets) {
        return Shares.least(power, sets);
    }

    /**
     * Says the upper end of it.
     *
     * @param sets a number of sets
     * @return percent with one digit after the point, rounded up
     */
    public String most(int sets) {
        return Shares.most(power, sets);
    }
}
