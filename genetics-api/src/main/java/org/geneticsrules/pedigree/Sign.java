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
        return how.noticedBy().map(seen -> new Sign(key(how), seen, least(how)));
    }

    private static String key(Ascertainment how) {
        if (how instanceof Ascertainment.Probands) {
            return PROBANDS;
        }
        return how instanceof Ascertainment.ParentsChosen ? PARENTS_CHOSEN : AT_LEAST_ONE;
    }

    private static int least(Ascertainment how) {
        if (how instanceof Ascertainment.Probands some) {
            return some.count().orElse(1);
        }
        return how instanceof Ascertainment.ParentsChosen ? 0 : 1; // the kit that showed it is in no record
    }
}
