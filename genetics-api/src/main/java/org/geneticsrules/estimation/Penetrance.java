package org.geneticsrules.estimation;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.statistics.BinomialInterval;
import org.geneticsrules.statistics.BinomialTail;
import org.geneticsrules.statistics.Interval;
import org.geneticsrules.statistics.LikelihoodRatio;
import org.geneticsrules.statistics.ProfileLikelihood;

/**
 * Which share of the animals of a genotype shows it, by young of matings that are known. Others are taken never to show it, and the young to be independent.
 *
 * <p>Young that do not show it are not cleared: with a penetrance of K, an animal of a susceptible genotype does not show it with the chance 1 - K.
 *
 * <p>Immutable and thread-safe.
 */
public final class Penetrance {

    /**
     * Young of matings of one kind.
     *
     * @param susceptible the chance that one of the young has the genotype: 1 for known carriers, 1/2 from a heterozygote and a free mate for a
     *     dominant, 1/4 from two carriers for a recessive
     * @param affected how many show it
     * @param young how many were looked at
     */
    public record Mating(Probability susceptible, long affected, long young) {
        /**
         * Checks the counts.
         *
         * @param susceptible the chance of the genotype
         * @param affected how many show it
         * @param young how many were looked at
         * @throws IllegalArgumentException if there are no young, not 0 to as many affected, or affected young of a mating that can have none
         */
        public Mating {
            if (young < 1 || affected < 0 || affected > young) {
                throw new IllegalArgumentException(
                        "expected at least 1 of the young and from 0 to as many affected, but found " + affected
                                + " of " + young);
            }
            if (susceptible.isZero() && affected > 0) {
                throw new IllegalArgumentException(
                        affected + " of the young are affected, though their parents can have none of the genotype");
            }
        }

        /**
         * Returns how likely so many or more would show it if all of the genotype did.
         *
         * @return p of the exact test; small where no penetrance explains that so many show it
         */
        public double excess() {
            return BinomialTail.atLeast(affected, young, susceptible.toDouble());
        }
    }

    private final List<Mating> matings;

    private Penetrance(List<Mating> matings) {
        this.matings = ImmutableList.copyOf(matings);
    }

    /**
     * Estimates the penetrance by animals that are known to have the genotype, for example by their young or a DNA test.
     *
     * @param affected how many of them show it
     * @param carriers how many there are, found without regard to whether they show it
     * @param level confidence level, above 0 and below 1
     * @return the share, with the exact interval of Clopper and Pearson
     * @throws IllegalArgumentException if there are no carriers, or not 0 to as many affected, or the level is outside its range
     */
    public static Estimate ofCarriers(long affected, long carriers, double level) {
        Interval interval = BinomialInterval.clopperPearson(affected, carriers, level);
        double k = affected / (double) carriers;
        boolean boundary = affected == 0 || affected == carriers;
        return new Estimate(
                k,
                boundary ? OptionalDouble.empty() : OptionalDouble.of(Math.sqrt(k * (1 - k) / carriers)),
                interval,
                Terms.log(affected, k) + Terms.log(carriers - affected, 1 - k),
                boundary,
                false,
                List.of("carriers are taken to be found without regard to whether they show it."));
    }

    /**
     * Asks by young of known matings.
     *
     * @param matings at least one mating, of which one can have young of the genotype
     * @return the question
     * @throws IllegalArgumentException if there is none
     */
    public static Penetrance ofYoung(List<Mating> matings) {
        if (matings.stream().allMatch(one -> one.susceptible().isZero())) {
            throw new IllegalArgumentException(
                    "expected at least one mating whose young may have the genotype, but found "
                            + matings.stream().map(Mating::toString).collect(Collectors.joining(", ", "[", "]")));
        }
        return new Penetrance(matings);
    }

    /**
     * Returns the log-likelihood of a penetrance.
     *
     * @param penetrance from 0 to 1
     * @return the natural logarithm of the likelihood, without binomial coefficients
     * @throws IllegalArgumentException if the penetrance is outside its range
     */
    public double logLikelihood(double penetrance) {
        Terms.requireChance("a penetrance", penetrance);
        double sum = 0;
        for (Mating one : matings) {
            double shows = one.susceptible().toDouble() * penetrance;
            sum += Terms.log(one.affected(), shows) + Terms.log(one.young() - one.affected(), 1 - shows);
        }
        return sum;
    }

    /**
     * Holds one penetrance for all matings against a share of its own for each.
     *
     * @return the likelihood ratio, with one degree of freedom less than there are matings that can have the genotype; empty if there is only one
     */
    public Optional<LikelihoodRatio> fit() {
        List<Mating> open =
                matings.stream().filter(one -> !one.susceptible().isZero()).toList();
        if (open.size() < 2) {
            return Optional.empty();
        }
        double each = 0;
        for (Mating one : open) {
            double share = one.affected() / (double) one.young();
            each += Terms.log(one.affected(), share) + Terms.log(one.young() - one.affected(), 1 - share);
        }
        double together =
                ProfileLikelihood.of(this::logLikelihood, 0, 1).maximum().logLikelihood();
        return Optional.of(new LikelihoodRatio(Math.max(0, 2 * (each - together)), open.size() - 1, false));
    }

    /**
     * Estimates the penetrance.
     *
     * @param level confidence level, above 0 and below 1
     * @return the share of the genotype that shows it, from 0 to 1, with the profile interval
     * @throws IllegalArgumentException if the level is outside its range
     */
    public Estimate estimate(double level) {
        return Estimate.of(
                ProfileLikelihood.of(this::logLikelihood, 0, 1),
                level,
                "matings are taken to be chosen without regard to whether their young show it; for litters that were noticed because of"
                        + " affected young the penetrance is overestimated.");
    }
}
