package org.geneticsrules.planning;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.LifeStage;

/**
 * Something that can be done to tell one model of inheritance from another.
 *
 * <p>Animals are named by the ids of the records. A mate that is not recorded yet is put into the records first, with a test that states its
 * genotype, or with what is seen of it.
 */
public sealed interface Step {

    /**
     * Returns what the step asks of animals.
     *
     * @return its place in the order of steps
     */
    Effort effort();

    /**
     * A look at an animal.
     *
     * @param animal id of the animal
     * @param traits ids of the traits looked at, at least one
     * @param stage how old it is then
     * @param light in which light; none where it does not matter
     */
    record Look(String animal, List<String> traits, LifeStage stage, Optional<String> light) implements Step {

        /**
         * Copies the traits.
         *
         * @param animal id of the animal
         * @param traits ids of the traits
         * @param stage how old it is
         * @param light in which light
         * @throws IllegalArgumentException if there is no trait
         */
        public Look {
            traits = Step.traits(traits);
        }

        @Override
        public Effort effort() {
            return Effort.RECORD;
        }

        /** Returns for example {@code look at Pip: hue}. */
        @Override
        public String toString() {
            return "look at " + animal + ": " + String.join(", ", traits);
        }
    }

    /**
     * A DNA test of an animal.
     *
     * @param animal id of the animal
     * @param locus id of a locus that all models have, with the same alleles
     * @param error how often it reports another genotype than it should
     */
    record Test(String animal, String locus, Probability error) implements Step {
        @Override
        public Effort effort() {
            return Effort.DNA_TEST;
        }

        /** Returns for example {@code DNA test of Pip at C}. */
        @Override
        public String toString() {
            return "DNA test of " + animal + " at " + locus;
        }
    }

    /**
     * Looks at kits of two recorded animals, at all of them in the same way.
     *
     * @param effort whether they are born already (a record), or would be of a planned or of a new mating
     * @param sire id of the sire
     * @param dam id of the dam
     * @param kits how many kits of each litter are looked at, 1 to {@value Step#MOST}; kits are such as live to be looked at
     * @param litters how many litters, 1 to {@value Step#MOST}
     * @param traits ids of the traits looked at, at least one
     * @param stage how old they are then
     * @param light in which light; none where it does not matter
     */
    record Kits(
            Effort effort,
            String sire,
            String dam,
            int kits,
            int litters,
            List<String> traits,
            LifeStage stage,
            Optional<String> light)
            implements Step {

        /**
         * Checks the numbers and copies the traits.
         *
         * @param effort what it asks of animals
         * @param sire id of the sire
         * @param dam id of the dam
         * @param kits how many kits of each litter
         * @param litters how many litters
         * @param traits ids of the traits
         * @param stage how old they are
         * @param light in which light
         * @throws IllegalArgumentException if kits are said to be tested, a number is out of its range, or there is no trait
         */
        public Kits {
            if (effort == Effort.DNA_TEST) {
                throw new IllegalArgumentException(
                        "kits are looked at, and not tested; ask for a DNA test of each animal");
            }
            if (kits < 1 || kits > MOST || litters < 1 || litters > MOST) {
                throw new IllegalArgumentException("1 to " + MOST + " kits of 1 to " + MOST
                        + " litters can be looked at, but not " + kits + " of " + litters);
            }
            traits = Step.traits(traits);
        }

        /** Returns for example {@code new mating of Bo and Ida: 6 kits, hue}. */
        @Override
        public String toString() {
            return (effort.breeds() ? effort.words() + " of " : "kits of ") + sire + " and " + dam + ": "
                    + (litters == 1 ? "" : litters + " litters of ") + kits + (kits == 1 ? " kit, " : " kits, ")
                    + String.join(", ", traits);
        }
    }

    /** More kits, or litters, than these are not asked for in one step. */
    int MOST = 1000;

    /**
     * Returns a look at an animal as it is now.
     *
     * @param animal id of the animal
     * @param traits ids of traits that depend on no age or season
     * @return the step
     */
    static Look look(String animal, String... traits) {
        return new Look(animal, List.of(traits), LifeStage.unstated(), Optional.empty());
    }

    /**
     * Returns a DNA test that is never wrong.
     *
     * @param animal id of the animal
     * @param locus id of the locus
     * @return the step
     */
    static Test test(String animal, String locus) {
        return new Test(animal, locus, Probability.ZERO);
    }

    /**
     * Returns looks at kits that are born already.
     *
     * @param sire id of the sire
     * @param dam id of the dam
     * @param kits how many are looked at
     * @param traits ids of traits that depend on no age or season
     * @return the step
     */
    static Kits born(String sire, String dam, int kits, String... traits) {
        return kits(Effort.RECORD, sire, dam, kits, traits);
    }

    /**
     * Returns looks at kits of one litter of a mating that is planned in any case.
     *
     * @param sire id of the sire
     * @param dam id of the dam
     * @param kits how many are looked at
     * @param traits ids of traits that depend on no age or season
     * @return the step
     */
    static Kits planned(String sire, String dam, int kits, String... traits) {
        return kits(Effort.PLANNED_MATING, sire, dam, kits, traits);
    }

    /**
     * Returns looks at kits of one litter that would not be born otherwise.
     *
     * @param sire id of the sire
     * @param dam id of the dam
     * @param kits how many are looked at
     * @param traits ids of traits that depend on no age or season
     * @return the step
     */
    static Kits mating(String sire, String dam, int kits, String... traits) {
        return kits(Effort.NEW_MATING, sire, dam, kits, traits);
    }

    private static Kits kits(Effort effort, String sire, String dam, int kits, String... traits) {
        return new Kits(effort, sire, dam, kits, 1, List.of(traits), LifeStage.unstated(), Optional.empty());
    }

    private static List<String> traits(List<String> traits) {
        if (traits.isEmpty()) {
            throw new IllegalArgumentException("a look is at one trait at least");
        }
        return ImmutableList.copyOf(traits);
    }
}
