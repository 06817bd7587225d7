package org.geneticsrules.pedigree;

import java.util.Optional;
import java.util.OptionalInt;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sighting;

/**
 * How a litter came to be among the records (its <i>ascertainment</i>).
 *
 * <p>Shares of kits mean what they seem to mean only if a litter would have been recorded whatever it showed. Of parents who both carry a
 * recessive allele, litters without a kit that shows it are easily never noticed; among those that are, more than a quarter show it
 * (Weinberg 1912; Fisher 1934, <i>The effect of methods of ascertainment upon the estimation of frequencies</i>, Annals of Eugenics 6:13,
 * both from memory). What is stated here is what a likelihood is conditioned on.
 *
 * <p>Immutable and thread-safe.
 */
public sealed interface Ascertainment {

    /**
     * Returns what brought the litter to notice.
     *
     * @return what one of its kits showed, or of {@linkplain ParentsChosen parents chosen} an earlier kit, and when; none if the litter would
     *     have been recorded anyway, or nobody wrote down why it was
     */
    default Optional<Sighting> noticedBy() {
        return Optional.empty();
    }

    /** Nobody wrote it down. It is no promise that the litter is complete; who judges by it says so. */
    record Unknown() implements Ascertainment {

        @Override
        public String toString() {
            return "not stated";
        }
    }

    /** The litter would have been recorded whatever its kits showed. */
    record Complete() implements Ascertainment {

        @Override
        public String toString() {
            return "complete";
        }
    }

    /**
     * The litter is recorded because at least one of its scored kits showed something.
     *
     * @param sign what it showed, and when
     */
    record AtLeastOne(Sighting sign) implements Ascertainment {

        /**
         * Checks the sign.
         *
         * @param sign what it showed
         * @throws IllegalArgumentException if the sign names no trait, or a name or the light is not made of plain words
         */
        public AtLeastOne {
            check(sign);
        }

        @Override
        public Optional<Sighting> noticedBy() {
            return Optional.of(sign);
        }

        @Override
        public String toString() {
            return "at least one: " + sign;
        }
    }

    /**
     * The litter is recorded because of kits that showed something and were brought to notice, each by itself and with the same chance: the
     * <i>probands</i>.
     *
     * @param sign what they showed, and when
     * @param chance the chance that a kit which shows it is brought to notice; above 0
     * @param count how many were, if recorded
     */
    record Probands(Sighting sign, Probability chance, OptionalInt count) implements Ascertainment {

        /**
         * Checks the sign, the chance and the count.
         *
         * @param sign what they showed
         * @param chance the chance of each to be brought to notice
         * @param count how many were
         * @throws IllegalArgumentException if the sign names no trait, a name or the light is not made of plain words, the chance is 0, or the count is less than 1
         */
        public Probands {
            check(sign);
            if (chance.isZero()) {
                throw new IllegalArgumentException("a litter with probands has a chance above 0 of being noticed");
            }
            if (count.isPresent() && (count.getAsInt() < 1)) {
                throw new IllegalArgumentException(
                        "a litter noticed by its probands has at least one, but " + count.getAsInt() + " are stated");
            }
        }

        @Override
        public Optional<Sighting> noticedBy() {
            return Optional.of(sign);
        }

        @Override
        public String toString() {
            return "probands " + chance + (count.isPresent() ? ", " + count.getAsInt() + " of them" : "") + ": " + sign;
        }
    }

    /**
     * The parents were put together, or looked at, because an earlier kit of theirs, which is not among these records, showed something.
     *
     * @param sign what it showed, and when
     */
    record ParentsChosen(Sighting sign) implements Ascertainment {

        /**
         * Checks the sign.
         *
         * @param sign what the earlier kit showed
         * @throws IllegalArgumentException if the sign names no trait, or a name or the light is not made of plain words
         */
        public ParentsChosen {
            check(sign);
        }

        @Override
        public Optional<Sighting> noticedBy() {
            return Optional.of(sign);
        }

        @Override
        public String toString() {
            return "parents chosen: " + sign;
        }
    }

    /**
     * Returns the ascertainment of which nothing is recorded.
     *
     * @return not stated
     */
    static Ascertainment unknown() {
        return new Unknown();
    }

    /**
     * Returns the ascertainment of a litter that would have been recorded whatever it showed.
     *
     * @return complete
     */
    static Ascertainment complete() {
        return new Complete();
    }

    /**
     * Returns the ascertainment of a litter recorded because at least one kit showed something.
     *
     * @param look what it showed
     * @return at least one
     * @throws IllegalArgumentException if the look names no trait, or a name is not made of plain words
     */
    static Ascertainment atLeastOne(Phenotype look) {
        return new AtLeastOne(Sighting.of(look));
    }

    private static void check(Sighting sign) {
        if (sign.look().traits().isEmpty()) {
            throw new IllegalArgumentException("what brought a litter to notice names a state of at least one trait");
        }
        Observation seen = Observation.of(sign.stage(), sign.look()); // a sign is spelt as an observation is
        sign.light().ifPresent(seen::in);
    }
}
