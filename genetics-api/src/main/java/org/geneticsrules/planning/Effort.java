package org.geneticsrules.planning;

import java.util.Locale;

/**
 * What a step asks of animals, in the order in which steps are told: what breeds nobody comes before what does, whatever it may tell.
 */
public enum Effort {
    /** A look at an animal that is there, or at kits that are born already. */
    RECORD,
    /** A sample of an animal that is there. */
    DNA_TEST,
    /** Kits of a mating that is planned in any case. */
    PLANNED_MATING,
    /** Kits that would not be born otherwise. */
    NEW_MATING;

    /**
     * Returns the effort in words.
     *
     * @return for example {@code planned mating}
     */
    public String words() {
        return this == DNA_TEST ? "DNA test" : name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /**
     * Tells whether kits would be born that are not there yet.
     *
     * @return true for matings
     */
    public boolean breeds() {
        return this == PLANNED_MATING || this == NEW_MATING;
    }
}
