package org.geneticsrules.estimation;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * All outcomes of an intercross with as many young, and how likely estimates of the recombination fraction as large, or as small, as one of them are. The two classes
 * with one dominant character have one chance, so their sum says all.
 */
final class IntercrossTails {

    /** Estimates that differ by less are one and the same. */
    private static final double SAME = 1e-9;

    private final int young;
    private final IntercrossLinkage.Phase phase;
    private final double[] logFactorials;

    IntercrossTails(int young, IntercrossLinkage.Phase phase) {
        this.young = young;
        this.phase = phase;
        this.logFactorials = new double[young + 1];
        for (int i = 2; i <= young; i++) {
            logFactorials[i] = logFactorials[i - 1] + Math.log(i);
        }
    }

    /** By recombination fraction, the chance of an estimate that is no smaller than one observed. */
    DoubleUnaryOperator atLeast(double observed) {
        return chance(estimate -> estimate >= observed - SAME);
    }

    /** By recombination fraction, the chance of an estimate that is no larger than one observed. */
    DoubleUnaryOperator atMost(double observed) {
        return chance(estimate -> estimate <= observed + SAME);
    }

    private interface Which {
        boolean holds(double estimate);
    }

    private record Outcome(int both, int one, int none, double logWays) {}

    private DoubleUnaryOperator chance(Which which) {
        List<Outcome> tail = new ArrayList<>();
        for (int both = 0; both <= young; both++) {
            for (int one = 0; both + one <= young; one++) {
                int none = young - both - one;
                if (which.holds(phase.estimate(both, one, none))) {
                    double ways = logFactorials[young] - logFactorials[both] - logFactorials[one] - logFactorials[none];
                    tail.add(new Outcome(both, one, none, ways));
                }
            }
        }
        return r -> {
            double[] logs = {Math.log((2 + phase.t(r)) / 4), Math.log(phase.rest(r) / 2), Math.log(phase.t(r) / 4)};
            double sum = 0;
            for (Outcome one : tail) {
                sum += Math.exp(one.logWays()
                        + term(one.both(), logs[0])
                        + term(one.one(), logs[1])
                        + term(one.none(), logs[2]));
            }
            return Math.min(1, sum);
        };
    }

    private static double term(int count, double log) {
        return count == 0 ? 0 : count * log;
    }
}
