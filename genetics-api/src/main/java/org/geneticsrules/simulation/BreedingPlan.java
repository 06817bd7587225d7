package org.geneticsrules.simulation;

import com.google.common.collect.ImmutableList;
import java.util.Collections;
import java.util.List;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.expression.Census;

/**
 * A breeding structure that is left to chance: founders, then generation after generation of litters, whose parents are drawn from the
 * generation before, each equally often. Where that has no animal of one sex, the last generation that has one is taken. Relatives are mated
 * as they happen to meet, so later generations are inbred; it is a plan for lessons and for studies of power, not for animals.
 *
 * @param males the founders that are male
 * @param females the founders that are female
 * @param generations how many generations follow the founders, at least 1
 * @param litters how many litters there are in each of them, at least 1
 * @param size how many kits a litter holds
 * @param counted which kits that number counts: those conceived, born, or alive when the litter is scored
 */
public record BreedingPlan(
        List<Founder> males, List<Founder> females, int generations, int litters, LitterSize size, Census counted) {

    private static final long MOST_LITTERS = 1_000_000;

    /**
     * Checks the numbers.
     *
     * @param males the male founders
     * @param females the female founders
     * @param generations how many generations follow
     * @param litters how many litters each has
     * @param size how many kits a litter holds
     * @param counted which kits that number counts
     * @throws IllegalArgumentException if there is no founder of a sex, or there are no litters or more than a million
     */
    public BreedingPlan {
        males = ImmutableList.copyOf(males);
        females = ImmutableList.copyOf(females);
        if (males.isEmpty() || females.isEmpty()) {
            throw new IllegalArgumentException("founders of both sexes are needed, but there are " + males.size()
                    + " males and " + females.size() + " females");
        }
        if (generations < 1 || litters < 1 || (long) generations * litters > MOST_LITTERS) {
            throw new IllegalArgumentException("expected 1 to " + MOST_LITTERS + " litters, but found " + generations
                    + " generations of " + litters);
        }
    }

    /**
     * Returns a plan whose founders are all of one description and whose litters are counted when they are scored.
     *
     * @param each what is known of each founder
     * @param males how many of them are male
     * @param females how many are female
     * @param generations how many generations follow
     * @param litters how many litters each has
     * @param size how many kits a litter holds
     * @return the plan
     * @throws IllegalArgumentException if a number is out of range
     */
    public static BreedingPlan of(Founder each, int males, int females, int generations, int litters, LitterSize size) {
        if (males < 1 || females < 1) {
            throw new IllegalArgumentException(
                    "founders of both sexes are needed, but there are " + males + " males and " + females + " females");
        }
        return new BreedingPlan(
                Collections.nCopies(males, each),
                Collections.nCopies(females, each),
                generations,
                litters,
                size,
                Census.SCORED);
    }
}
