package org.geneticsrules.expression;

import com.google.common.collect.ImmutableList;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Outcomes;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Sex;

/**
 * Every combination of sex, expressions and draws, sorted by what comes of it.
 *
 * <p>Forwards it turns weights of expressions into weights of outcomes; backwards it turns outcomes into boxes. Where kits are counted
 * at birth or later, a combination may end in an animal that is lost, which is none of the outcomes.
 *
 * <p>Immutable and thread-safe. Obtained from {@link CompiledModel}.
 *
 * @param <T> what it ends in: a phenotype, in which a trait is absent where the model makes no claim, or whether records agree
 */
public final class Diagram<T> {

    private final ImmutableList<Level> levels;
    private final CompactNodes nodes;
    private final Outcomes<T> outcomes;
    private final ImmutableList<String> loci;
    private final boolean plain;

    /**
     * Makes a diagram.
     *
     * @param levels what is tested, in this order
     * @param nodes the tests; leaf i means outcome i, a leaf after these an animal that is lost
     * @param outcomes what it may end in
     */
    Diagram(List<Level> levels, CompactNodes nodes, List<T> outcomes) {
        this.levels = ImmutableList.copyOf(levels);
        this.nodes = nodes;
        this.outcomes = Outcomes.of(outcomes);
        this.loci = levels.stream()
                .filter(level -> level instanceof Level.OfLocus)
                .map(Level::name)
                .collect(ImmutableList.toImmutableList());
        this.plain = loci.size() == levels.size() && !loses();
    }

    /**
     * Returns what it tests.
     *
     * @return levels in the order in which they are tested
     */
    public List<Level> levels() {
        return levels;
    }

    /**
     * Returns the loci it may test.
     *
     * @return locus ids in the order in which they are tested; loci of one linkage group together, in map order
     */
    public List<String> loci() {
        return loci;
    }

    /**
     * Returns what it may end in.
     *
     * @return outcomes that some combination of expressions and draws leads to; weights are given in this order
     */
    public List<T> outcomes() {
        return outcomes.list();
    }

    /**
     * Tells whether some animals are lost before they are counted.
     *
     * @return true if some combination ends in no outcome
     */
    public boolean loses() {
        return nodes.leaves() > outcomes.list().size();
    }

    /**
     * Returns the number of tests in the diagram, a measure of the work of one question.
     *
     * @return at least 0
     */
    public int size() {
        return nodes.size();
    }

    /**
     * Returns the place at which every way begins. Places are numbers from 0: those below {@link #size()} are tests, those above are
     * ends.
     *
     * @return a place
     */
    public int root() {
        return nodes.root();
    }

    /**
     * Returns what is tested at a place.
     *
     * @param place a place
     * @return the position of the test in {@link #levels()}; their number at an end
     */
    public int level(int place) {
        return nodes.level(place);
    }

    /**
     * Returns the place that a finding leads to.
     *
     * @param place a place below {@link #size()}
     * @param value position of the finding among the values of its level
     * @return the next place, at a later level or an end
     */
    public int next(int place, int value) {
        return nodes.target(place, value);
    }

    /**
     * Returns the outcome at an end.
     *
     * @param place a place from {@link #size()} on
     * @return the outcome; empty for an animal that is lost
     */
    public Optional<T> outcome(int place) {
        int leaf = place - size();
        return leaf < outcomes.list().size() ? Optional.of(outcomes.list().get(leaf)) : Optional.empty();
    }

    /**
     * Weighs the outcomes for animals of one sex.
     *
     * @param law the chances of their expressions at each of {@link #loci()}
     * @return weights in the order of {@link #outcomes()} and their total, that of lost animals included
     */
    public Weights weigh(KitLaw law) {
        ExactFlow flow = new ExactFlow(nodes, Layer.of(levels, law));
        return new Weights(Arrays.copyOf(flow.weigh(), outcomes.list().size()), flow.total());
    }

    /**
     * Returns the distribution of the outcomes where all that is tested are independent loci.
     *
     * @param weights for each locus of {@link #loci()}, the weight of each of its expressions, in whole numbers of at least 0 that are
     *     not all 0
     * @return the distribution, in the order of {@link #outcomes()}
     * @throws IllegalStateException if the diagram tests other things than loci, or animals may be lost
     */
    public Distribution<T> distribution(long[][] weights) {
        if (!testsOnlyLoci()) {
            throw new IllegalStateException("the diagram tests " + levels + ", not only loci");
        }
        long whole = 1;
        long[] totals = new long[weights.length];
        for (int level = 0; level < weights.length; level++) {
            totals[level] = sum(weights[level]);
            if (Math.multiplyHigh(whole, totals[level]) != 0 || whole * totals[level] <= 0) {
                return Distribution.ofWeights(outcomes, weigh(law(weights)).shares());
            }
            whole *= totals[level];
        }
        return Distribution.ofWeights(outcomes, nodes.weigh(weights, totals));
    }

    private static long sum(long[] shares) {
        long sum = 0;
        for (long share : shares) {
            sum += share;
        }
        return sum;
    }

    private KitLaw law(long[][] weights) {
        List<Chain> chains = new ArrayList<>();
        for (int level = 0; level < weights.length; level++) {
            BigInteger[] shares =
                    Arrays.stream(weights[level]).mapToObj(BigInteger::valueOf).toArray(BigInteger[]::new);
            chains.add(Chain.single(loci.get(level), shares));
        }
        return KitLaw.of(Sex.FEMALE, chains);
    }

    /**
     * Tells whether neither sex nor chance nor loss play a part.
     *
     * @return true if all levels are loci and no animal is lost
     */
    public boolean testsOnlyLoci() {
        return plain;
    }

    /** Receives the ways to outcomes. */
    public interface PathVisitor {
        /**
         * Receives one way.
         *
         * @param outcome position of the outcome in {@link Diagram#outcomes()}; their number for an animal that is lost
         * @param box what is allowed at the levels tested; others make no difference
         * @return true to go on
         */
        boolean visit(int outcome, Condition box);
    }

    /**
     * Visits the ways to each outcome as boxes, which are disjoint and together everything.
     *
     * @param visitor receives an outcome and a box over {@link #levels()}; returns false to stop
     */
    public void paths(PathVisitor visitor) {
        nodes.paths((leaf, path) -> visitor.visit(leaf, box(path)));
    }

    private Condition box(boolean[][] path) {
        Condition box = Condition.always();
        for (int level = 0; level < path.length; level++) {
            Optional<boolean[]> allowed = Optional.ofNullable(path[level]);
            if (allowed.isPresent()) {
                List<String> all = levels.get(level).values();
                List<String> values = new ArrayList<>();
                for (int e = 0; e < all.size(); e++) {
                    if (allowed.get()[e]) {
                        values.add(all.get(e));
                    }
                }
                box = box.and(levels.get(level).name(), Allowed.only(values.toArray(String[]::new)));
            }
        }
        return box;
    }
}
