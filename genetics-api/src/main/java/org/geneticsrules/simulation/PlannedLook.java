package org.geneticsrules.simulation;

import com.google.common.collect.ImmutableList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sighting;

/**
 * A look at animals that is planned: when, in what light, at what, and how many of them are looked at.
 *
 * @param stage the age or moult and the season at which each animal is looked at
 * @param traits the traits that are written down, in order; {@code sex} may be among them, which is then
 *     written down as the sex of the animal
 * @param light the light, if it is stated
 * @param share the chance that an animal is looked at, each by itself
 * @param whom which animals are looked at
 */
public record PlannedLook(LifeStage stage, List<String> traits, Optional<String> light, Probability share, Whom whom) {

    /**
     * Copies the traits.
     *
     * @param stage when
     * @param traits the traits
     * @param light the light
     * @param share the chance of each animal to be looked at
     * @param whom which animals
     * @throws IllegalArgumentException if no trait is named, or nobody is looked at
     */
    public PlannedLook {
        traits = traits.stream().distinct().collect(ImmutableList.toImmutableList());
        if (traits.isEmpty() || share.isZero()) {
            throw new IllegalArgumentException(
                    "a look is planned at one trait or more and with a positive share of the animals, but was at "
                            + traits + " with " + share);
        }
    }

    /**
     * Makes a look at animals of all kinds.
     *
     * @param stage when
     * @param traits the traits
     * @param light the light
     * @param share the chance of each animal to be looked at
     * @throws IllegalArgumentException if no trait is named, or nobody is looked at
     */
    public PlannedLook(LifeStage stage, List<String> traits, Optional<String> light, Probability share) {
        this(stage, traits, light, share, Whom.ALL);
    }

    /**
     * Returns a look at every animal at a stage of which nothing is said.
     *
     * @param traits the traits that are written down
     * @return the look
     */
    public static PlannedLook at(String... traits) {
        return new PlannedLook(LifeStage.unstated(), Arrays.asList(traits), Optional.empty(), Probability.ONE);
    }

    /**
     * Returns this look at another stage of life.
     *
     * @param when the stage
     * @return a copy
     */
    public PlannedLook when(LifeStage when) {
        return new PlannedLook(when, traits, light, share, whom);
    }

    /**
     * Returns this look in a light.
     *
     * @param stated the catalogue's word for it
     * @return a copy
     */
    public PlannedLook in(String stated) {
        return new PlannedLook(stage, traits, Optional.of(stated), share, whom);
    }

    /**
     * Returns this look at only a part of the animals.
     *
     * @param part the chance of each animal to be looked at, above 0
     * @return a copy
     * @throws IllegalArgumentException if it is 0
     */
    public PlannedLook ofShare(Probability part) {
        return new PlannedLook(stage, traits, light, part, whom);
    }

    /**
     * Returns this look at some kind of animals only.
     *
     * @param animals which
     * @return a copy
     */
    public PlannedLook of(Whom animals) {
        return new PlannedLook(stage, traits, light, share, animals);
    }

    /** Whether what is seen at this look is seen when, and in the light in which, something was seen, as far as that is stated. */
    boolean isOf(Sighting seen) {
        return (seen.stage().equals(LifeStage.unstated()) || seen.stage().equals(stage))
                && (seen.light().isEmpty() || seen.light().equals(light));
    }

    /** Something that is seen at this look. */
    Sighting seeing(Phenotype look) {
        return new Sighting(stage, look, light);
    }
}
