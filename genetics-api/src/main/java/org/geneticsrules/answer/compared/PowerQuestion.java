package org.geneticsrules.answer.compared;

import org.geneticsrules.answer.Animal;
import org.geneticsrules.planning.Power;
import org.geneticsrules.simulation.LitterPlan;
import org.geneticsrules.simulation.Simulation;

/**
 * The question how often litters of a plan would tell models apart.
 *
 * @param sire what is stated of each sire, under the model from which litters are drawn; cautions go by it
 * @param dam what is stated of each dam
 * @param drawing how animals are drawn, from the same model, and what is written down of them
 * @param plan the couples and their litters
 * @param sets how many sets of litters are drawn, 1 to {@value Power#MOST_SETS}
 */
public record PowerQuestion(Animal sire, Animal dam, Simulation drawing, LitterPlan plan, int sets) {

    /**
     * Returns a question with the usual number of sets.
     *
     * @param sire what is stated of each sire
     * @param dam what is stated of each dam
     * @param drawing how animals are drawn and recorded
     * @param plan the litters
     * @return the question
     */
    public static PowerQuestion of(Animal sire, Animal dam, Simulation drawing, LitterPlan plan) {
        return new PowerQuestion(sire, dam, drawing, plan, Power.USUAL_SETS);
    }
}
