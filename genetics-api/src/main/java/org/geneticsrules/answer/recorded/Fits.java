package org.geneticsrules.answer.recorded;

import java.util.Collection;
import org.geneticsrules.answer.recorded.LookNext.Whether;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.inference.Possibilities;
import org.geneticsrules.inference.Possibility;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;

/** Whether records fit one another as far as they speak of some loci, frequencies and mutation left out. */
final class Fits {

    private Fits() {}

    /**
     * Asks the engine for one genotype of the animal at each locus that leaves everything possible. Loci that records tie are followed
     * together, and the others have nothing to do with one another; so what fits at each fits at all.
     *
     * @param records the questions of the engine about the records, without a population
     */
    static Whether of(Model model, Inference records, String animal, Collection<String> loci) {
        Whether all = Whether.POSSIBLE;
        for (String id : loci) {
            Whether here = at(model.locus(id), records.possible(id), animal);
            if (here == Whether.EXCLUDED) {
                return here;
            }
            all = here == Whether.UNDECIDED ? here : all;
        }
        return all;
    }

    private static Whether at(Locus locus, Possibilities possible, String animal) {
        Whether most = Whether.EXCLUDED;
        for (AllelePair pair : locus.pairs()) {
            Possibility one = possible.of(animal, pair);
            if (one instanceof Possibility.Possible) {
                return Whether.POSSIBLE;
            }
            most = one instanceof Possibility.Undecided ? Whether.UNDECIDED : most;
        }
        return most;
    }
}
