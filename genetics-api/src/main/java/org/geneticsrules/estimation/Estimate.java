package org.geneticsrules.estimation;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.OptionalDouble;
import org.geneticsrules.statistics.Interval;
import org.geneticsrules.statistics.ProfileLikelihood;

/**
 * A number that was estimated by maximum likelihood, and how far it may be off.
 *
 * @param value the number that makes the data likeliest; of no meaning if all do alike
 * @param standardError from the information of the data; empty where it is not defined, at the ends of what the number can be
 * @param interval the values that the data do not speak against
 * @param logLikelihood natural logarithm of the likelihood at the estimate; constants that do not depend on the number may be left out
 * @param atBoundary whether the estimate is an end of what the number can be
 * @param flat whether the data say nothing of the number, being as likely at every value: then the value is no estimate, and the interval
 *     holds all that the number can be
 * @param notes what should be known of it, one sentence each
 */
public record Estimate(
        double value,
        OptionalDouble standardError,
        Interval interval,
        double logLikelihood,
        boolean atBoundary,
        boolean flat,
        List<String> notes) {

    /**
     * Copies the notes.
     *
     * @param value the number
     * @param standardError from the information
     * @param interval the values that the data do not speak against
     * @param logLikelihood natural logarithm of the likelihood
     * @param atBoundary whether the estimate is an end
     * @param flat whether the data say nothing of the number
     * @param notes what should be known of it
     */
    public Estimate {
        notes = ImmutableList.copyOf(notes);
    }

    /** The estimate, error and interval of a log-likelihood. */
    static Estimate of(ProfileLikelihood likelihood, double level, String... notes) {
        ProfileLikelihood.Maximum top = likelihood.maximum();
        return of(likelihood, top.at(), top.standardError(), level, List.of(notes));
    }

    /** The same where the estimate, or its error, is known by a formula. */
    static Estimate of(
            ProfileLikelihood likelihood, double value, OptionalDouble error, double level, List<String> more) {
        ProfileLikelihood.Maximum top = likelihood.maximum();
        ImmutableList.Builder<String> notes = ImmutableList.builder();
        boolean flat = likelihood.isFlat();
        boolean boundary = top.isAtBoundary() && !flat;
        if (flat) {
            notes.add(
                    "these records say nothing about the number: they are as likely at every value that it can have.");
        }
        if (boundary) {
            notes.add("the estimate is the " + (top.atLow() ? "least" : "greatest")
                    + " value that the number can have, where there is no standard error.");
        }
        List<Double> plateau = likelihood.plateau();
        if (plateau.size() > 1 && !flat) {
            notes.add("values from about " + plateau.get(0) + " to " + plateau.get(1)
                    + " make these records as likely; the one that is given is no better than the others.");
        } else if (top.peaks().size() > 1 && !flat) {
            notes.add("the likelihood has several peaks, at " + top.peaks() + "; the highest is given.");
        }
        if (likelihood.pieces(level).size() > 1) {
            notes.add("the interval has gaps: some values between its ends fit worse.");
        }
        notes.addAll(more);
        return new Estimate(
                boundary ? top.at() : value, // what comes near an end step by step does not get there
                boundary || plateau.size() > 1 ? OptionalDouble.empty() : error,
                likelihood.interval(level),
                top.logLikelihood(),
                boundary,
                flat,
                notes.build());
    }
}
