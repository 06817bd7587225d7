package org.geneticsrules.pedigree;

import java.util.Optional;
import org.geneticsrules.trait.Sighting;

/**
 * What brought a litter to notice, under the name that documents have for the way in which it did.
 *
 * @param key the name in documents
 * @param sighting what was seen, and when
 * @param least how many kits showed it, as far as stated
 */
record Sign(String key, Sighting sighting, int least) {

    static final String AT_LEAST_ONE = "atLeastOne";
    static final String PROBANDS = "probands";
    static final String PARENTS_CHOSEN = "parentsChosen";

    /** The sign of a litter; none if it would have been recorded anyway, or nobody wrote down why it was. */
    static Optional<Sign> of(Ascertainment how) {
        if (how instanceof Ascertainment.AtLeastOne one) {
            return Optional.of(new Sign(AT_LEAST_ONE, one.sign(), 1));
        }
        if (how instanceof Ascertainment.Probands some) {
            return Optional.of(new Sign(PROBANDS, some.sign(), some.count().orElse(1)));
        }
        return how instanceof Ascertainment.ParentsChosen chosen
                ? Optional.of(new Sign(PARENTS_CHOSEN, chosen.sign(), 0)) // the kit that showed it is in no record
                : Optional.empty();
    }
}
