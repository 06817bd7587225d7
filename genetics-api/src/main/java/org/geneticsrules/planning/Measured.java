package org.geneticsrules.planning;

import java.util.ArrayList;
import java.util.List;

/**
 * What outcomes are expected to say.
 *
 * @param ratios for each ordered pair of models, the mean of the logarithm of their likelihood ratio
 * @param bits the mutual information between model and outcome
 * @param differs whether some outcome is likelier under one model than under another
 */
record Measured(List<ExpectedRatio> ratios, double bits, boolean differs) {

    /** Chances nearer than this are told as the same; what has no chance is never the same as what has one. */
    private static final double SAME = 1e-9;

    static Measured of(List<Outcome> outcomes, List<Double> beliefs) {
        List<ExpectedRatio> ratios = new ArrayList<>();
        boolean differs = false;
        for (int truth = 0; truth < beliefs.size(); truth++) {
            for (int rival = 0; rival < beliefs.size(); rival++) {
                if (truth != rival) {
                    boolean apart = differ(outcomes, truth, rival);
                    differs |= apart;
                    ratios.add(apart ? ratio(outcomes, truth, rival) : new ExpectedRatio(truth, rival, 0, 0, 0));
                }
            }
        }
        return new Measured(ratios, differs ? bits(outcomes, beliefs) : 0, differs);
    }

    private static boolean differ(List<Outcome> outcomes, int one, int other) {
        for (Outcome outcome : outcomes) {
            double p = outcome.chances().get(one);
            double q = outcome.chances().get(other);
            if ((p == 0) != (q == 0) || Math.abs(p - q) > SAME * Math.max(p, q)) {
                return true;
            }
        }
        return false;
    }

    private static ExpectedRatio ratio(List<Outcome> outcomes, int truth, int rival) {
        double excluding = 0;
        double finite = 0;
        for (Outcome outcome : outcomes) {
            double p = outcome.chances().get(truth);
            double q = outcome.chances().get(rival);
            if (p > 0 && q == 0) {
                excluding += p;
            } else if (p > 0) {
                finite += p * Math.log(p / q);
            }
        }
        // a divergence is not negative; what rounding leaves below 0 is 0
        return excluding > 0
                ? new ExpectedRatio(truth, rival, Double.POSITIVE_INFINITY, excluding, finite)
                : new ExpectedRatio(truth, rival, Math.max(0, finite), 0, Math.max(0, finite));
    }

    private static double bits(List<Outcome> outcomes, List<Double> beliefs) {
        double nats = 0;
        for (Outcome outcome : outcomes) {
            double any = 0;
            for (int m = 0; m < beliefs.size(); m++) {
                any += beliefs.get(m) * outcome.chances().get(m);
            }
            for (int m = 0; m < beliefs.size(); m++) {
                double one = outcome.chances().get(m);
                if (one > 0 && beliefs.get(m) > 0) {
                    nats += beliefs.get(m) * one * Math.log(one / any);
                }
            }
        }
        return Math.max(0, nats) / Math.log(2);
    }
}
