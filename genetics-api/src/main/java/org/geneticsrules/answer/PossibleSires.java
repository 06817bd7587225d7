package org.geneticsrules.answer;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import org.geneticsrules.cross.Sires;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.probability.Probability;

/**
 * The male, or the males who had access to the dam. Whether several of them may share a litter is a question of fact that is modelled
 * either way.
 *
 * @param males what is known of each
 * @param access for each the chance that he is the sire: of the whole litter, or of each kit by itself; they sum to 1
 * @param perKit true if each kit of a litter has a sire of its own; false if the litter has one
 */
public record PossibleSires(List<Animal> males, List<Probability> access, boolean perKit) {

    /**
     * Copies the lists and checks the chances.
     *
     * @param males the males
     * @param access the chance of each
     * @param perKit whether each kit has a sire of its own
     * @throws IllegalArgumentException if there is no male, or not one chance for each, or their sum is not 1
     */
    public PossibleSires {
        males = ImmutableList.copyOf(males);
        access = ImmutableList.copyOf(access);
        new Sires(males.stream().map(Animal::parent).toList(), access, perKit);
    }

    /**
     * Returns the one sire.
     *
     * @param sire what is known of him
     * @return a sire beyond doubt
     */
    public static PossibleSires of(Animal sire) {
        return new PossibleSires(ImmutableList.of(sire), ImmutableList.of(Probability.ONE), false);
    }

    /**
     * Returns males of whom one is the sire of the whole litter, each as likely as any other.
     *
     * @param males what is known of each
     * @return the males
     * @throws IllegalArgumentException if there is none
     */
    public static PossibleSires oneOf(List<Animal> males) {
        return new PossibleSires(males, evenly(males.size()), false);
    }

    /**
     * Returns males each of whom may have sired each kit of a litter, each as likely as any other.
     *
     * @param males what is known of each
     * @return the males
     * @throws IllegalArgumentException if there is none
     */
    public static PossibleSires perKit(List<Animal> males) {
        return new PossibleSires(males, evenly(males.size()), true);
    }

    private static List<Probability> evenly(int males) {
        List<Probability> chances = new ArrayList<>();
        for (int i = 0; i < males; i++) {
            chances.add(Probability.of(1, males));
        }
        return chances;
    }

    /**
     * Returns the same males with other chances.
     *
     * @param chances for each the chance that he is the sire
     * @return a copy
     * @throws IllegalArgumentException if there is not one chance for each, or their sum is not 1
     */
    public PossibleSires withAccess(List<Probability> chances) {
        return new PossibleSires(males, chances, perKit);
    }

    /** The same males under another model. */
    PossibleSires under(CompiledModel other) {
        return new PossibleSires(males.stream().map(male -> male.under(other)).toList(), access, perKit);
    }
}
