package org.geneticsrules.cross;

import com.google.common.collect.ImmutableList;
import java.util.List;
import org.geneticsrules.probability.Probability;

/**
 * The male, or the males of whom each may be the sire.
 *
 * <p>Whether two males with access share one litter is a question of fact that is modelled either way.
 *
 * @param males what is known of each male
 * @param access for each male the chance that he is the sire: of the litter, or of each kit that is counted by itself; they sum to 1
 * @param perKit true if each kit of a litter has a sire of its own; false if the litter has one
 */
public record Sires(List<Parent> males, List<Probability> access, boolean perKit) {

    /**
     * Checks the chances.
     *
     * @param males the males
     * @param access the chance of each
     * @param perKit whether each kit has a sire of its own
     * @throws IllegalArgumentException if there is no male, or not one chance for each, or their sum is not 1
     */
    public Sires {
        males = ImmutableList.copyOf(males);
        access = ImmutableList.copyOf(access);
        if (males.isEmpty() || males.size() != access.size() || !sum(access).isOne()) {
            throw new IllegalArgumentException("expected one chance for each of " + males.size()
                    + " males, and a sum of 1, but the chances were " + access);
        }
    }

    private static Probability sum(List<Probability> chances) {
        Probability sum = Probability.ZERO;
        for (Probability chance : chances) {
            if (sum.complement().compareTo(chance) < 0) {
                throw new IllegalArgumentException("the chances " + chances + " sum to more than 1");
            }
            sum = sum.plus(chance);
        }
        return sum;
    }

    /**
     * Returns the one sire.
     *
     * @param sire what is known of him
     * @return a sire beyond doubt
     */
    public static Sires of(Parent sire) {
        return new Sires(ImmutableList.of(sire), ImmutableList.of(Probability.ONE), false);
    }

    /**
     * Returns males of whom one is the sire of the whole litter.
     *
     * @param males what is known of each
     * @param access the chance of each to be the sire
     * @return the males
     */
    public static Sires oneOf(List<Parent> males, List<Probability> access) {
        return new Sires(males, access, false);
    }

    /**
     * Returns males each of whom may have sired each kit of a litter.
     *
     * @param males what is known of each
     * @param access the share of each in the kits that are counted; that of a male who may turn out to have no kits with the dam goes to
     *     the others in proportion
     * @return the males
     */
    public static Sires perKit(List<Parent> males, List<Probability> access) {
        return new Sires(males, access, true);
    }
}
