package org.geneticsrules.comparison;

import java.util.List;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;

/**
 * How likely the records of one kindred are under one model, litter by litter. Litters are taken in one after the other and stay; of the
 * next one any kits may be supposed before it is taken in.
 */
interface Chances {

    /**
     * The chance of all that was recorded of the founders and of the litters taken in so far.
     *
     * @return its natural logarithm
     */
    double soFar();

    /**
     * The chance of all that, and of a further litter with some kits.
     *
     * @param litter whose kits they are
     * @param kits what is supposed to be recorded of each
     * @return its natural logarithm
     */
    double with(Litter litter, List<Individual> kits);

    /**
     * Takes a litter in.
     *
     * @param litter the litter
     * @param kits the records of its kits
     */
    void add(Litter litter, List<Individual> kits);
}
