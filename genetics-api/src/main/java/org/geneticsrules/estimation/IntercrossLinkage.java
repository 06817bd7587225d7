package org.geneticsrules.estimation;

import java.util.List;
import java.util.OptionalDouble;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.statistics.Counts;
import org.geneticsrules.statistics.GoodnessOfFit;
import org.geneticsrules.statistics.LikelihoodRatio;
import org.geneticsrules.statistics.ProfileLikelihood;
import org.geneticsrules.statistics.Ratio;
import org.geneticsrules.statistics.TestInversion;

/**
 * How closely two loci are linked, by the young of two double heterozygotes (an F2): four classes where both loci are completely dominant.
 *
 * <p>The classes have the chances (2 + t)/4, (1 - t)/4, (1 - t)/4, t/4, where t is (1 - r)^2 in coupling and r^2 in repulsion (Fisher and
 * Balmukand 1928, J. Genet. 20:79). The likelihood is highest where n t^2 - (a - 2b - 2c - d) t - 2d = 0; the standard error comes from the
 * expected information per animal, (1 + 2t) / (2t (1 - t) (2 + t)). The recombination fraction is taken to be that of both sexes; where they
 * differ, t is the product of two, and r stands for their (geometric) mean.
 *
 * <pre>{@code
 * new IntercrossLinkage(Counts.of(1997, 906, 904, 32), IntercrossLinkage.Phase.REPULSION).estimate(0.95).value();   // 0.188977
 * }</pre>
 *
 * <p>Whoever breeds by a linked marker should know how wide the interval is. The classes are taken to be equally viable and told apart without error.
 *
 * @param counts the four classes in the order A-B-, A-bb, aaB-, aabb
 * @param phase on which chromosomes the recessives lie
 */
public record IntercrossLinkage(Counts counts, Phase phase) {

    /** How the alleles of two loci lie in double heterozygotes. */
    public enum Phase {
        /** Both recessives on one chromosome: AB/ab. */
        COUPLING,
        /** One recessive on each: Ab/aB. */
        REPULSION;

        /** What r makes of t. */
        double t(double r) {
            return this == COUPLING ? (1 - r) * (1 - r) : r * r;
        }

        /** What r makes of 1 - t, without losing digits. */
        double rest(double r) {
            return this == COUPLING ? r * (2 - r) : (1 - r) * (1 + r);
        }

        /** The r of a t, at most 1/2. */
        double r(double t) {
            return Math.min(0.5, this == COUPLING ? 1 - Math.sqrt(t) : Math.sqrt(t));
        }

        /** The likeliest r of so many young with both, one and none of the dominant characters. */
        double estimate(double both, double one, double none) {
            double n = both + one + none;
            double b = both - 2 * one - none;
            double root = Math.sqrt(b * b + 8 * n * none);
            double t =
                    b >= 0 ? (b + root) / (2 * n) : 4 * none / (root - b); // two forms of one root, without cancelling
            return r(Math.min(1, Math.max(t, t(this == COUPLING ? 0.5 : 0))));
        }
    }

    /** The most young of which all outcomes are gone through: two million. */
    public static final int MOST_EXACT = 2000;

    /**
     * Checks the classes.
     *
     * @param counts the four classes
     * @param phase on which chromosomes the recessives lie
     * @throws IllegalArgumentException if there are not four classes
     */
    public IntercrossLinkage {
        if (counts.values().size() != 4) {
            throw new IllegalArgumentException(
                    "expected the four classes A-B-, A-bb, aaB- and aabb, but found " + counts.byClass());
        }
    }

    private double count(int position) {
        return counts.values().get(position);
    }

    /**
     * Returns the log-likelihood of a recombination fraction.
     *
     * @param r the fraction, from 0 to 1/2
     * @return the natural logarithm of the likelihood, without the multinomial coefficient
     * @throws IllegalArgumentException if the fraction is outside its range
     */
    public double logLikelihood(double r) {
        double t = phase.t(Terms.requireFraction(r));
        return Terms.log(counts.values().get(0), (2 + t) / 4)
                + Terms.log(counts.values().get(1) + counts.values().get(2), phase.rest(r) / 4)
                + Terms.log(counts.values().get(3), t / 4);
    }

    /**
     * Estimates the recombination fraction, with a profile interval.
     *
     * <p>That interval is approximate. Where few recombinants are expected it is too short: in coupling with r = 1/20 and 40 young it holds the true value in 89 of
     * 100 samples, not in 95. {@link #exact} holds it at least as often as it says.
     *
     * @param level confidence level of the interval, above 0 and below 1
     * @return the fraction from 0 to 1/2, with the standard error by the expected information and the profile interval
     * @throws IllegalArgumentException if the level is outside its range
     */
    public Estimate estimate(double level) {
        double n = (double) counts.total();
        double r = phase.estimate(count(0), count(1) + count(2), count(3));
        double t = phase.t(r);
        double errorOfT = Math.sqrt(2 * t * (1 - t) * (2 + t) / (n * (1 + 2 * t)));
        double slope = 2 * (phase == Phase.COUPLING ? 1 - r : r);
        ProfileLikelihood likelihood = ProfileLikelihood.of(this::logLikelihood, 0, 0.5);
        return Estimate.of(
                likelihood,
                r,
                slope > 0 ? OptionalDouble.of(errorOfT / slope) : OptionalDouble.empty(),
                level,
                List.of(
                        "both sexes are taken to have the same recombination fraction, and the classes to be equally viable."));
    }

    /**
     * Estimates the recombination fraction, with an exact interval: the fractions at which neither so large nor so small an estimate has less than half of (1 -
     * level), by going through all outcomes.
     *
     * @param level confidence level, above 0 and below 1
     * @return the same estimate; the interval covers at least as often as its level says, and is longer than the approximate one
     * @throws IllegalArgumentException if the level is outside its range
     * @throws TooLargeException if there are more than {@link #MOST_EXACT} young, of which {@link #estimate} is a good approximation
     */
    public Estimate exact(double level) {
        if (counts.total() > MOST_EXACT) {
            double n = (double) counts.total();
            throw new TooLargeException(
                    "outcomes",
                    (n + 1) * (n + 2) / 2,
                    (MOST_EXACT + 1.0) * (MOST_EXACT + 2.0) / 2,
                    "ask for the profile interval, which is a good approximation with so many young.");
        }
        Estimate found = estimate(level);
        IntercrossTails tails = new IntercrossTails((int) counts.total(), phase);
        return new Estimate(
                found.value(),
                found.standardError(),
                TestInversion.of(tails.atLeast(found.value()), tails.atMost(found.value()), 0, 0.5, level),
                found.logLikelihood(),
                found.atBoundary(),
                found.flat(),
                found.notes());
    }

    /**
     * Returns the estimate by the ratio of products, bc/ad, which unequal viability of either locus does not shift (Fisher and Balmukand 1928).
     *
     * @return the recombination fraction, at most 1/2; empty if there are animals in neither of the two products
     */
    public OptionalDouble productRatio() {
        double outer = count(0) * count(3);
        double inner = count(1) * count(2);
        if (outer == 0 && inner == 0) {
            return OptionalDouble.empty();
        }
        if (outer == 0) {
            return OptionalDouble.of(phase.r(0));
        }
        double ratio = inner / outer; // (1 - t)^2 / (t (2 + t))
        return OptionalDouble.of(phase.r(1 / (1 + ratio + Math.sqrt(ratio * (ratio + 3)))));
    }

    /**
     * Holds the classes against 9:3:3:1, that of loci that are not linked.
     *
     * @return the test; it also rejects where single loci do not fit 3:1
     */
    public GoodnessOfFit independence() {
        return GoodnessOfFit.of(counts, Ratio.of(9, 3, 3, 1));
    }

    /**
     * Tests whether the loci are linked at all.
     *
     * @return the likelihood ratio against r = 1/2, which is an end of what r can be
     */
    public LikelihoodRatio linkage() {
        return LikelihoodRatio.atBoundary(
                logLikelihood(0.5),
                ProfileLikelihood.of(this::logLikelihood, 0, 0.5).maximum().logLikelihood());
    }
}
