package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableSet;
import java.util.Collection;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;

/**
 * What may the next litter of two recorded animals show?
 *
 * @param one id of one of them
 * @param other id of the other
 * @param traits the traits asked for, at least one
 * @param stage when kits are looked at
 * @param look the look that is counted in a litter, if one is; in any traits
 * @param kits in a litter of how many kits it is counted, 1 to {@value #MOST_KITS}
 */
public record NextLitterQuestion(
        String one, String other, Set<String> traits, LifeStage stage, Optional<Phenotype> look, int kits) {

    /** The largest litter. */
    public static final int MOST_KITS = 30;

    private static final int USUAL_KITS = 8;

    /**
     * Checks the question.
     *
     * @param one id of one of them
     * @param other id of the other
     * @param traits the traits asked for
     * @param stage when kits are looked at
     * @param look the look that is counted
     * @param kits in a litter of how many
     * @throws IllegalArgumentException if no trait is asked for, the look names none, or the litter is too large or empty
     */
    public NextLitterQuestion {
        traits = ImmutableSet.copyOf(traits);
        if (traits.isEmpty()) {
            throw new IllegalArgumentException("expected at least one trait, but none was asked for");
        }
        if (look.filter(counted -> counted.traits().isEmpty()).isPresent()) {
            throw new IllegalArgumentException("expected a look that names a trait, but it names none");
        }
        if (kits < 1 || kits > MOST_KITS) {
            throw new IllegalArgumentException("expected 1 to " + MOST_KITS + " kits, but found " + kits);
        }
    }

    /**
     * Asks for the looks of the next kit.
     *
     * @param one id of one of the parents
     * @param other id of the other
     * @param traits the traits asked for
     * @return the question
     * @throws IllegalArgumentException if no trait is asked for
     */
    public static NextLitterQuestion of(String one, String other, Collection<String> traits) {
        return new NextLitterQuestion(
                one, other, ImmutableSet.copyOf(traits), LifeStage.unstated(), Optional.empty(), USUAL_KITS);
    }

    /**
     * Says when kits are looked at.
     *
     * @param when the stage
     * @return a copy
     */
    public NextLitterQuestion at(LifeStage when) {
        return new NextLitterQuestion(one, other, traits, when, look, kits);
    }

    /**
     * Counts a look in a litter.
     *
     * @param counted the look
     * @param size how many kits the litter has
     * @return a copy
     * @throws IllegalArgumentException if the look names no trait, or the litter is too large or empty
     */
    public NextLitterQuestion counting(Phenotype counted, int size) {
        return new NextLitterQuestion(one, other, traits, stage, Optional.of(counted), size);
    }
}
