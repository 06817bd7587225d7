package org.geneticsrules.expression;

import com.google.common.collect.ImmutableList;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.geneticsrules.probability.Distribution;
import org.jspecify.annotations.Nullable;

/**
 * The weights of one level of a diagram, and how its hidden states lead on to those of the next.
 *
 * @param shows in each state, the weight of each value of the level; all rows have one sum
 * @param start the weight of each state where the level begins a run of linked levels; null inside a run
 * @param next the weight of each state at the next level after each state here; null at the end of a run
 */
@SuppressWarnings("ArrayRecordComponent") // read in the inner loops, never compared
record Layer(BigInteger[][] shows, BigInteger @Nullable [] start, BigInteger @Nullable [][] next) {

    private static final BigInteger[] ALONE = {BigInteger.ONE};

    int states() {
        return shows.length;
    }

    BigInteger width() {
        return Matrices.sum(shows[0]);
    }

    static Layer alone(BigInteger[] shares) {
        return new Layer(new BigInteger[][] {shares}, ALONE, null);
    }

    /** The layers of a diagram for one law. */
    static List<Layer> of(List<Level> levels, KitLaw law) {
        List<Layer> layers = new ArrayList<>();
        int at = 0;
        while (at < levels.size()) {
            if (levels.get(at) instanceof Level.OfLocus first) {
                Chain chain = law.chain(first.name())
                        .orElseThrow(() -> new IllegalArgumentException(
                                "no chances are given at locus " + first.name() + ", which the question depends on"));
                int end = lastOf(chain, levels) + 1;
                linked(levels.subList(at, end), chain, law, layers);
                at = end;
            } else {
                layers.add(alone(fixed(levels.get(at), law)));
                at++;
            }
        }
        return ImmutableList.copyOf(layers);
    }

    private static int lastOf(Chain chain, List<Level> levels) {
        int last = -1;
        for (int i = 0; i < levels.size(); i++) {
            if (levels.get(i) instanceof Level.OfLocus locus && chain.loci().contains(locus.name())) {
                last = i;
            }
        }
        return last;
    }

    /** Levels from the first locus of a chain to its last; draws in between keep the hidden state. */
    private static void linked(List<Level> run, Chain whole, KitLaw law, List<Layer> into) {
        List<String> tested = run.stream()
                .filter(level -> level instanceof Level.OfLocus)
                .map(Level::name)
                .toList();
        Chain chain = whole.restrictedTo(tested);
        if (!chain.loci().equals(tested)) {
            throw new IllegalArgumentException("the loci " + tested + " are tested together, but chances are given for "
                    + whole.loci() + " in map order");
        }
        int states = chain.states();
        int locus = 0;
        for (int i = 0; i < run.size(); i++) {
            boolean first = i == 0;
            boolean last = i == run.size() - 1;
            BigInteger @Nullable [][] next = last ? null : identity(states);
            if (run.get(i) instanceof Level.OfLocus) {
                if (!last && run.get(i + 1) instanceof Level.OfLocus) {
                    next = chain.step(locus);
                }
                into.add(new Layer(chain.shows(locus), first ? chain.start() : null, next));
                locus++;
            } else {
                BigInteger[] shares = fixed(run.get(i), law);
                BigInteger[][] rows = new BigInteger[states][];
                Arrays.fill(rows, shares);
                // the step of the interval is taken where the next level is a locus
                if (run.get(i + 1) instanceof Level.OfLocus) {
                    next = chain.step(locus - 1);
                }
                into.add(new Layer(rows, null, next));
            }
        }
    }

    private static BigInteger[][] identity(int states) {
        BigInteger[][] identity = new BigInteger[states][states];
        for (int i = 0; i < states; i++) {
            Arrays.fill(identity[i], BigInteger.ZERO);
            identity[i][i] = BigInteger.ONE;
        }
        return identity;
    }

    /** Weights that no parent decides about: those of a draw, or of the sex that the law is about. */
    private static BigInteger[] fixed(Level level, KitLaw law) {
        if (level instanceof Level.OfDraw drawn) {
            return shares(drawn.draw().outcomes());
        }
        List<String> values = level.values();
        BigInteger[] shares = new BigInteger[values.size()];
        Arrays.setAll(shares, i -> values.get(i).equals(law.sex().word()) ? BigInteger.ONE : BigInteger.ZERO);
        return shares;
    }

    private static BigInteger[] shares(Distribution<String> outcomes) {
        return outcomes.ratio().toArray(BigInteger[]::new);
    }
}
