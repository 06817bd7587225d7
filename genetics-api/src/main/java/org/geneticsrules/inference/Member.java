package org.geneticsrules.inference;

import java.util.List;
import java.util.Optional;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.trait.Sex;

/**
 * An animal of a pedigree, or one that is not recorded but must have been: a parent of whom nothing is known.
 *
 * @param recorded the individual, if it is recorded
 * @param sex its sex as recorded, or as follows from being a dam or a sire
 * @param population id of the population it is from, if both of its parents are unknown
 * @param parents its parents; empty for a founder
 */
record Member(
        Optional<Individual> recorded, Optional<Sex> sex, Optional<String> population, Optional<Parents> parents) {

    /**
     * The parents of a kit.
     *
     * @param dam number of the dam
     * @param sires the males of whom one is the sire
     * @param brood number of the choice among them, shared by all kits that have the same sire for certain
     * @param perKit whether each kit of the litter may have a sire of its own
     */
    record Parents(int dam, List<Candidate> sires, int brood, boolean perKit) {
        boolean isCertain() {
            return sires.size() == 1;
        }
    }

    /**
     * A male who may be the sire.
     *
     * @param male his number
     * @param share how likely he is, before anything is known of the kits
     */
    record Candidate(int male, double share) {}

    boolean isFounder() {
        return parents.isEmpty();
    }
}
