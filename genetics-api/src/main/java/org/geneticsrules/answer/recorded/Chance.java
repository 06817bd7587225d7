package org.geneticsrules.answer.recorded;

import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.geneticsrules.answer.Probabilities;
import org.geneticsrules.inference.Conclusions;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.inference.Posterior;

/**
 * A chance by the records of a pedigree, and how far it is settled.
 *
 * @param standing how far it is settled
 * @param value the chance, from 0 to 1; empty if it is not settled
 */
public record Chance(Standing standing, OptionalDouble value) {

    /** A chance that floating point puts a little above 1 is 1. */
    static Chance exact(double value) {
        return new Chance(Standing.EXACT, OptionalDouble.of(Math.max(0, Math.min(1, value))));
    }

    static Chance unsettled(Standing standing) {
        return new Chance(standing, OptionalDouble.empty());
    }

    /** The chance of something that an animal carries at a locus. */
    static Chance of(Conclusions found, String animal, String locus, ToDoubleFunction<Posterior> what) {
        Standing standing = found.standing(animal, locus);
        return found.at(animal, locus)
                .map(posterior -> new Chance(
                        standing, OptionalDouble.of(Math.max(0, Math.min(1, what.applyAsDouble(posterior))))))
                .orElseGet(() -> unsettled(standing));
    }

    /**
     * Tells whether there is a number.
     *
     * @return true if it is settled
     */
    public boolean isSettled() {
        return value.isPresent();
    }

    /** Returns the chance as people read it, or why there is none. */
    @Override
    public String toString() {
        return value.isPresent()
                ? Probabilities.words(value.getAsDouble())
                : switch (standing) {
                    case EXACT -> "not known";
                    case TOO_LARGE -> "not calculated: too large";
                    case CONTRADICTED -> "the records contradict one another";
                };
    }
}
