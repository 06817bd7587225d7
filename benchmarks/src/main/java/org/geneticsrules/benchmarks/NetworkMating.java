package org.geneticsrules.benchmarks;

import cc.mallet.grmm.inference.JunctionTreeInferencer;
import cc.mallet.grmm.types.AssignmentIterator;
import cc.mallet.grmm.types.Factor;
import cc.mallet.grmm.types.FactorGraph;
import cc.mallet.grmm.types.HashVarSet;
import cc.mallet.grmm.types.TableFactor;
import cc.mallet.grmm.types.VarSet;
import cc.mallet.grmm.types.Variable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToIntFunction;

/**
 * The same matings put to a general-purpose engine: the junction tree of the graphical models in MALLET (A. K. McCallum 2002), which
 * knows nothing of genetics.
 *
 * <p>Each locus has a variable for the allele of either gamete and one for the expression of the kit, each trait one for what is seen.
 * A last factor, 1 everywhere, ties the traits together, because all phenotypes are wanted and not each trait by itself. The network
 * is laid out, and its junction tree found, once for a mating; {@link #count} only passes messages and reads the answer. Chances are
 * floating point.
 *
 * <p>Not thread-safe.
 */
final class NetworkMating {

    /**
     * A trait written by hand for one model.
     *
     * @param loci the loci it depends on
     * @param states how many states it has
     * @param state the state by the expressions of those loci, in the order of {@code loci}
     */
    record Trait(List<Integer> loci, int states, ToIntFunction<int[]> state) {}

    private final FactorGraph network = new FactorGraph();
    private final List<Variable> seen = new ArrayList<>();
    private final VarSet wanted;
    private final IntegerProduct.Rule rule;
    private final int codes;

    /**
     * Lays a mating out.
     *
     * @param shown for each locus, the expression of each pair of alleles
     * @param sire the father's two alleles at each locus
     * @param dam the mother's two alleles at each locus
     * @param traits the traits
     * @param rule the phenotype code of a state of each trait
     * @param codes number of phenotype codes
     */
    NetworkMating(int[][][] shown, int[][] sire, int[][] dam, List<Trait> traits, IntegerProduct.Rule rule, int codes) {
        this.rule = rule;
        this.codes = codes;
        List<Variable> expressed = new ArrayList<>();
        for (int locus = 0; locus < shown.length; locus++) {
            Variable fromSire = gamete(sire[locus]);
            Variable fromDam = gamete(dam[locus]);
            int[][] table = shown[locus];
            int expressions =
                    1 + Arrays.stream(table).flatMapToInt(Arrays::stream).max().orElseThrow();
            Variable kit = new Variable(expressions);
            int[] first = sire[locus];
            int[] second = dam[locus];
            decide(List.of(fromSire, fromDam), kit, at -> table[first[at[0]]][second[at[1]]]);
            expressed.add(kit);
        }
        for (Trait trait : traits) {
            Variable state = new Variable(trait.states());
            decide(trait.loci().stream().map(expressed::get).toList(), state, trait.state());
            seen.add(state);
        }
        int cells = seen.stream().mapToInt(Variable::getNumOutcomes).reduce(1, Math::multiplyExact);
        double[] ones = new double[cells];
        Arrays.fill(ones, 1);
        network.addFactor(new TableFactor(seen.toArray(Variable[]::new), ones));
        wanted = new HashVarSet(seen);
    }

    private Variable gamete(int[] alleles) {
        Variable gamete = new Variable(alleles.length);
        double[] even = new double[alleles.length];
        Arrays.fill(even, 1.0 / alleles.length);
        network.addFactor(new TableFactor(gamete, even));
        return gamete;
    }

    /** A factor that is 1 where the last variable has the value that the others give it, else 0; the last varies fastest. */
    private void decide(List<Variable> parents, Variable child, ToIntFunction<int[]> value) {
        List<Variable> all = new ArrayList<>(parents);
        all.add(child);
        int combinations = parents.stream().mapToInt(Variable::getNumOutcomes).reduce(1, Math::multiplyExact);
        double[] table = new double[combinations * child.getNumOutcomes()];
        int[] at = new int[parents.size()];
        for (int combination = 0; combination < combinations; combination++) {
            int rest = combination;
            for (int i = at.length - 1; i >= 0; i--) {
                at[i] = rest % parents.get(i).getNumOutcomes();
                rest /= parents.get(i).getNumOutcomes();
            }
            table[combination * child.getNumOutcomes() + value.applyAsInt(at)] = 1;
        }
        network.addFactor(new TableFactor(all.toArray(Variable[]::new), table));
    }

    /**
     * Passes the messages and reads the chances of all phenotypes.
     *
     * @return the chance of each phenotype code
     */
    double[] count() {
        JunctionTreeInferencer engine = new JunctionTreeInferencer();
        engine.computeMarginals(network);
        Factor marginal = engine.lookupMarginal(wanted);
        double[] chances = new double[codes];
        int[] states = new int[seen.size()];
        AssignmentIterator each = marginal.assignmentIterator();
        while (each.hasNext()) {
            double chance = marginal.value(each);
            if (chance > 0) {
                for (int i = 0; i < states.length; i++) {
                    states[i] = each.assignment().get(seen.get(i));
                }
                chances[rule.code(states)] += chance;
            }
            each.advance();
        }
        return chances;
    }
}
