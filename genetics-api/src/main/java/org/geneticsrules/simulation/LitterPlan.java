package org.geneticsrules.simulation;

import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.expression.Census;

/**
 * Litters of couples: so many couples of one description, each with so many litters.
 *
 * @param sire what is known of each sire
 * @param dam what is known of each dam
 * @param couples how many couples there are, at least 1; no two share an animal
 * @param littersOfEach how many litters each couple has, at least 1
 * @param size how many kits a litter holds
 * @param counted which kits that number counts: those conceived, born, or alive when the litter is scored
 */
public record LitterPlan(Founder sire, Founder dam, int couples, int littersOfEach, LitterSize size, Census counted) {

    /** More litters than these are not planned. */
    public static final int MOST = 10_000;

    /**
     * Checks the numbers.
     *
     * @param sire what is known of each sire
     * @param dam what is known of each dam
     * @param couples how many couples
     * @param littersOfEach how many litters each has
     * @param size how many kits a litter holds
     * @param counted which kits that number counts
     * @throws IllegalArgumentException if there are no litters or more than {@value #MOST}
     */
    public LitterPlan {
        if (couples < 1 || littersOfEach < 1 || (long) couples * littersOfEach > MOST) {
            throw new IllegalArgumentException("expected 1 to " + MOST + " litters, but found " + couples
                    + " couples with " + littersOfEach + " litters each");
        }
    }

    /**
     * Returns a plan in which each litter is of a couple of its own and counted when it is scored.
     *
     * @param sire what is known of each sire
     * @param dam what is known of each dam
     * @param litters how many couples with a litter
     * @param size how many kits a litter holds
     * @return the plan
     * @throws IllegalArgumentException if the number is out of range
     */
    public static LitterPlan of(Founder sire, Founder dam, int litters, LitterSize size) {
        return new LitterPlan(sire, dam, litters, 1, size, Census.SCORED);
    }

    /**
     * Returns how many litters there are in all.
     *
     * @return couples times litters of each
     */
    public int litters() {
        return couples * littersOfEach;
    }
}
