package org.geneticsrules.inference;

import com.google.common.base.Supplier;
import com.google.common.base.Suppliers;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.SplittableRandom;
import org.geneticsrules.inference.Conclusions.Standing;

/** What is known of the variables of one group of units, part by part. */
final class Settled {

    private final Layout layout;

    /** For each variable, how far it is settled. */
    private final Standing[] standings;

    private final double[] cells;
    private final double[][] chances;

    /** For each variable, the standard errors of its chances; none where they are exact. */
    private final double[][] errors;

    private final Supplier<boolean[][]> left;
    private double logLikelihood;

    /**
     * Settles what can be settled.
     *
     * @param question the question
     * @param group which group of its units
     * @param budget the cells that all tables of one part may have together
     * @param sampling how parts that take more are sampled, if they are
     * @param tables tables without zeros, shared
     */
    Settled(
            Groups question,
            int group,
            double budget,
            Optional<Sampling> sampling,
            IdentityHashMap<double[], SparseTable> tables) {
        this.layout = question.layout(group);
        FactorGraph graph = question.graph(group, layout);
        // few ask for it, and keeping the graph would take more room than all that is settled
        this.left = Suppliers.memoize(() -> struckOut(question.graph(group, question.layout(group))));
        this.chances = new double[graph.size()][0];
        this.errors = new double[graph.size()][0];
        this.standings = new Standing[graph.size()];
        List<Components.Part> parts = Components.of(graph);
        this.cells = new double[parts.size()];
        for (int p = 0; p < parts.size(); p++) {
            Components.Part one = parts.get(p);
            Optional<Posteriors> exactly = exactly(p, one.graph(), budget, tables);
            if (exactly.isPresent()) {
                settle(one, exactly.get());
            } else if (sampling.isPresent()) {
                long seed = new SplittableRandom(sampling.get().seed() + group).nextLong() + p;
                sample(one, Sampler.of(one.graph(), sampling.get(), seed));
            } else {
                stand(one, Standing.TOO_LARGE);
            }
        }
    }

    private void stand(Components.Part one, Standing standing) {
        for (int variable : one.variables()) {
            standings[variable] = standing;
        }
    }

    private void settle(Components.Part one, Posteriors found) {
        stand(one, found.isPossible() ? Standing.EXACT : Standing.CONTRADICTED);
        logLikelihood += found.logLikelihood();
        for (int v = 0; v < one.variables().length; v++) {
            chances[one.variables()[v]] = found.chances()[v];
        }
    }

    private void sample(Components.Part one, Sampled found) {
        if (found.fit() == Fit.CONTRADICTS) {
            stand(one, Standing.CONTRADICTED);
            logLikelihood = Double.NEGATIVE_INFINITY;
            return;
        }
        for (int v = 0; v < one.variables().length; v++) {
            int variable = one.variables()[v];
            standings[variable] = found.converged()[v] ? Standing.SAMPLED : Standing.NOT_CONVERGED;
            chances[variable] = found.chances()[v];
            errors[variable] = found.errors()[v];
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
        return standings[variable];
    }

    /** Whether the chances of a variable are known, exactly or with a standard error that is small enough. */
    boolean isKnown(int variable) {
        return standings[variable] == Standing.EXACT || standings[variable] == Standing.SAMPLED;
    }

    /** The chances of the states of a variable, if they are known. */
    double[] chances(int variable) {
        return chances[variable];
    }

    /** The standard errors of these chances; none if they are exact. */
    double[] errors(int variable) {
        return errors[variable];
    }

    /** Whether each state of a variable is left when those are struck out that contradict a neighbour. */
    boolean[] left(int variable) {
        return Objects.requireNonNull(left.get())[variable];
    }
}
