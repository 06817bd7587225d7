package org.geneticsrules.expression;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Locus;
import org.geneticsrules.probability.Approximation;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Outcomes;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Sex;
import org.jspecify.annotations.Nullable;

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

    /** Two parents of known genotypes have four unions of gametes at a locus. */
    private static final long UNIONS = 4;

    private final ImmutableList<Level> levels;
    private final CompactNodes nodes;
    private final Outcomes<T> outcomes;
    private final ImmutableList<String> loci;
    private final boolean plain;
    private final Map<Class<?>, Object> derived = new ConcurrentHashMap<>();

    /** Laid out on first use. */
    private volatile @Nullable SplitFlow flow;

    /** Laid out on first use for the unions of gametes of known parents. */
    private volatile @Nullable WideFlow wide;

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
     * Weighs the outcomes for animals of one sex in floating point.
     *
     * @param law the chances of their expressions at each of {@link #loci()}
     * @return the chance of each outcome among all animals, lost ones included
     */
    public Approximation<T> approximate(KitLaw law) {
        DoubleFlow flow = new DoubleFlow(nodes, Layer.of(levels, law));
        return approximation(flow.weigh(), flow.error());
    }

    /**
     * Returns the same as {@link #distribution} in floating point.
     *
     * @param weights the chances at each of {@link #loci()}
     * @return the chance of each outcome
     * @throws IllegalStateException if the diagram tests other things than loci, or animals may be lost
     */
    public Approximation<T> approximate(LocusWeights[] weights) {
        requireOnlyLoci();
        OptionalLong whole = whole(weights);
        if (whole.isPresent()) {
            // Whole numbers of one digit are as quick as floating point, and alike parts are weighed once.
            double[] chances = new ProductForm(flow(), weights, whole.getAsLong())
                    .chances(outcomes.list().size() + 1);
            return Approximation.of(outcomes, chances, new int[chances.length], ProductForm.ROUNDINGS);
        }
        if (!DoubleFlow.isSafe(weights)) {
            return approximate(law(weights));
        }
        return approximation(DoubleFlow.weigh(nodes, weights), DoubleFlow.errorOf(nodes));
    }

    /** The product of all totals, if it fits a long. */
    private static OptionalLong whole(LocusWeights[] weights) {
        long whole = 1;
        for (LocusWeights level : weights) {
            if (Math.multiplyHigh(whole, level.total) != 0 || whole * level.total <= 0) {
                return OptionalLong.empty();
            }
            whole *= level.total;
        }
        return OptionalLong.of(whole);
    }

    private Approximation<T> approximation(DoubleFlow.Leaves leaves, double error) {
        int outside = outcomes.list().size(); // where the leaf of the lost stands, if there is one
        return Approximation.of(
                outcomes,
                Arrays.copyOf(leaves.numbers(), outside + 1),
                Arrays.copyOf(leaves.exponents(), outside + 1),
                error);
    }

    private KitLaw law(LocusWeights[] weights) {
        List<Chain> chains = new ArrayList<>();
        for (int level = 0; level < weights.length; level++) {
            BigInteger[] shares = Arrays.stream(weights[level].shares)
                    .mapToObj(BigInteger::valueOf)
                    .toArray(BigInteger[]::new);
            chains.add(Chain.single(loci.get(level), shares));
        }
        return KitLaw.of(Sex.FEMALE, chains);
    }

    private void requireOnlyLoci() {
        if (!testsOnlyLoci()) {
            throw new IllegalStateException("the diagram tests " + levels + ", not only loci");
        }
    }

    /**
     * Starts a mean of several approximations of this diagram.
     *
     * @return a mixture of nothing so far
     */
    public Approximation.Mixture<T> mixture() {
        return new Approximation.Mixture<>(outcomes);
    }

    /**
     * Returns the distribution of the outcomes among animals that are not lost.
     *
     * @param weights weights of the outcomes, not all 0
     * @return the distribution, in the order of {@link #outcomes()}
     */
    public Distribution<T> distribution(Weights weights) {
        return Distribution.ofWeights(outcomes, weights.shares());
    }

    /**
     * Returns the distribution of the outcomes where all that is tested are independent loci.
     *
     * <p>The answer is kept as a product of one factor for each locus, and multiplied out when a chance is first read.
     *
     * @param weights the chances at each of {@link #loci()}; not to be modified
     * @return the distribution, in the order of {@link #outcomes()}
     * @throws IllegalStateException if the diagram tests other things than loci, or animals may be lost
     */
    public Distribution<T> distribution(LocusWeights[] weights) {
        requireOnlyLoci();
        OptionalLong whole = whole(weights);
        return Distribution.of(
                outcomes,
                whole.isPresent()
                        ? new ProductForm(flow(), weights, whole.getAsLong())
                        : new WideForm(wide(weights), weights));
    }

    private WideFlow wide(LocusWeights[] weights) {
        WideFlow before = wide;
        if (before == null) {
            before = new WideFlow(nodes, UNIONS);
            wide = before;
        }
        if (before.holds(weights)) {
            return before;
        }
        return new WideFlow(
                nodes,
                Arrays.stream(weights).mapToLong(level -> level.total).max().orElse(1));
    }

    private SplitFlow flow() {
        SplitFlow before = flow;
        if (before == null) {
            before = SplitFlow.of(nodes);
            flow = before;
        }
        return before;
    }

    /**
     * Returns what an engine derives from this diagram, such as tables that make its questions fast. It is derived once and kept with
     * the diagram; two threads may both derive it, and then either is kept.
     *
     * @param <D> what is derived, immutable
     * @param kind its class, which names it
     * @param derive makes it
     * @return what was derived first
     */
    public <D> D derived(Class<D> kind, Function<Diagram<T>, D> derive) {
        Object before = derived.get(kind);
        if (before == null) {
            D made = derive.apply(this);
            before = derived.putIfAbsent(kind, made);
            return before == null ? made : kind.cast(before);
        }
        return kind.cast(before);
    }

    /**
     * Tells whether neither sex nor chance nor loss play a part.
     *
     * @return true if all levels are loci and no animal is lost
     */
    public boolean testsOnlyLoci() {
        return plain;
    }

    /**
     * Tells which outcomes animals of some genotypes may have, whatever chance decides.
     *
     * @param genotypes what the animals carry
     * @return outcomes in the order of {@link #outcomes()}; none if there is no genotype
     */
    public Set<T> among(GenotypeSet genotypes) {
        boolean[] found = new boolean[nodes.leaves()];
        for (GenotypeSet.Box box : genotypes.sexedBoxes()) {
            for (Sex sex : box.sexes()) {
                boolean[] more = nodes.reached(allowed(box, sex));
                for (int leaf = 0; leaf < found.length; leaf++) {
                    found[leaf] |= more[leaf];
                }
            }
        }
        ImmutableSet.Builder<T> among = ImmutableSet.builder();
        for (int outcome = 0; outcome < outcomes().size(); outcome++) {
            if (found[outcome]) {
                among.add(outcomes().get(outcome));
            }
        }
        return among.build();
    }

    /** What animals of one sex may be found to be at each level; null where they may be anything. */
    private boolean[] @Nullable [] allowed(GenotypeSet.Box box, Sex sex) {
        boolean[] @Nullable [] allowed = new boolean[levels.size()][];
        for (int level = 0; level < allowed.length; level++) {
            boolean[] values = new boolean[levels.get(level).values().size()];
            if (levels.get(level) instanceof Level.OfLocus at) {
                Locus locus = at.locus();
                for (AllelePair pair : box.at(locus.id())) {
                    if (pair.alleles().size() == locus.transmission().strands(sex)) {
                        values[locus.expressionPosition(pair, sex)] = true;
                    }
                }
                allowed[level] = values;
            } else if (levels.get(level) instanceof Level.OfSex) {
                values[levels.get(level).values().indexOf(sex.word())] = true;
                allowed[level] = values;
            }
        }
        return allowed;
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
