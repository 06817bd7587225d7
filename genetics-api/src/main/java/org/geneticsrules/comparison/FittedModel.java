package org.geneticsrules.comparison;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;

/**
 * How well records of litters go with one model.
 *
 * <p>A small p speaks against the model as a whole, and no more: kits of some look may live less often, looks be misread, litters be recorded
 * for what they showed. A true model is rejected in one of twenty such tests. A large p proves nothing; other models may fit as well.
 *
 * @param name what the model is called
 * @param records the records as far as they were judged
 * @param kits each kit of which something is recorded
 * @param litters each litter
 * @param matings kits of litters whose parents were recorded alike
 * @param untested how many litters with recorded kits could not be tested, so that p says nothing of them
 * @param p the chance that litters like those tested, taken together, are no likelier than they are; none if none was tested
 * @param standardError of p if litters were drawn for it, else 0
 * @param draws how many sets of litters were drawn, and with which seed; none if p is exact
 */
public record FittedModel(
        String name,
        SharedRecords records,
        List<KitFit> kits,
        List<LitterFit> litters,
        List<MatingFit> matings,
        int untested,
        Optional<Double> p,
        double standardError,
        Optional<Draws> draws) {

    /** Below this, records and model are called ill-fitting. */
    public static final double USUAL_RISK = 0.05;

    /**
     * Draws that stand in for all outcomes.
     *
     * @param number how many
     * @param seed of the generator
     */
    public record Draws(int number, long seed) {}

    /**
     * Copies the lists.
     *
     * @param name what the model is called
     * @param records the records
     * @param kits each kit
     * @param litters each litter
     * @param matings kinds of matings
     * @param untested how many litters could not be tested
     * @param p of all litters tested
     * @param standardError of p
     * @param draws how it was drawn
     */
    public FittedModel {
        kits = ImmutableList.copyOf(kits);
        litters = ImmutableList.copyOf(litters);
        matings = ImmutableList.copyOf(matings);
    }

    /**
     * Tells whether the records exclude the model.
     *
     * @return true if a litter is impossible
     */
    public boolean isImpossible() {
        return litters.stream().anyMatch(litter -> litter.standing() == KitFit.Standing.IMPOSSIBLE);
    }

    /**
     * Tells whether the model is one that none of whose consequences the records go with.
     *
     * @return true if they are impossible, or all litters together less likely than in one of twenty sets like these
     */
    public boolean isRejected() {
        return isImpossible() || p.filter(chance -> chance < USUAL_RISK).isPresent();
    }
}
