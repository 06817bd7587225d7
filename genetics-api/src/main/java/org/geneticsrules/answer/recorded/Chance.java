package org.geneticsrules.answer.recorded;

import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.Probabilities;
import org.geneticsrules.inference.Conclusions;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.model.AllelePair;

/**
 * A chance by the records of a pedigree, and how far it is settled.
 *
 * @param standing how far it is settled
 * @param value the chance, from 0 to 1; empty if it is not settled
 * @param standardError how far an estimate may be off: about 19 of 20 are within twice that; empty if it is not estimated
 */
public record Chance(Standing standing, OptionalDouble value, OptionalDouble standardError) {

    /** A chance that floating point puts a little above 1 is 1. */
    static Chance exact(double value) {
        return new Chance(Standing.EXACT, OptionalDouble.of(Math.max(0, Math.min(1, value))), OptionalDouble.empty());
    }

    static Chance unsettled(Standing standing) {
        return new Chance(standing, OptionalDouble.empty(), OptionalDouble.empty());
    }

    /** The chance that an animal has one of some genotypes at a locus; certain if no other has a chance. */
    static Chance of(Conclusions found, String animal, String locus, Predicate<AllelePair> which) {
        Standing standing = found.standing(animal, locus);
        return found.at(animal, locus)
                .map(posterior -> {
                    boolean certain = standing == Standing.EXACT && posterior.chance(which.negate()) == 0;
                    double value = certain ? 1 : Math.max(0, Math.min(1, posterior.chance(which)));
                    OptionalDouble error = standing == Standing.SAMPLED
                            ? OptionalDouble.of(posterior.standardError(which))
                            : OptionalDouble.empty();
                    return new Chance(standing, OptionalDouble.of(value), error);
                })
                .orElseGet(() -> unsettled(standing));
    }

    /** The chance that an animal has at least one dose of an allele. */
    static Chance carries(Conclusions found, String animal, HiddenAllele allele) {
        return of(
                found, animal, allele.locus(), pair -> pair.has(allele.allele().id()));
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
        if (value.isPresent()) {
            return standardError.isPresent()
                    ? String.format(
                            Locale.ROOT,
                            "about %.3f (estimated, standard error %.3f)",
                            value.getAsDouble(),
                            standardError.getAsDouble())
                    : Probabilities.words(value.getAsDouble());
        }
        return switch (standing) {
            case EXACT, SAMPLED -> "not known";
            case NOT_CONVERGED -> "not told: the estimate did not become sure enough";
            case TOO_LARGE -> "not calculated: too large";
            case NOT_IN_TIME -> "not worked out within the time";
            case CONTRADICTED -> "the records contradict one another";
        };
    }
}
