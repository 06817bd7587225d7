package org.geneticsrules.inference;

import com.google.common.base.Supplier;
import com.google.common.base.Suppliers;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.inference.Groups.Way;

/**
 * What is known of the units of one group, part by part of the pedigree: peeled where relations form no loop, unit by unit or together,
 * and else by a factor graph, which is sampled where exact tables do not fit, if that is asked for.
 */
final class Settled {

    private final Peeled peeled;

    /** The variables of the parts that are not peeled. */
    private final Layout layout;

    /** For each variable, how far it is settled. */
    private final Standing[] standings;

    private final double[][] chances;

    /** For each variable, the standard errors of its chances; none where they are exact. */
    private final double[][] errors;

    private final Supplier<Left> left;
    private double logLikelihood;
    private boolean contradicted;

    /**
     * Settles what can be settled.
     *
     * @param question the question
     * @param group which group of its units
     * @param families the shape of the pedigree
     * @param effort how much may be done
     */
    Settled(Groups question, int group, Families families, Effort effort) {
        this(question, group, families, effort, Way.UNIT_BY_UNIT);
    }

    /**
     * The same, where units that nothing ties may be looked at together all the same.
     *
     * @param least units are not looked at more loosely than this
     */
    Settled(Groups question, int group, Families families, Effort effort, Way least) {
        effort.watch().run();
        this.peeled = new Peeled(question, group, families, effort.cells(), least, effort.watch());
        this.layout = question.layout(group);
        this.logLikelihood = peeled.logLikelihood();
        this.contradicted = peeled.isContradicted();
        int[] who = IntStream.range(0, families.part.length)
                .filter(m -> !peeled.has(m))
                .toArray();
        FactorGraph graph = question.graph(group, layout, who);
        // few ask for it, and keeping the graph would take more room than all that is settled
        this.left = Suppliers.memoize(() -> {
            Layout all = question.layout(group);
            return new Left(all, struckOut(question.graph(group, all), effort.watch()));
        });
        this.standings = new Standing[graph.size()];
        this.chances = new double[graph.size()][0];
        this.errors = new double[graph.size()][0];
        List<Components.Part> parts = Components.of(graph);
        for (int p = 0; p < parts.size(); p++) {
            Components.Part one = parts.get(p);
            effort.watch().run();
            Optional<Posteriors> exactly = exactly(one.graph(), effort);
            if (exactly.isPresent()) {
                settle(one, exactly.get());
            } else if (effort.sampling().isPresent()) {
                Sampling how = effort.sampling().get();
                long seed = new SplittableRandom(how.seed() + group).nextLong() + p;
                sample(one, Sampler.of(one.graph(), how, seed, effort.watch()));
            } else {
                stand(one, Standing.TOO_LARGE);
            }
        }
    }

    /** By variable of all animals, which states are left when those are struck out that contradict a neighbour. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    private record Left(Layout layout, boolean[][] states) {}

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

    private Optional<Posteriors> exactly(FactorGraph graph, Effort effort) {
        Runnable watch = effort.watch();
        Elimination elimination = Elimination.of(graph, (variable, factor) -> watch.run());
        if (elimination.emptied() >= 0) {
            return Optional.of(Posteriors.impossible(graph.size()));
        }
        CliqueTree.Plan plan = CliqueTree.plan(graph, elimination, effort.cells(), watch);
        return plan.cells() <= effort.cells() ? plan.tree().propagate(watch) : Optional.empty();
    }

    private static boolean[][] struckOut(FactorGraph graph, Runnable watch) {
        boolean[][] left = new boolean[graph.size()][];
        for (Components.Part one : Components.of(graph)) {
            Elimination elimination = Elimination.of(one.graph(), (variable, factor) -> watch.run());
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

    boolean isContradicted() {
        return contradicted;
    }

    /** How far it is settled what an animal carries at a unit. */
    Standing standing(int member, int unit) {
        return peeled.has(member) ? peeled.standing(member, unit) : standing(layout.carried(member, unit));
    }

    /** How far a variable of the parts that are not peeled is settled: a sex, or a choice of sires. */
    Standing standing(int variable) {
        return standings[variable];
    }

    /** The chances of the states of an animal at a unit, if they are settled. */
    double[] chances(int member, int unit) {
        return peeled.has(member) ? peeled.chances(member, unit) : chances(layout.carried(member, unit));
    }

    /** The chances of the states of a variable of the parts that are not peeled, if they are settled. */
    double[] chances(int variable) {
        return chances[variable];
    }

    /** The standard errors of the chances of the states of an animal at a unit; none if they are exact. */
    double[] errors(int member, int unit) {
        return peeled.has(member) ? new double[0] : errors[layout.carried(member, unit)];
    }

    /** Whether each state of an animal at a unit is left when those are struck out that contradict a neighbour. */
    boolean[] left(int member, int unit) {
        Left found = Objects.requireNonNull(left.get());
        return found.states()[found.layout().carried(member, unit)];
    }
}
