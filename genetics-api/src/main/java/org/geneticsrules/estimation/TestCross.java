package org.geneticsrules.estimation;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.geneticsrules.statistics.BinomialInterval;
import org.geneticsrules.statistics.Interval;
import org.geneticsrules.statistics.ProfileLikelihood;

/**
 * How closely two loci are linked, by young each of which is known to be a recombinant or not: a test cross of a parent of known phase.
 *
 * @param recombinants how many young are recombinant
 * @param young how many young there are
 */
public record TestCross(long recombinants, long young) {

    /**
     * Checks the counts.
     *
     * @param recombinants how many young are recombinant
     * @param young how many young there are
     * @throws IllegalArgumentException if there are no young, or not 0 to as many recombinants
     */
    public TestCross {
        if (young < 1 || recombinants < 0 || recombinants > young) {
            throw new IllegalArgumentException(
                    "expected at least 1 young and from 0 to as many recombinants, but found " + recombinants + " of "
                            + young);
        }
    }

    /**
     * Returns the log-likelihood of a recombination fraction.
     *
     * @param r the fraction, from 0 to 1/2
     * @return the natural logarithm of the likelihood, without the binomial coefficient
     * @throws IllegalArgumentException if the fraction is outside its range
     */
    public double logLikelihood(double r) {
        Terms.requireFraction(r);
        return Terms.log(recombinants, r) + Terms.log(young - recombinants, 1 - r);
    }

    /**
     * Estimates the recombination fraction with an exact interval.
     *
     * @param level confidence level, above 0 and below 1
     * @return the share of recombinants, at most 1/2, with the interval of Clopper and Pearson cut off at 1/2
     * @throws IllegalArgumentException if the level is outside its range
     */
    public Estimate exact(double level) {
        Estimate profile = profile(level);
        Interval whole = BinomialInterval.clopperPearson(recombinants, young, level);
        List<String> notes = new ArrayList<>(profile.notes());
        if (whole.low() > 0.5) {
            notes.add(
                    "there are more recombinants than even loosely linked loci have, as if the classes of recombinants had been taken for the others");
        }
        return new Estimate(
                profile.value(),
                profile.standardError(),
                new Interval(
                        Math.min(0.5, whole.low()),
                        Math.min(0.5, whole.high()),
                        level,
                        whole.method(),
                        whole.lowIsBoundary(),
                        whole.high() >= 0.5),
                profile.logLikelihood(),
                profile.atBoundary(),
                profile.flat(),
                notes);
    }

    /**
     * Estimates the recombination fraction with a profile interval, which is shorter and approximate.
     *
     * @param level confidence level, above 0 and below 1
     * @return the share of recombinants, at most 1/2
     * @throws IllegalArgumentException if the level is outside its range
     */
    public Estimate profile(double level) {
        double n = (double) young;
        double r = Math.min(0.5, recombinants / n);
        return Estimate.of(
                ProfileLikelihood.of(this::logLikelihood, 0, 0.5),
                r,
                OptionalDouble.of(Math.sqrt(r * (1 - r) / n)),
                level,
                List.of());
    }
}
