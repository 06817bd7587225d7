package org.geneticsrules.planning;

import java.util.Locale;
import java.util.OptionalInt;

/**
 * How many kits of a mating it takes until they speak loudly enough for one model against another.
 *
 * <p>The ratio is that of all kits together, and of what was held before if the question says so; it is looked at when all of the stated number
 * are. Whoever looks earlier as well, litter by litter, may stop earlier and needs no more. With some more kits the chance may be a little
 * smaller again, since a number of kits is no fraction.
 *
 * @param truth number of the model that is supposed to be true
 * @param rival number of the other
 * @param design how the kits come about
 * @param sureness the chance that is asked for, if the first model is true
 * @param standing whether there is such a number
 * @param litters how many litters; empty unless there is such a number
 * @param kits how many kits in all; empty unless there is such a number
 * @param reached the chance with that number; else with the largest number tried
 * @param limit the chance in the long run: what the parents may be in which no number of kits tells the models apart is missing in it
 * @param tried the largest number of kits tried
 */
public record KitsNeeded(
        int truth,
        int rival,
        Design design,
        double sureness,
        Standing standing,
        OptionalInt litters,
        OptionalInt kits,
        double reached,
        double limit,
        int tried) {

    /**
     * Checks the chances.
     *
     * @param truth number of the model that is supposed to be true
     * @param rival number of the other
     * @param design how the kits come about
     * @param sureness the chance that is asked for
     * @param standing whether there is such a number
     * @param litters how many litters
     * @param kits how many kits in all
     * @param reached the chance with that number
     * @param limit the chance in the long run
     * @param tried the largest number of kits tried
     * @throws IllegalArgumentException if a chance is no number
     */
    public KitsNeeded {
        if (!Double.isFinite(reached) || !Double.isFinite(limit)) {
            throw new IllegalArgumentException("a chance is a number, but they were " + reached + " and " + limit);
        }
    }

    /** How kits come about. */
    public enum Design {
        /** Any number of kits of this couple, one by one, however many litters that makes. */
        COUPLE,
        /** Whole litters of this couple. */
        LITTERS,
        /** The same sire, and one litter of each of several jills that are known as well as this one and stand to him as she does. */
        JILLS;

        /**
         * Returns the design in words.
         *
         * @return for example {@code litters}
         */
        public String words() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** Whether there is a number. */
    public enum Standing {
        /** There is, and it is the smallest. */
        REACHED,
        /** It is proved that no number of such kits is enough. */
        NEVER,
        /** There may be one, but none up to the largest tried. */
        NOT_FOUND;

        /**
         * Returns the word.
         *
         * @return for example {@code not found}
         */
        public String words() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }
}
