package org.geneticsrules.expression;

import com.google.common.collect.ImmutableList;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.function.BiPredicate;
import org.geneticsrules.probability.Probability;

/**
 * The chances of what the loci of one linkage group show as in a kit: a hidden Markov chain along the map. Its states are the strands
 * of the parents from which the kit has its alleles; a locus that stands alone needs one state.
 *
 * <p>Weights are whole numbers. Those of the start sum to one total; so do the rows of each step, and the rows of what each locus
 * shows. Arrays are not copied and must not be modified. Thread-safe.
 */
public final class Chain {

    private final ImmutableList<String> loci;
    private final BigInteger[] start;
    private final BigInteger[][][] steps;
    private final BigInteger[][][] shows;

    private Chain(List<String> loci, BigInteger[] start, BigInteger[][][] steps, BigInteger[][][] shows) {
        this.loci = ImmutableList.copyOf(loci);
        this.start = start;
        this.steps = steps;
        this.shows = shows;
    }

    /**
     * Returns the chances at one locus.
     *
     * @param locus id of the locus
     * @param shares the weight of each expression
     * @return a chain of one state
     */
    public static Chain single(String locus, BigInteger[] shares) {
        return new Chain(
                ImmutableList.of(locus),
                new BigInteger[] {BigInteger.ONE},
                new BigInteger[0][][],
                new BigInteger[][][] {{shares}});
    }

    /**
     * Returns the chances at several loci.
     *
     * @param loci locus ids in map order
     * @param start the weight of each state at the first locus
     * @param steps for each interval between loci, the weight of each state after each state before
     * @param shows for each locus, in each state, the weight of each expression
     * @return the chain
     */
    public static Chain of(List<String> loci, BigInteger[] start, BigInteger[][][] steps, BigInteger[][][] shows) {
        if (shows.length != loci.size() || steps.length != loci.size() - 1) {
            throw new IllegalArgumentException("expected weights for each of the loci " + loci
                    + " and each interval between them, but were " + shows.length + " and " + steps.length);
        }
        return new Chain(loci, start, steps, shows);
    }

    /**
     * Returns the loci.
     *
     * @return locus ids in map order
     */
    public List<String> loci() {
        return loci;
    }

    /**
     * Returns the number of hidden states.
     *
     * @return at least 1
     */
    public int states() {
        return start.length;
    }

    /**
     * Returns the chances at some of the loci only.
     *
     * @param kept loci to keep, at least one of this chain
     * @return the shorter chain
     */
    public Chain restrictedTo(Collection<String> kept) {
        if (kept.containsAll(loci)) {
            return this;
        }
        List<String> left = new ArrayList<>();
        List<BigInteger[][]> newSteps = new ArrayList<>();
        List<BigInteger[][]> newShows = new ArrayList<>();
        BigInteger[] now = start;
        BigInteger[][] since = null;
        for (int i = 0; i < loci.size(); i++) {
            if (i > 0) {
                if (left.isEmpty()) {
                    now = Matrices.times(now, steps[i - 1]);
                } else {
                    since = since == null ? steps[i - 1] : Matrices.times(since, steps[i - 1]);
                }
            }
            if (kept.contains(loci.get(i))) {
                if (since != null) {
                    newSteps.add(since);
                    since = null;
                }
                left.add(loci.get(i));
                newShows.add(shows[i]);
            }
        }
        return of(left, now, newSteps.toArray(BigInteger[][][]::new), newShows.toArray(BigInteger[][][]::new));
    }

    /** Receives combinations of values with their weights. */
    public interface Visitor {
        /**
         * Receives one combination.
         *
         * @param values for each locus, the position of the value
         * @param weight its weight, more than 0
         */
        void visit(int[] values, BigInteger weight);
    }

    /**
     * Visits every combination of values that has a weight, in ascending order of positions.
     *
     * @param visitor receives the combinations
     */
    public void each(Visitor visitor) {
        each(0, start, new int[loci.size()], visitor);
    }

    private void each(int locus, BigInteger[] arriving, int[] values, Visitor visitor) {
        for (int value = 0; value < shows[locus][0].length; value++) {
            BigInteger[] leaving = shown(locus, value, arriving);
            BigInteger sum = Matrices.sum(leaving);
            if (sum.signum() > 0) {
                values[locus] = value;
                if (locus == shows.length - 1) {
                    visitor.visit(values.clone(), sum);
                } else {
                    each(locus + 1, Matrices.times(leaving, steps[locus]), values, visitor);
                }
            }
        }
    }

    private BigInteger[] shown(int locus, int value, BigInteger[] arriving) {
        BigInteger[] leaving = new BigInteger[arriving.length];
        for (int s = 0; s < leaving.length; s++) {
            leaving[s] = arriving[s].multiply(shows[locus][s][value]);
        }
        return leaving;
    }

    /**
     * Returns the chance that every locus has an allowed value.
     *
     * @param allowed tells for a locus, by its position in {@link #loci()}, and a value whether it is allowed
     * @return the chance
     */
    public Probability chance(BiPredicate<Integer, Integer> allowed) {
        BigInteger[] all = start;
        BigInteger[] kept = start;
        for (int locus = 0; locus < shows.length; locus++) {
            BigInteger[] nextAll = new BigInteger[all.length];
            BigInteger[] nextKept = new BigInteger[all.length];
            for (int s = 0; s < all.length; s++) {
                BigInteger whole = BigInteger.ZERO;
                BigInteger part = BigInteger.ZERO;
                for (int value = 0; value < shows[locus][s].length; value++) {
                    whole = whole.add(shows[locus][s][value]);
                    part = allowed.test(locus, value) ? part.add(shows[locus][s][value]) : part;
                }
                nextAll[s] = all[s].multiply(whole);
                nextKept[s] = kept[s].multiply(part);
            }
            boolean last = locus == shows.length - 1;
            all = last ? nextAll : Matrices.times(nextAll, steps[locus]);
            kept = last ? nextKept : Matrices.times(nextKept, steps[locus]);
        }
        return Probability.of(Matrices.sum(kept), Matrices.sum(all));
    }

    BigInteger[] start() {
        return start;
    }

    /** Weights of states after an interval, by states before it. */
    BigInteger[][] step(int interval) {
        return steps[interval];
    }

    /** Weights of expressions at a locus, by state. */
    BigInteger[][] shows(int locus) {
        return shows[locus];
    }

    /** Returns the loci with the number of states. */
    @Override
    public String toString() {
        return loci + " in " + states() + " states";
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Chain that
                && loci.equals(that.loci)
                && Arrays.equals(start, that.start)
                && Arrays.deepEquals(steps, that.steps)
                && Arrays.deepEquals(shows, that.shows);
    }

    @Override
    public int hashCode() {
        return 31 * loci.hashCode() + Arrays.deepHashCode(shows);
    }
}
