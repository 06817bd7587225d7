package org.geneticsrules.inference;

import com.google.common.base.Supplier;
import com.google.common.base.Suppliers;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.inference.Groups.Way;
import org.geneticsrules.trait.Sex;
import org.jspecify.annotations.Nullable;

/**
 * What is known of the units of one group, part by part of the pedigree: peeled where relations form no loop, unit by unit or together,
 * and else by a factor graph.
 */
final class Settled {

    private final Families families;

    /** By part of the pedigree, how it is looked at. */
    private final Way[] ways;

    /** By number of a unit, or by that after the last for all units together; where some part is looked at so. */
    private final Map<Integer, Peeling> peelings = new HashMap<>();

    /** By the same number and by part of the pedigree, if it is peeled. */
    private final Standing[][] standingsPeeled;

    /** The variables of the parts that are not peeled. */
    private final Layout layout;

    /** For each variable, its part of the graph. */
    private final int[] part;

    private final Standing[] standings;
    private final double[][] chances;
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
     */
    Settled(Groups question, int group, Families families, Kinds kinds, double budget) {
        this(question, group, families, kinds, budget, Way.UNIT_BY_UNIT);
    }

    /**
     * The same, where units that nothing ties may be looked at together all the same.
     *
     * @param least units are not looked at more loosely than this
     */
    Settled(Groups question, int group, Families families, Kinds kinds, double budget, Way least) {
        this.families = families;
        this.layout = question.layout(group);
        OwnWeights alone = question.alone(group, layout);
        this.ways = question.ways(group, layout, alone, families, kinds, least);
        int units = layout.heredity().size();
        this.standingsPeeled = new Standing[units + 1][families.parts()];
        for (int u = 0; u < units; u++) {
            peel(u, Way.UNIT_BY_UNIT, alone, kinds, budget);
        }
        peel(units, Way.TOGETHER, alone, kinds, budget);
        int[] who = IntStream.range(0, families.part.length)
                .filter(m -> !isPeeled(m))
                .toArray();
        FactorGraph graph = question.graph(group, layout, who);
        // few ask for it, and keeping the graph would take more room than all that is settled
        this.all = question.layout(group);
        this.left = Suppliers.memoize(() -> struckOut(question.graph(group, all)));
        this.part = new int[graph.size()];
        this.chances = new double[graph.size()][0];
        List<Components.Part> parts = Components.of(graph);
        this.standings = new Standing[parts.size()];
        for (int p = 0; p < parts.size(); p++) {
            settle(p, parts.get(p), budget);
        }
    }

    private void peel(int number, Way way, OwnWeights alone, Kinds kinds, double budget) {
        if (Arrays.stream(ways).noneMatch(way::equals)) {
            return;
        }
        List<Integer> units = way == Way.TOGETHER
                ? IntStream.range(0, layout.heredity().size()).boxed().toList()
                : List.of(number);
        MatingTables tables =
                new MatingTables(units.stream().map(layout.heredity()::get).toList());
        @Nullable Known[] ofKind = new Known[kinds.count()];
        @Nullable Known[] known = new Known[families.part.length];
        boolean[] female = new boolean[known.length];
        double[] logs = new double[families.parts()];
        for (int m = 0; m < known.length; m++) {
            if (ways[families.part[m]] != way) {
                continue;
            }
            int kind = kinds.of(m);
            Known one = ofKind[kind];
            if (one == null) {
                one = tables.known(alone.of(kinds.example(kind), units));
                ofKind[kind] = one;
            }
            known[m] = one;
            female[m] = !tables.differ() || layout.sexOf(m, 0) == Sex.FEMALE;
            logs[families.part[m]] += one.log();
        }
        Peeling peeling = new Peeling(families, tables, known, female);
        peelings.put(number, peeling);
        for (int p = 0; p < families.parts(); p++) {
            if (ways[p] != way) {
                continue;
            }
            double here = peeling.cells(p);
            cells = Math.max(cells, here);
            Standing standing = Standing.TOO_LARGE;
            if (here <= budget) {
                double found = peeling.settle(p) + logs[p];
                standing = found > Double.NEGATIVE_INFINITY ? Standing.EXACT : Standing.CONTRADICTED;
                logLikelihood += found;
            }
            standingsPeeled[number][p] = standing;
            contradicted |= standing == Standing.CONTRADICTED;
        }
    }

    private void settle(int number, Components.Part one, double budget) {
        for (int variable : one.variables()) {
            part[variable] = number;
        }
        Optional<Posteriors> exactly = exactly(one.graph(), budget);
        if (exactly.isEmpty()) {
            standings[number] = Standing.TOO_LARGE;
            return;
        }
        Posteriors found = exactly.get();
        standings[number] = found.isPossible() ? Standing.EXACT : Standing.CONTRADICTED;
        contradicted |= !found.isPossible();
        logLikelihood += found.logLikelihood();
        for (int v = 0; v < one.variables().length; v++) {
            chances[one.variables()[v]] = found.chances()[v];
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
        return ways[families.part[member]] != Way.GRAPH;
    }

    /** The number of the peeling that looks at a unit of an animal. */
    private int peeling(int member, int unit) {
        return ways[families.part[member]] == Way.TOGETHER ? layout.heredity().size() : unit;
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
        return isPeeled(member)
                ? standingsPeeled[peeling(member, unit)][families.part[member]]
                : standing(layout.carried(member, unit));
    }

    /** How far a variable of the parts that are not peeled is settled: a sex, or a choice of sires. */
    Standing standing(int variable) {
        return standings[part[variable]];
    }

    /** The chances of the states of an animal at a unit, if they are settled. */
    double[] chances(int member, int unit) {
        if (!isPeeled(member)) {
            return chances(layout.carried(member, unit));
        }
        double[] found =
                Objects.requireNonNull(peelings.get(peeling(member, unit))).chances(member);
        return ways[families.part[member]] == Way.TOGETHER ? summed(found, member, unit) : found;
    }

    /** The chances of the states at one unit, of those of all units together. */
    private double[] summed(double[] together, int member, int unit) {
        int inner = 1;
        for (int u = unit + 1; u < layout.heredity().size(); u++) {
            inner *= layout.states(member, u);
        }
        double[] sums = new double[layout.states(member, unit)];
        for (int state = 0; state < together.length; state++) {
            sums[state / inner % sums.length] += together[state];
        }
        return sums;
    }

    /** The chances of the states of a variable of the parts that are not peeled, if they are settled. */
    double[] chances(int variable) {
        return chances[variable];
    }

    /** Whether each state of an animal at a unit is left when those are struck out that contradict a neighbour. */
    boolean[] left(int member, int unit) {
        boolean[][] found = Objects.requireNonNull(left.get());
        return found[all.carried(member, unit)];
    }
}
