package org.geneticsrules.inference;

import com.google.common.base.Supplier;
import com.google.common.base.Suppliers;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.geneticsrules.inference.Conclusions.Standing;

/** What is known of the variables of one group of units, part by part. */
final class Settled {

    private final Layout layout;

    /** For each variable, its part. */
    private final int[] part;

    private final Standing[] standings;
    private final double[] cells;
    private final double[][] chances;
    private final Supplier<boolean[][]> left;
    private double logLikelihood;

    /**
     * Settles what can be settled.
     *
     * @param question the question
     * @param group which group of its units
     * @param budget the cells that all tables of one part may have together
     * @param tables tables without zeros, shared
     */
    Settled(Groups question, int group, double budget, IdentityHashMap<double[], SparseTable> tables) {
        this.layout = question.layout(group);
        FactorGraph graph = question.graph(group, layout);
        // few ask for it, and keeping the graph would take more room than all that is settled
        this.left = Suppliers.memoize(() -> struckOut(question.graph(group, question.layout(group))));
        this.part = new int[graph.size()];
        this.chances = new double[graph.size()][0];
        List<Components.Part> parts = Components.of(graph);
        this.standings = new Standing[parts.size()];
        this.cells = new double[parts.size()];
        for (int p = 0; p < parts.size(); p++) {
            settle(p, parts.get(p), budget, tables);
        }
    }

    private void settle(int number, Components.Part one, double budget, IdentityHashMap<double[], SparseTable> tables) {
        for (int variable : one.variables()) {
            part[variable] = number;
        }
        Optional<Posteriors> exactly = exactly(number, one.graph(), budget, tables);
        if (exactly.isEmpty()) {
            standings[number] = Standing.TOO_LARGE;
            return;
        }
        Posteriors found = exactly.get();
        standings[number] = found.isPossible() ? Standing.EXACT : Standing.CONTRADICTED;
        logLikelihood += found.logLikelihood();
        for (int v = 0; v < one.variables().length; v++) {
            chances[one.variables()[v]] = found.chances()[v];
        }
    }

    private Optional<Posteriors> exactly(
            int number, FactorGraph graph, double budget, IdentityHashMap<double[], SparseTable> tables) {
        Optional<Peeling> peeling = Peeling.of(graph, tables);
        if (peeling.isPresent()) {
            cells[number] = peeling.get().cells();
            return peeling.filter(one -> one.cells() <= budget).map(Peeling::propagate);
        }
        Elimination elimination = Elimination.of(graph);
        if (elimination.emptied() >= 0) {
            return Optional.of(Posteriors.impossible(graph.size()));
        }
        CliqueTree.Plan plan = CliqueTree.plan(graph, elimination, budget);
        cells[number] = plan.cells();
        return plan.cells() <= budget ? Optional.of(plan.tree().propagate()) : Optional.empty();
    }

    private static boolean[][] struckOut(FactorGraph graph) {
        boolean[][] left = new boolean[graph.size()][];
        for (Components.Part one : Components.of(graph)) {
            Elimination elimination = Elimination.of(one.graph());
            for (int v = 0; v < one.variables().length; v++) {
                left[one.variables()[v]] = elimination.flags(v);
            }
        }
        return left;
    }

    Layout layout() {
        return layout;
    }

    double logLikelihood() {
        return logLikelihood;
    }

    /** The cells that all tables of the largest part have together, or would have. */
    double cells() {
        double most = 0;
        for (double one : cells) {
            most = Math.max(most, one);
        }
        return most;
    }

    boolean isContradicted() {
        for (Standing standing : standings) {
            if (standing == Standing.CONTRADICTED) {
                return true;
            }
        }
        return false;
    }

    Standing standing(int variable) {
        return standings[part[variable]];
    }

    /** The chances of the states of a variable, if they are settled. */
    double[] chances(int variable) {
        return chances[variable];
    }

    /** Whether each state of a variable is left when those are struck out that contradict a neighbour. */
    boolean[] left(int variable) {
        return Objects.requireNonNull(left.get())[variable];
    }
}
