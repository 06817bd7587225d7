package org.geneticsrules.estimation;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleBinaryOperator;
import java.util.function.DoubleUnaryOperator;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.statistics.LikelihoodRatio;
import org.geneticsrules.statistics.ProfileLikelihood;

/**
 * Which share p of the young of two carriers is affected, by families that were found because of affected young.
 *
 * <p>Families of carriers without affected young are not noticed, so the affected are too many among those that are. How that is put right depends on how
 * families came to notice, and the answer is only as good as that is known:
 *
 * <ul>
 *   <li>{@link #unselected}: all families of carriers were looked at. Binomial.
 *   <li>{@link #truncated}: every family with at least one affected was found. Binomial, given that there is one: divided by 1 - (1 - p)^s.
 *   <li>{@link #withProbands(List, Probability)}: each affected animal comes to notice by itself with a known chance pi, and a family with it. Of r
 *       affected a are probands: C(s,r) p^r (1-p)^(s-r) C(r,a) pi^a (1-pi)^(r-a) / (1 - (1 - p pi)^s). With pi near 0 this is single selection, with 1 it is truncated.
 *   <li>{@link #withProbands(List)}: the same, where pi is estimated too.
 *   <li>{@link #asRecorded}: each family in its own way.
 * </ul>
 *
 * <p>The formulas are those of Lange, Mathematical and Statistical Methods for Genetic Analysis, chapter 2, after Fisher 1934 and Morton 1959 (from memory). Litters
 * are taken to be independent, the parents of each to be carriers for certain, and litter size to have nothing to do with the condition.
 *
 * <p>Immutable and thread-safe.
 */
public final class SegregationRatio {

    private final DoubleUnaryOperator logLikelihood;
    private final ProfileLikelihood profile;
    private final ImmutableList<String> notes;

    private SegregationRatio(DoubleUnaryOperator logLikelihood, String... notes) {
        this.logLikelihood = logLikelihood;
        this.profile = ProfileLikelihood.of(logLikelihood, 0, 1);
        this.notes = ImmutableList.copyOf(notes);
    }

    /**
     * Asks by all families of carriers, also those without affected young.
     *
     * @param families at least one family
     * @return the question
     * @throws IllegalArgumentException if there is no family
     */
    public static SegregationRatio unselected(List<Sibship> families) {
        requireAny(families);
        return new SegregationRatio(
                p -> sum(families, one -> binomial(one, p)),
                "all families of carriers are taken to be counted, also those without affected young.");
    }

    /**
     * Asks by all families with at least one affected.
     *
     * @param families at least one family, each with an affected sibling
     * @return the question
     * @throws IllegalArgumentException if there is no family, or one has no affected
     */
    public static SegregationRatio truncated(List<Sibship> families) {
        requireAffected(families);
        return new SegregationRatio(
                p -> sum(families, one -> truncated(one, p)),
                "every family with at least one affected is taken to be found, however many there are in it.");
    }

    /**
     * Asks by families that were found through probands, with a known chance to become one.
     *
     * @param families at least one family, each with a proband
     * @param pi the chance that an affected animal comes to notice by itself; 0 for single selection, where no family was found twice
     * @return the question
     * @throws IllegalArgumentException if there is no family, or one has no proband
     */
    public static SegregationRatio withProbands(List<Sibship> families, Probability pi) {
        requireProbands(families);
        double known = pi.toDouble();
        return new SegregationRatio(
                p -> sum(families, one -> withProbands(one, p, known)),
                "affected animals are taken to come to notice independently, with the chance " + pi + ".");
    }

    /**
     * Asks by families that were found through probands, with an unknown chance to become one, which is estimated too.
     *
     * @param families at least one family, each with a proband
     * @return the question about p; pi is maximised out
     * @throws IllegalArgumentException if there is no family, or one has no proband
     */
    public static SegregationRatio withProbands(List<Sibship> families) {
        requireProbands(families);
        return new SegregationRatio(
                ProfileLikelihood.over(both(families), 0, 1),
                "affected animals are taken to come to notice independently, all with the same chance, which was estimated too.");
    }

    /**
     * Asks by families of which each came to be recorded in its own way.
     *
     * @param families at least one family, each of which goes with how it was recorded
     * @return the question
     * @throws IllegalArgumentException if there is no family
     */
    public static SegregationRatio asRecorded(List<RecordedFamily> families) {
        if (families.isEmpty()) {
            throw new IllegalArgumentException("expected at least one family, but there is none");
        }
        return new SegregationRatio(p -> {
            double sum = 0;
            for (RecordedFamily one : families) {
                sum += asRecorded(one, p);
            }
            return sum;
        });
    }

    private static double asRecorded(RecordedFamily one, double p) {
        if (one.how() instanceof Ascertainment.AtLeastOne) {
            return truncated(one.sibship(), p);
        }
        if (!(one.how() instanceof Ascertainment.Probands probands)) {
            return binomial(one.sibship(), p);
        }
        double pi = probands.chance().toDouble();
        if (probands.count().isPresent()) {
            return withProbands(one.sibship(), p, pi);
        }
        return p == 0 // who the probands were is not recorded, only that there was one
                ? truncated(one.sibship(), p)
                : binomial(one.sibship(), p) + atLeastOnce(one.affected(), pi) - atLeastOnce(one.siblings(), p * pi);
    }

    /**
     * Estimates the chance that an affected animal comes to notice by itself; the share of affected is maximised out.
     *
     * @param families at least one family, each with a proband
     * @param level confidence level, above 0 and below 1
     * @return the estimate of pi
     * @throws IllegalArgumentException if there is no family, one has no proband, or the level is outside its range
     */
    public static Estimate probandProbability(List<Sibship> families, double level) {
        requireProbands(families);
        DoubleBinaryOperator both = both(families);
        return Estimate.of(
                ProfileLikelihood.of(ProfileLikelihood.over((pi, p) -> both.applyAsDouble(p, pi), 0, 1), 0, 1),
                level,
                "the share of affected was estimated too.");
    }

    private static DoubleBinaryOperator both(List<Sibship> families) {
        return (p, pi) -> sum(families, one -> withProbands(one, p, pi));
    }

    /**
     * Returns the share of affected among all young, which is no estimate: it is too high wherever families were found through affected
     * young.
     *
     * @param families at least one family
     * @return affected / young
     * @throws IllegalArgumentException if there is no family
     */
    public static Probability naive(List<Sibship> families) {
        requireAny(families);
        return Probability.of(affected(families), young(families));
    }

    /**
     * Returns the estimate of Li and Mantel (1968, Am. J. Hum. Genet. 20:61, from memory), in which affected animals that are the only ones of their family are
     * left out: for families that were found as for {@link #truncated}, without a search.
     *
     * @param families at least one family, each with an affected sibling
     * @return (affected - singles) / (young - singles); empty if there are only families of one
     * @throws IllegalArgumentException if there is no family, or one has no affected
     */
    public static OptionalDouble singlesExcluded(List<Sibship> families) {
        requireAffected(families);
        long singles = families.stream()
                .filter(one -> one.affected() == 1)
                .mapToLong(Sibship::families)
                .sum();
        long young = young(families) - singles;
        return young == 0 ? OptionalDouble.empty() : OptionalDouble.of((affected(families) - singles) / (double) young);
    }

    /**
     * Estimates the share of affected.
     *
     * @param level confidence level of the profile interval, above 0 and below 1
     * @return the estimate of p, from 0 to 1
     * @throws IllegalArgumentException if the level is outside its range
     */
    public Estimate estimate(double level) {
        return Estimate.of(profile, level, notes.toArray(String[]::new));
    }

    /**
     * Tests a share that a hypothesis states, such as 1/4.
     *
     * @param stated the share, above 0 and below 1
     * @return the likelihood ratio of the stated share and the estimate
     * @throws IllegalArgumentException if the share is 0 or 1
     */
    public LikelihoodRatio test(Probability stated) {
        if (stated.isZero() || stated.isOne()) {
            throw new IllegalArgumentException("a share to be tested is above 0 and below 1, but was " + stated);
        }
        return LikelihoodRatio.of(
                logLikelihood.applyAsDouble(stated.toDouble()),
                profile.maximum().logLikelihood());
    }

    private interface OfOne {
        double of(Sibship one);
    }

    private static double sum(List<Sibship> families, OfOne logChance) {
        double sum = 0;
        for (Sibship one : families) {
            sum += one.families() * logChance.of(one);
        }
        return sum;
    }

    private static double binomial(Sibship one, double p) {
        return Terms.logChoose(one.siblings(), one.affected())
                + Terms.log(one.affected(), p)
                + Terms.log(one.siblings() - one.affected(), 1 - p);
    }

    private static double truncated(Sibship one, double p) {
        if (p == 0) { // the limit: of rare events only one happens
            return one.affected() == 1 ? 0 : Double.NEGATIVE_INFINITY;
        }
        return binomial(one, p) - atLeastOnce(one.siblings(), p);
    }

    private static double withProbands(Sibship one, double p, double pi) {
        int r = one.affected();
        int a = one.probands();
        if (p == 0) {
            return r == 1 ? 0 : Double.NEGATIVE_INFINITY;
        }
        if (pi == 0) { // the limit: one proband, who is any of the affected; families are found in proportion to them
            return a > 1
                    ? Double.NEGATIVE_INFINITY
                    : binomial(one, p) + Math.log((double) r / one.siblings()) - Math.log(p);
        }
        return binomial(one, p)
                + Terms.logChoose(r, a)
                + Terms.log(a, pi)
                + Terms.log(r - a, 1 - pi)
                - atLeastOnce(one.siblings(), p * pi);
    }

    /** ln(1 - (1 - p)^n) without losing digits. */
    private static double atLeastOnce(int n, double p) {
        return Math.log(-Math.expm1(n * Math.log1p(-p)));
    }

    private static long affected(List<Sibship> families) {
        return families.stream()
                .mapToLong(one -> one.affected() * one.families())
                .sum();
    }

    private static long young(List<Sibship> families) {
        return families.stream()
                .mapToLong(one -> one.siblings() * one.families())
                .sum();
    }

    private static void requireAny(List<Sibship> families) {
        if (families.isEmpty()) {
            throw new IllegalArgumentException("expected at least one family, but there is none");
        }
    }

    private static void requireAffected(List<Sibship> families) {
        requireAny(families);
        for (Sibship one : families) {
            if (one.affected() == 0) {
                throw new IllegalArgumentException(
                        "families that came to notice have an affected sibling, but found one of " + one.siblings()
                                + " siblings without");
            }
        }
    }

    private static void requireProbands(List<Sibship> families) {
        requireAny(families);
        for (Sibship one : families) {
            if (one.probands() == 0) {
                throw new IllegalArgumentException("families that came to notice have a proband, but found one of "
                        + one.siblings() + " siblings, " + one.affected() + " of them affected, without");
            }
        }
    }
}
