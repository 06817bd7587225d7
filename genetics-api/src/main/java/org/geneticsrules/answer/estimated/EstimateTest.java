package org.geneticsrules.answer.estimated;

import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.geneticsrules.statistics.ChiSquared;
import org.geneticsrules.statistics.LikelihoodRatio;

/**
 * A test of what a hypothesis states.
 *
 * @param hypothesis what is stated, for example {@code 1/4 of the young show it}
 * @param method how it was tested
 * @param atEnd whether what is stated is an end of what the number can be, so that p is halved
 * @param statistic the statistic; empty if the test has none, and if it is infinite, since the counts are impossible under the hypothesis
 * @param degreesOfFreedom its degrees of freedom; empty if the test has none
 * @param p the chance of counts that fit no better, if the hypothesis is right
 */
public record EstimateTest(
        String hypothesis,
        String method,
        boolean atEnd,
        OptionalDouble statistic,
        OptionalInt degreesOfFreedom,
        double p) {

    /** From this p on a hypothesis is said to go with the counts. */
    static final double USUAL_RISK = 0.05;

    static EstimateTest of(String hypothesis, LikelihoodRatio test) {
        return new EstimateTest(
                hypothesis,
                "likelihood ratio",
                test.atBoundary(),
                Double.isInfinite(test.statistic()) ? OptionalDouble.empty() : OptionalDouble.of(test.statistic()),
                OptionalInt.of(test.degreesOfFreedom()),
                test.p());
    }

    static EstimateTest of(String hypothesis, ChiSquared test) {
        return new EstimateTest(
                hypothesis,
                "chi-squared",
                false,
                OptionalDouble.of(test.statistic()),
                OptionalInt.of(test.degreesOfFreedom()),
                test.p());
    }

    static EstimateTest exact(String hypothesis, String method, double p) {
        return new EstimateTest(hypothesis, method, false, OptionalDouble.empty(), OptionalInt.empty(), p);
    }

    /**
     * Tells whether the counts speak against the hypothesis.
     *
     * @return true if p is below 0.05
     */
    public boolean isRejected() {
        return p < USUAL_RISK;
    }
}
