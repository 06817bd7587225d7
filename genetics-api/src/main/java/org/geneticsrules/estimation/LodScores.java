package org.geneticsrules.estimation;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import org.geneticsrules.statistics.Interval;
import org.geneticsrules.statistics.LikelihoodRatio;
import org.geneticsrules.statistics.ProfileLikelihood;

/**
 * LOD scores: for each family, the decimal logarithm of how much likelier its records are at a recombination fraction than at 1/2. Scores of
 * families add up.
 *
 * <p>By convention 3 speaks for linkage, -2 against it, and what lies between decides nothing (Morton 1955, Am. J. Hum. Genet. 7:277). The
 * convention is for one pair of loci that was named beforehand; whoever tries many needs more.
 *
 * <p>Immutable and thread-safe.
 */
public final class LodScores {

    /** From this score on a linkage counts as found (Morton 1955). */
    public static final double FOR = 3;

    /** Up to this score a recombination fraction counts as excluded (Morton 1955). */
    public static final double AGAINST = -2;

    private static final double LN_10 = Math.log(10);

    /** A family whose scores stay within this says nothing. */
    private static final double NOTHING = 1e-9;

    /** Where families are looked at for whether they say anything. */
    private static final double[] PROBES = {0, 0.01, 0.05, 0.1, 0.2, 0.3, 0.4};

    private final ImmutableMap<String, DoubleUnaryOperator> families;
    private final ImmutableList<String> uninformative;
    private final ProfileLikelihood total;

    private LodScores(Map<String, DoubleUnaryOperator> families, int steps) {
        this.families = ImmutableMap.copyOf(families);
        this.uninformative = this.families.entrySet().stream()
                .filter(one -> saysNothing(one.getValue()))
                .map(Map.Entry::getKey)
                .collect(ImmutableList.toImmutableList());
        this.total = ProfileLikelihood.of(this::logLikelihood, 0, 0.5, steps);
    }

    private static boolean saysNothing(DoubleUnaryOperator family) {
        double unlinked = family.applyAsDouble(0.5);
        for (double r : PROBES) {
            double here = family.applyAsDouble(r);
            if (!(Math.abs(here - unlinked) <= NOTHING * (1 + Math.abs(unlinked)))) {
                return false;
            }
        }
        return true;
    }

    /**
     * Returns the scores of families that were counted.
     *
     * @param families at least one family, each with a name of its own
     * @return their scores
     * @throws IllegalArgumentException if there is none, or two have one name
     */
    public static LodScores of(List<LinkageFamily> families) {
        Map<String, DoubleUnaryOperator> byName = new LinkedHashMap<>();
        for (LinkageFamily family : families) {
            if (byName.putIfAbsent(family.name(), family::logLikelihood) != null) {
                throw new IllegalArgumentException("two families are called \"" + family.name() + "\"");
            }
        }
        return of(byName, ProfileLikelihood.USUAL_STEPS);
    }

    /** The scores of log-likelihoods by family. */
    static LodScores of(Map<String, DoubleUnaryOperator> families, int steps) {
        if (families.isEmpty()) {
            throw new IllegalArgumentException("expected at least one family, but there is none");
        }
        return new LodScores(families, steps);
    }

    private double logLikelihood(double r) {
        double sum = 0;
        for (DoubleUnaryOperator family : families.values()) {
            sum += family.applyAsDouble(r);
        }
        return sum;
    }

    /**
     * Returns the families.
     *
     * @return names in the order given
     */
    public List<String> families() {
        return families.keySet().asList();
    }

    /**
     * Returns the families that say nothing of linkage: their records are as likely at any fraction.
     *
     * @return names in the order given
     */
    public List<String> uninformative() {
        return uninformative;
    }

    /**
     * Returns the score of all families together.
     *
     * @param r a recombination fraction, from 0 to 1/2
     * @return the sum over families; minus infinity if some records are impossible there; 0 at 1/2
     * @throws IllegalArgumentException if the fraction is outside its range
     */
    public double at(double r) {
        return lod(total.at(Terms.requireFraction(r)), total.at(0.5));
    }

    /**
     * Returns the score of one family.
     *
     * @param family its name
     * @param r a recombination fraction, from 0 to 1/2
     * @return its score; minus infinity if its records are impossible there
     * @throws IllegalArgumentException if there is no such family, or the fraction is outside its range
     */
    public double at(String family, double r) {
        DoubleUnaryOperator found = families.get(family);
        if (found == null) {
            throw new IllegalArgumentException("there is no family \"" + family + "\" among " + families.keySet());
        }
        return lod(found.applyAsDouble(Terms.requireFraction(r)), found.applyAsDouble(0.5));
    }

    private static double lod(double here, double unlinked) {
        return here == unlinked ? 0 : (here - unlinked) / LN_10;
    }

    /**
     * Returns the highest score of all families together.
     *
     * @return 0 or more
     */
    public double highest() {
        return Math.max(0, lod(total.maximum().logLikelihood(), total.at(0.5)));
    }

    /**
     * Returns the scores along recombination fractions, for a picture or a table.
     *
     * @param steps in how many equal steps to go from 0 to 1/2, at least 1
     * @return scores by fraction
     * @throws IllegalArgumentException if there is no step
     */
    public Map<Double, Double> curve(int steps) {
        if (steps < 1) {
            throw new IllegalArgumentException("a curve has at least 1 step, but was asked for " + steps);
        }
        ImmutableMap.Builder<Double, Double> scores = ImmutableMap.builder();
        for (int i = 0; i <= steps; i++) {
            double r = 0.5 * i / steps;
            scores.put(r, at(r));
        }
        return scores.buildOrThrow();
    }

    /**
     * Estimates the recombination fraction.
     *
     * @param level confidence level of the profile interval, above 0 and below 1
     * @return the fraction at which the score is highest
     * @throws IllegalArgumentException if the level is outside its range
     */
    public Estimate estimate(double level) {
        List<String> notes = new ArrayList<>();
        if (uninformative.size() == families.size()) {
            notes.add("no family says anything of linkage.");
        } else if (!uninformative.isEmpty()) {
            notes.add("these families say nothing of linkage: " + String.join(", ", uninformative) + ".");
        }
        return Estimate.of(total, level, notes.toArray(String[]::new));
    }

    /**
     * Returns the fractions whose score is at most one below the highest, the support interval of one unit.
     *
     * @return the interval, with the confidence level that it has approximately, about 0.968
     */
    public Interval oneUnitOfSupport() {
        return total.support(LN_10);
    }

    /**
     * Tests whether the loci are linked at all.
     *
     * @return the likelihood ratio against r = 1/2, which is an end of what r can be
     */
    public LikelihoodRatio linkage() {
        return LikelihoodRatio.atBoundary(total.at(0.5), total.maximum().logLikelihood());
    }

    /** What scores say by convention. */
    public enum Verdict {
        /** A score of 3 or more. */
        FOR_LINKAGE,
        /** A score between -2 and 3. */
        INCONCLUSIVE,
        /** A score of -2 or less. */
        AGAINST_LINKAGE
    }

    /**
     * Judges linkage at a recombination fraction by convention.
     *
     * @param r a recombination fraction, from 0 to 1/2
     * @return for it, against it, or neither
     * @throws IllegalArgumentException if the fraction is outside its range
     */
    public Verdict verdict(double r) {
        double score = at(r);
        return score >= FOR ? Verdict.FOR_LINKAGE : score <= AGAINST ? Verdict.AGAINST_LINKAGE : Verdict.INCONCLUSIVE;
    }
}
