package org.geneticsrules.statistics;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.stream.IntStream;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.TooLargeException;

/**
 * The exact test of counts against a ratio: how likely are counts that are no more likely than these?
 *
 * <pre>{@code
 * MultinomialTest.of(Ratio.of(9, 3, 4)).test(Counts.of(2, 3, 3)).p();
 * }</pre>
 *
 * <p>The law may be a mixture: each of several ratios with the chance that it is the right one, as where parents are not known for
 * certain. All animals of the counts then have the same, unknown ratio.
 *
 * <p>Outcomes whose chances differ by less than a billionth count as equally likely. Immutable and thread-safe.
 */
public final class MultinomialTest {

    /** How many outcomes are gone through unless stated otherwise. */
    public static final double USUAL_OUTCOMES = 5_000_000;

    /** What draws outcomes: the generator of java.util, whose sequence is the same on every machine. */
    public static final String GENERATOR = "java.util.SplittableRandom";

    private final List<Probability> weights;
    private final List<Ratio> ratios;
    private final double most;
    private final Optional<Draws> draws;
    private final Optional<Runnable> watcher;

    /** How outcomes are drawn that are too many to go through. */
    private record Draws(long number, long seed) {}

    private MultinomialTest(
            List<Probability> weights,
            List<Ratio> ratios,
            double most,
            Optional<Draws> draws,
            Optional<Runnable> watcher) {
        this.weights = weights;
        this.ratios = ratios;
        this.most = most;
        this.draws = draws;
        this.watcher = watcher;
    }

    /**
     * Returns the test of one ratio.
     *
     * @param ratio what is expected
     * @return the test, within {@link #USUAL_OUTCOMES}
     */
    public static MultinomialTest of(Ratio ratio) {
        return mixture(List.of(Probability.ONE), List.of(ratio));
    }

    /**
     * Returns the test of a mixture.
     *
     * @param weights the chance that each ratio is the right one; they sum to 1
     * @param ratios as many ratios, of the same classes
     * @return the test, within {@link #USUAL_OUTCOMES}
     * @throws IllegalArgumentException if weights and ratios do not belong together
     */
    public static MultinomialTest mixture(List<Probability> weights, List<Ratio> ratios) {
        ImmutableList<Probability> shares = ImmutableList.copyOf(new Ratio(weights).shares());
        if (weights.size() != ratios.size()
                || ratios.stream()
                        .anyMatch(ratio -> ratio.size() != ratios.get(0).size())) {
            throw new IllegalArgumentException(
                    "expected one weight for each ratio, and ratios of the same classes, but found " + weights + " and "
                            + ratios.stream().map(Ratio::shares).toList());
        }
        return new MultinomialTest(
                shares, ImmutableList.copyOf(ratios), USUAL_OUTCOMES, Optional.empty(), Optional.empty());
    }

    /**
     * Returns the same test with another limit on what is gone through.
     *
     * @param outcomes the most outcomes, 0 or more
     * @return a copy
     */
    public MultinomialTest within(double outcomes) {
        return new MultinomialTest(weights, ratios, outcomes, draws, watcher);
    }

    /**
     * Returns the same test, which draws outcomes where there are too many to go through all.
     *
     * @param number how many are drawn, at least 1
     * @param seed where the random numbers start
     * @return a copy
     * @throws IllegalArgumentException if none is drawn
     */
    public MultinomialTest sampling(long number, long seed) {
        if (number < 1) {
            throw new IllegalArgumentException("at least 1 outcome is drawn, but was asked for " + number);
        }
        return new MultinomialTest(weights, ratios, most, Optional.of(new Draws(number, seed)), watcher);
    }

    /**
     * Returns the same test with somebody who watches. Unless stated otherwise, an interruption of the thread ends the work with a {@link
     * CancellationException}.
     *
     * @param by is called now and then, mostly many times a second; what it throws ends the work
     * @return a copy
     */
    public MultinomialTest watched(Runnable by) {
        return new MultinomialTest(weights, ratios, most, draws, Optional.of(by));
    }

    /**
     * Returns how many outcomes would be gone through.
     *
     * @param total how many animals are counted, at least 0
     * @return in how many ways they fall into the classes that are possible, (n + k - 1)! / n! / (k - 1)!
     */
    public double outcomes(long total) {
        int open = (int) IntStream.range(0, ratios.get(0).size())
                .filter(this::isPossible)
                .count();
        double ways = 1;
        for (int i = 1; i < open; i++) {
            ways = ways * (total + i) / i;
        }
        return Math.rint(ways);
    }

    private boolean isPossible(int position) {
        for (int m = 0; m < ratios.size(); m++) {
            if (!weights.get(m).isZero()
                    && !ratios.get(m).shares().get(position).isZero()) {
                return true;
            }
        }
        return false;
    }

    /**
     * What the test found.
     *
     * @param p the chance of outcomes that are no more likely than what was observed; 0 if that is impossible
     * @param chance natural logarithm of the chance of exactly these counts; minus infinity if they are impossible
     * @param exact whether all outcomes were gone through
     * @param outcomes how many were gone through or drawn
     * @param standardError of p if outcomes were drawn, sqrt(p (1 - p) / draws); 0 if p is exact
     */
    public record Result(double p, double chance, boolean exact, long outcomes, double standardError) {

        /**
         * Tells whether the counts cannot come about under the ratio.
         *
         * @return true if their chance is 0
         */
        public boolean isImpossible() {
            return chance == Double.NEGATIVE_INFINITY;
        }
    }

    /**
     * Holds counts against the ratio.
     *
     * @param observed counts of the same classes, at most 2^31 - 1 animals
     * @return p, exact or drawn
     * @throws TooLargeException if there are more outcomes than allowed, and drawing was not asked for ({@link #sampling})
     * @throws IllegalArgumentException if the counts have other classes
     */
    public Result test(Counts observed) {
        ratios.get(0).requireFits(observed);
        double ways = outcomes(observed.total());
        if ((ways > most && draws.isEmpty()) || observed.total() >= Integer.MAX_VALUE) {
            throw new TooLargeException(
                    "outcomes",
                    ways,
                    most,
                    "allow more, or ask for a sample of outcomes with a seed, which gives a standard error.");
        }
        Thread asking = Thread.currentThread();
        Runnable watch = watcher.orElse(() -> {
            if (asking.isInterrupted()) {
                throw new CancellationException("the test was interrupted");
            }
        });
        Outcomes law = new Outcomes(weights, ratios, Math.toIntExact(observed.total()), watch);
        int[] counts = observed.values().stream().mapToInt(Math::toIntExact).toArray();
        double chance = law.logChance(counts);
        boolean impossible = chance == Double.NEGATIVE_INFINITY;
        if (ways <= most || impossible) { // the impossible needs no listing: no outcome is less likely
            return new Result(impossible ? 0 : law.noMoreLikely(chance), chance, true, impossible ? 0 : (long) ways, 0);
        }
        Draws how = draws.orElseThrow();
        double p = (law.hits(chance, how.number(), how.seed()) + 1.0) / (how.number() + 1.0);
        return new Result(p, chance, false, how.number(), Math.sqrt(p * (1 - p) / how.number()));
    }
}
