package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableSet;
import java.util.Collection;
import java.util.Set;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;

/**
 * How sure may one be, by a planned mating, whether a recorded animal carries an allele?
 *
 * @param animal id of the animal
 * @param allele what it may carry
 * @param mate id of the recorded mate
 * @param signs the looks of a kit that show it, in the same traits; empty for those that prove it in the trait that tells most
 * @param stage when kits are looked at
 * @param kits how many kits to look ahead, 1 to {@value #MOST_KITS}
 */
public record HowSureQuestion(
        String animal, HiddenAllele allele, String mate, Set<Phenotype> signs, LifeStage stage, int kits) {

    /** The most kits that can be looked ahead. */
    public static final int MOST_KITS = 30;

    private static final int USUAL_KITS = 8;

    /**
     * Checks the number of kits and the signs.
     *
     * @param animal id of the animal
     * @param allele what it may carry
     * @param mate id of the mate
     * @param signs what shows it
     * @param stage when kits are looked at
     * @param kits how many kits
     * @throws IllegalArgumentException if there are too many kits or none, or signs are of different traits
     */
    public HowSureQuestion {
        signs = ImmutableSet.copyOf(signs);
        if (kits < 1 || kits > MOST_KITS) {
            throw new IllegalArgumentException("expected 1 to " + MOST_KITS + " kits, but found " + kits);
        }
        if (signs.stream()
                                .map(Phenotype::traits)
                                .map(ImmutableSet::copyOf)
                                .distinct()
                                .count()
                        > 1
                || signs.stream().anyMatch(sign -> sign.traits().isEmpty())) {
            throw new IllegalArgumentException("signs must be states of the same traits, but were " + signs);
        }
    }

    /**
     * Asks with the signs that prove it, for up to eight kits.
     *
     * @param animal id of the animal
     * @param allele what it may carry
     * @param mate id of the mate
     * @return the question
     */
    public static HowSureQuestion of(String animal, HiddenAllele allele, String mate) {
        return new HowSureQuestion(animal, allele, mate, ImmutableSet.of(), LifeStage.unstated(), USUAL_KITS);
    }

    /**
     * Says what shows the allele.
     *
     * @param looks looks of a kit
     * @return a copy
     * @throws IllegalArgumentException if they are of different traits
     */
    public HowSureQuestion shownBy(Collection<Phenotype> looks) {
        return new HowSureQuestion(animal, allele, mate, ImmutableSet.copyOf(looks), stage, kits);
    }

    /**
     * Says when kits are looked at.
     *
     * @param when the stage
     * @return a copy
     */
    public HowSureQuestion at(LifeStage when) {
        return new HowSureQuestion(animal, allele, mate, signs, when, kits);
    }

    /**
     * Says how far to look ahead.
     *
     * @param count how many kits
     * @return a copy
     * @throws IllegalArgumentException if there are too many or none
     */
    public HowSureQuestion forKits(int count) {
        return new HowSureQuestion(animal, allele, mate, signs, stage, count);
    }

    /** The same question under another model. */
    HowSureQuestion under(Model other) {
        return new HowSureQuestion(animal, allele.under(other), mate, signs, stage, kits);
    }
}
