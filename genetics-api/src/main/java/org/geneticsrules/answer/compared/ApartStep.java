package org.geneticsrules.answer.compared;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.answer.MatingConcerns;
import org.geneticsrules.planning.Worth;

/**
 * Something that can be done to tell models apart, with what it is worth. It is no advice.
 *
 * <p>Immutable and thread-safe.
 *
 * @param words what it is, such as {@code look at hue in "Pip"}
 * @param worth what it may find, and what that would say
 * @param alike ids of other animals of whom the same look or test is worth the same, since they are recorded alike
 * @param looks for kits, the looks that one of them may have and that differ in how likely they are, the most different first
 * @param says what it is expected to say, in sentences about the models by number, from 1
 * @param concerns for a mating, what speaks against it
 */
public record ApartStep(
        String words,
        Worth worth,
        List<String> alike,
        List<KitLook> looks,
        List<String> says,
        Optional<MatingConcerns> concerns) {

    /**
     * Copies the lists.
     *
     * @param words what it is
     * @param worth what it is worth
     * @param alike other animals
     * @param looks what a kit may show
     * @param says what it is expected to say
     * @param concerns what speaks against it
     */
    public ApartStep {
        alike = ImmutableList.copyOf(alike);
        looks = ImmutableList.copyOf(looks);
        says = ImmutableList.copyOf(says);
    }

    /**
     * How likely one kit is to have a look.
     *
     * @param look the look, with the sex in front of it where that matters
     * @param chances for each model, the chance, by all records
     */
    public record KitLook(String look, List<Double> chances) {

        /**
         * Copies the chances.
         *
         * @param look the look
         * @param chances how likely it is
         */
        public KitLook {
            chances = ImmutableList.copyOf(chances);
        }
    }
}
