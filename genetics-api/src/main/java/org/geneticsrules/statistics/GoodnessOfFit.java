package org.geneticsrules.statistics;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.statistics.inference.ChiSquareTest;
import org.apache.commons.statistics.inference.GTest;
import org.geneticsrules.probability.Probability;

/**
 * Whether counts fit a ratio that was expected.
 *
 * <pre>{@code
 * GoodnessOfFit.of(Counts.of(315, 108, 101, 32), Ratio.of(9, 3, 3, 1)).chiSquared();   // 0.47002, 3 degrees of freedom
 * }</pre>
 *
 * <p>A small p speaks against the hypothesis <i>as a whole</i>: also unequal viability, misclassified animals, or litters that share
 * uncertain parents and so are not independent lower it. A large p proves nothing; other ratios may fit as well.
 *
 * <p>Immutable and thread-safe.
 *
 * @param observed the counts
 * @param ratio what was expected
 * @param parameters how many numbers of the ratio were estimated from the same counts
 */
public record GoodnessOfFit(Counts observed, Ratio ratio, int parameters) {

    /** Below this expectation the distribution of chi-squared is a rough guide (Cochran 1954, from memory). */
    private static final double SMALL = 5;

    /** Below this expectation it is none. */
    private static final double VERY_SMALL = 1;

    /**
     * Checks that counts and ratio belong together.
     *
     * @param observed the counts
     * @param ratio what was expected
     * @param parameters how many numbers were estimated from the counts
     * @throws IllegalArgumentException if the numbers of classes differ, or the number of parameters is negative
     */
    public GoodnessOfFit {
        ratio.requireFits(observed);
        if (parameters < 0) {
            throw new IllegalArgumentException("the number of parameters is 0 or more, but was " + parameters);
        }
    }

    /**
     * Holds counts against a ratio that was known beforehand.
     *
     * @param observed the counts
     * @param ratio what was expected
     * @return the test
     * @throws IllegalArgumentException if the numbers of classes differ
     */
    public static GoodnessOfFit of(Counts observed, Ratio ratio) {
        return new GoodnessOfFit(observed, ratio, 0);
    }

    /**
     * Returns how many animals were expected in each class.
     *
     * @return share times total, in declared order
     */
    public List<Double> expected() {
        double total = (double) observed.total();
        return ratio.shares().stream().map(share -> share.toDouble() * total).toList();
    }

    /**
     * Returns the classes in which there are animals though the ratio allows none.
     *
     * @return names of classes of chance 0 that were counted; if there is one, the ratio as stated is ruled out, and there is no statistic
     */
    public List<String> impossible() {
        ImmutableList.Builder<String> found = ImmutableList.builder();
        for (int i = 0; i < ratio.size(); i++) {
            if (ratio.shares().get(i).isZero() && observed.values().get(i) > 0) {
                found.add(observed.names().get(i));
            }
        }
        return found.build();
    }

    /**
     * Returns the classes whose expectation is below 5, where p is a rough guide.
     *
     * @return names of possible classes; where there are any, {@link MultinomialTest} is exact
     */
    public List<String> small() {
        return below(SMALL);
    }

    /**
     * Returns the classes whose expectation is below 1, where p is no guide.
     *
     * @return names of possible classes, each of which is among {@link #small} too
     */
    public List<String> verySmall() {
        return below(VERY_SMALL);
    }

    private List<String> below(double limit) {
        ImmutableList.Builder<String> found = ImmutableList.builder();
        for (int i = 0; i < ratio.size(); i++) {
            if (!ratio.shares().get(i).isZero() && expected().get(i) < limit) {
                found.add(observed.names().get(i));
            }
        }
        return found.build();
    }

    /**
     * Returns the degrees of freedom.
     *
     * @return possible classes - 1 - parameters; 0 or less if nothing is left to test
     */
    public int degreesOfFreedom() {
        return (int) ratio.shares().stream().filter(share -> !share.isZero()).count() - 1 - parameters;
    }

    /**
     * Returns Pearson's chi-squared.
     *
     * @return the statistic; empty if animals are in an impossible class, or no degree of freedom is left
     */
    public Optional<ChiSquared> chiSquared() {
        return tested((expected, counts) -> ChiSquareTest.withDefaults().statistic(expected, counts));
    }

    /**
     * Returns the G statistic, which is twice the log-likelihood ratio.
     *
     * @return the statistic; empty if animals are in an impossible class, or no degree of freedom is left
     */
    public Optional<ChiSquared> g() {
        return tested((expected, counts) -> GTest.withDefaults().statistic(expected, counts));
    }

    private interface Statistic {
        double of(double[] expected, long[] counts);
    }

    private Optional<ChiSquared> tested(Statistic statistic) {
        if (degreesOfFreedom() < 1 || !impossible().isEmpty()) {
            return Optional.empty();
        }
        List<Double> expected = new ArrayList<>();
        List<Long> counts = new ArrayList<>();
        for (int i = 0; i < ratio.size(); i++) {
            Probability share = ratio.shares().get(i);
            if (!share.isZero()) {
                expected.add(share.toDouble() * observed.total());
                counts.add(observed.values().get(i));
            }
        }
        double found = statistic.of(
                expected.stream().mapToDouble(Double::doubleValue).toArray(),
                counts.stream().mapToLong(Long::longValue).toArray());
        return Optional.of(
                new ChiSquared(Math.max(0, found), degreesOfFreedom())); // rounding may leave -1e-16 where all fit
    }

    /**
     * Sums tests of independent counts, each of which has a statistic.
     *
     * @param tests at least one test
     * @return the sum of their chi-squared, with their degrees of freedom added
     * @throws IllegalArgumentException if there is none, or one has no statistic
     */
    public static ChiSquared sum(List<GoodnessOfFit> tests) {
        return tests.stream()
                .map(test -> test.chiSquared()
                        .orElseThrow(() -> new IllegalArgumentException("there is no chi-squared of "
                                + test.observed.byClass() + " against " + test.ratio.shares())))
                .reduce(ChiSquared::plus)
                .orElseThrow(() -> new IllegalArgumentException("there is no test to sum"));
    }
}
