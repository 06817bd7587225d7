package org.geneticsrules.expression;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Outcomes;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.BoxSet;
import org.geneticsrules.trait.BoxSpace;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/**
 * Every combination of expressions of some loci, sorted by the phenotype it shows in some traits.
 *
 * <p>Forwards it turns weights of expressions into weights of phenotypes; backwards it turns phenotypes into boxes of expressions.
 * A phenotype in which a trait is absent is one for which the model makes no claim about that trait.
 *
 * <p>Immutable and thread-safe. Obtained from {@link CompiledModel#diagram}.
 */
public final class PhenotypeDiagram {

    private static final int MOST_BOXES = 200_000;

    private final Model model;
    private final ImmutableList<String> traits;
    private final ImmutableList<String> loci;
    private final CompactNodes nodes;
    private final Outcomes<Phenotype> phenotypes;
    private final Locus[] tested;

    /** For each level, the expression of each pair of alleles by position. */
    private final int[][][] expressions;

    PhenotypeDiagram(
            Model model,
            ImmutableList<String> traits,
            ImmutableList<String> loci,
            CompactNodes nodes,
            List<Phenotype> phenotypes) {
        this.model = model;
        this.traits = traits;
        this.loci = loci;
        this.nodes = nodes;
        this.phenotypes = Outcomes.of(phenotypes);
        this.tested = loci.stream().map(model::locus).toArray(Locus[]::new);
        this.expressions =
                Arrays.stream(tested).map(PhenotypeDiagram::expressions).toArray(int[][][]::new);
    }

    private static int[][] expressions(Locus locus) {
        int[][] table = new int[locus.alleles().size()][locus.alleles().size()];
        for (int one = 0; one < table.length; one++) {
            for (int other = 0; other < table.length; other++) {
                table[one][other] = locus.expressionPosition(locus.pair(one, other), Sex.FEMALE);
            }
        }
        return table;
    }

    /**
     * Returns the traits it is about.
     *
     * @return trait ids
     */
    public List<String> traits() {
        return traits;
    }

    /**
     * Returns the loci it may test, in the order in which they are tested.
     *
     * @return locus ids
     */
    public List<String> loci() {
        return loci;
    }

    /**
     * Returns the phenotypes that some combination of expressions shows.
     *
     * @return phenotypes in the declared order of states, trait by trait; weights are given in this order
     */
    public List<Phenotype> phenotypes() {
        return phenotypes.list();
    }

    /**
     * Returns the locus tested at a level.
     *
     * @param level a position in {@link #loci()}
     * @return the locus
     */
    public Locus locus(int level) {
        return tested[level];
    }

    /**
     * Returns what two alleles of one locus show together.
     *
     * @param level a position in {@link #loci()}
     * @param one position of an allele among those of the locus
     * @param other position of an allele
     * @return position of the expression among those of the locus
     */
    public int expression(int level, int one, int other) {
        return expressions[level][one][other];
    }

    /**
     * Returns the distribution of the phenotypes where the loci are independent.
     *
     * @param weights for each locus of {@link #loci()}, the weight of each of its expressions, in whole numbers of at least 0 that are
     *     not all 0
     * @return the distribution, in the order of {@link #phenotypes()}
     */
    public Distribution<Phenotype> distribution(long[][] weights) {
        long whole = 1;
        for (long[] shares : weights) {
            long total = sum(shares);
            if (Math.multiplyHigh(whole, total) != 0 || whole * total <= 0) {
                return Distribution.ofWeights(phenotypes, weigh(exact(weights)));
            }
            whole *= total;
        }
        return Distribution.ofWeights(phenotypes, weigh(weights));
    }

    private static long sum(long[] shares) {
        long sum = 0;
        for (long share : shares) {
            sum += share;
        }
        return sum;
    }

    private static BigInteger[][] exact(long[][] weights) {
        BigInteger[][] exact = new BigInteger[weights.length][];
        for (int level = 0; level < exact.length; level++) {
            exact[level] = new BigInteger[weights[level].length];
            for (int e = 0; e < exact[level].length; e++) {
                exact[level][e] = BigInteger.valueOf(weights[level][e]);
            }
        }
        return exact;
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
     * Weighs the phenotypes, in whole numbers that fit a long.
     *
     * @param weights for each locus of {@link #loci()}, the weight of each of its expressions
     * @return the weight of each phenotype; together the product over loci of their total weights
     * @throws ArithmeticException if that product does not fit a long
     */
    public long[] weigh(long[][] weights) {
        long[] totals = new long[weights.length];
        for (int level = 0; level < totals.length; level++) {
            totals[level] = sum(weights[level]);
        }
        return nodes.weigh(weights, totals);
    }

    /**
     * Weighs the phenotypes, in whole numbers of any size.
     *
     * @param weights for each locus of {@link #loci()}, the weight of each of its expressions; no locus with total 0
     * @return the weight of each phenotype; together the product over loci of their total weights
     */
    public BigInteger[] weigh(BigInteger[][] weights) {
        BigInteger[] totals = new BigInteger[weights.length];
        for (int level = 0; level < totals.length; level++) {
            totals[level] = BigInteger.ZERO;
            for (BigInteger weight : weights[level]) {
                totals[level] = totals[level].add(weight);
            }
        }
        return nodes.weigh(weights, totals);
    }

    /**
     * Returns the combinations of expressions that show some phenotypes.
     *
     * @param shown tells which phenotypes are meant
     * @return disjoint boxes over the loci of the whole model
     * @throws TooLargeException if there are too many boxes to list
     */
    public BoxSet region(Predicate<Phenotype> shown) {
        ImmutableMap.Builder<String, List<String>> variables = ImmutableMap.builder();
        model.loci().forEach((name, locus) -> variables.put(name, locus.expressions()));
        List<Condition> boxes = new ArrayList<>();
        paths((phenotype, path) -> {
            if (shown.test(phenotype)) {
                boxes.add(path);
            }
            if (boxes.size() > MOST_BOXES) {
                throw new TooLargeException(
                        "boxes of genotypes", boxes.size(), MOST_BOXES, "ask about fewer traits at a time.");
            }
            return true;
        });
        BoxSpace space = BoxSpace.of(variables.buildOrThrow());
        return space.ofDisjoint(boxes);
    }

    /**
     * Visits the ways to each phenotype as boxes of expressions, which are disjoint and together everything.
     *
     * @param visitor receives a phenotype and a box over {@link #loci()}; returns false to stop
     */
    public void paths(PathVisitor visitor) {
        boolean[] stopped = {false};
        nodes.paths((leaf, path) -> {
            if (!stopped[0]) {
                stopped[0] = !visitor.visit(phenotypes.list().get(leaf), box(path));
            }
        });
    }

    private Condition box(boolean[][] path) {
        Condition box = Condition.always();
        for (int level = 0; level < path.length; level++) {
            Optional<boolean[]> allowed = Optional.ofNullable(path[level]);
            if (allowed.isPresent()) {
                List<String> expressions = model.locus(loci.get(level)).expressions();
                List<String> values = new ArrayList<>();
                for (int e = 0; e < expressions.size(); e++) {
                    if (allowed.get()[e]) {
                        values.add(expressions.get(e));
                    }
                }
                box = box.and(loci.get(level), Allowed.only(values.toArray(String[]::new)));
            }
        }
        return box;
    }

    /** Receives the ways to phenotypes. */
    public interface PathVisitor {
        /**
         * Receives one way.
         *
         * @param phenotype the phenotype shown
         * @param box the expressions allowed at the loci tested; other loci make no difference
         * @return true to go on
         */
        boolean visit(Phenotype phenotype, Condition box);
    }
}
