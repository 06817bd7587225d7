package org.geneticsrules.inference;

import com.google.common.base.Supplier;
import com.google.common.base.Suppliers;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.trait.Sex;
import org.jspecify.annotations.Nullable;

/**
 * What is known of the units of one group, part by part.
 *
 * <p>Parts of the pedigree in which nothing ties the units to one another and relations form no loop are peeled, unit by unit. Of all
 * others a factor graph is made.
 */
final class Settled {

    private final Families families;

    /** By part of the pedigree, whether it is peeled. */
    private final boolean[] peeled;

    private final List<Peeling> peelings = new ArrayList<>();

    /** By unit and part of the pedigree, if it is peeled. */
    private final Standing[][] standingsPeeled;

    /** The variables of the parts that are not peeled. */
    private final Layout layout;

    /** For each variable, how far it is settled. */
    private final Standing[] standings;

    private final double[][] chances;

    /** For each variable, the standard errors of its chances; none where they are exact. */
    private final double[][] errors;

    private final Layout all;
    private final Supplier<boolean[][]> left;
    private double cells;
    private double logLikelihood;
    private boolean contradicted;

    /**
     * Settles what can be settled.
     *
     * @param question the question
     * @param group which group of its units
     * @param families the shape of the pedigree
     * @param kinds the animals sorted by what is known of them
     * @param budget the cells that all tables of one part may have together
     * @param sampling how parts that take more are sampled, if they are
     */
    Settled(Groups question, int group, Families families, Kinds kinds, double budget, Optional<Sampling> sampling) {
        this.families = families;
        this.layout = question.layout(group);
        OwnWeights alone = question.alone(group, layout);
        this.peeled = question.loose(group, layout, alone, families, kinds);
        int units = layout.heredity().size();
        this.standingsPeeled = new Standing[units][families.parts()];
        double[][] logs = new double[units][];
        for (int u = 0; u < units; u++) {
            logs[u] = known(u, alone, kinds);
        }
        for (int p = 0; p < families.parts(); p++) {
            if (peeled[p]) {
                peel(p, logs, budget, sampling.isPresent());
            }
        }
        int[] who = IntStream.range(0, families.part.length)
                .filter(m -> !peeled[families.part[m]])
                .toArray();
        FactorGraph graph = question.graph(group, layout, who);
        // few ask for it, and keeping the graph would take more room than all that is settled
        this.all = question.layout(group);
        this.left = Suppliers.memoize(() -> struckOut(question.graph(group, all)));
        this.standings = new Standing[graph.size()];
        this.chances = new double[graph.size()][0];
        this.errors = new double[graph.size()][0];
        List<Components.Part> parts = Components.of(graph);
        for (int p = 0; p < parts.size(); p++) {
            Components.Part one = parts.get(p);
            Optional<Posteriors> exactly = exactly(one.graph(), budget);
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

    /** Lays out the peeling of a unit, and returns by part the logarithms that what is known of its animals was divided by. */
    private double[] known(int unit, OwnWeights alone, Kinds kinds) {
        Heredity heredity = layout.heredity().get(unit);
        MatingTables tables = new MatingTables(heredity);
        @Nullable Known[] ofKind = new Known[kinds.count()];
        @Nullable Known[] known = new Known[families.part.length];
        boolean[] female = new boolean[known.length];
        double[] logs = new double[families.parts()];
        for (int m = 0; m < known.length; m++) {
            if (!peeled[families.part[m]]) {
                continue;
            }
            int kind = kinds.of(m);
            Known one = ofKind[kind];
            if (one == null) {
                one = tables.known(alone.of(kinds.example(kind), unit));
                ofKind[kind] = one;
            }
            known[m] = one;
            female[m] = !tables.differ() || layout.sexOf(m, 0) == Sex.FEMALE;
            logs[families.part[m]] += one.log();
        }
        peelings.add(new Peeling(families, tables, known, female));
        return logs;
    }

    /** Peels a part at each unit; where that takes too much it is left to be sampled, if anything is. */
    private void peel(int number, double[][] logs, double budget, boolean sampled) {
        for (Peeling peeling : peelings) {
            double here = peeling.cells(number);
            cells = Math.max(cells, here);
            peeled[number] &= here <= budget || !sampled;
        }
        for (int u = 0; u < logs.length && peeled[number]; u++) {
            Standing standing = Standing.TOO_LARGE;
            if (peelings.get(u).cells(number) <= budget) {
                double found = peelings.get(u).settle(number) + logs[u][number];
                standing = found > Double.NEGATIVE_INFINITY ? Standing.EXACT : Standing.CONTRADICTED;
                logLikelihood += found;
            }
            standingsPeeled[u][number] = standing;
            contradicted |= standing == Standing.CONTRADICTED;
        }
    }

    private void stand(Components.Part one, Standing standing) {
        for (int variable : one.variables()) {
            standings[variable] = standing;
        }
    }

    private void settle(Components.Part one, Posteriors found) {
        stand(one, found.isPossible() ? Standing.EXACT : Standing.CONTRADICTED);
        contradicted |= !found.isPossible();
        logLikelihood += found.logLikelihood();
        for (int v = 0; v < one.variables().length; v++) {
            chances[one.variables()[v]] = found.chances()[v];
        }
    }

    private void sample(Components.Part one, Sampled found) {
        if (found.fit() == Fit.CONTRADICTS) {
            settle(one, Posteriors.impossible(one.variables().length));
            return;
        }
        for (int v = 0; v < one.variables().length; v++) {
            int variable = one.variables()[v];
            standings[variable] = found.converged()[v] ? Standing.SAMPLED : Standing.NOT_CONVERGED;
            chances[variable] = found.chances()[v];
            errors[variable] = found.errors()[v];
        }
    }

    private Optional<Posteriors> exactly(FactorGraph graph, double budget) {
        Elimination elimination = Elimination.of(graph);
        if (elimination.emptied() >= 0) {
            return Optional.of(Posteriors.impossible(graph.size()));
        }
        CliqueTree.Plan plan = CliqueTree.plan(graph, elimination, budget);
        cells = Math.max(cells, plan.cells());
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

    private boolean isPeeled(int member) {
        return peeled[families.part[member]];
    }

    Layout layout() {
        return layout;
    }

    double logLikelihood() {
        return logLikelihood;
    }

    /** The cells that all tables of the largest part have together, or would have. */
    double cells() {
        return cells;
    }

    boolean isContradicted() {
        return contradicted;
    }

    /** How far it is settled what an animal carries at a unit. */
    Standing standing(int member, int unit) {
        return isPeeled(member) ? standingsPeeled[unit][families.part[member]] : standing(layout.carried(member, unit));
    }

    /** How far a variable of the parts that are not peeled is settled: a sex, or a choice of sires. */
    Standing standing(int variable) {
        return standings[variable];
    }

    /** The chances of the states of an animal at a unit, if they are settled. */
    double[] chances(int member, int unit) {
        return isPeeled(member) ? peelings.get(unit).chances(member) : chances(layout.carried(member, unit));
    }

    /** The chances of the states of a variable of the parts that are not peeled, if they are settled. */
    double[] chances(int variable) {
        return chances[variable];
    }

    /** The standard errors of the chances of the states of an animal at a unit; none if they are exact. */
    double[] errors(int member, int unit) {
        return isPeeled(member) ? new double[0] : errors[layout.carried(member, unit)];
    }

    /** Whether each state of an animal at a unit is left when those are struck out that contradict a neighbour. */
    boolean[] left(int member, int unit) {
        boolean[][] found = Objects.requireNonNull(left.get());
        return found[all.carried(member, unit)];
    }
}
