package org.geneticsrules.inference;

/**
 * What each variable may be, given all factors.
 *
 * @param chances for each variable, the chance of each state
 * @param logLikelihood natural logarithm of the sum of all weights; negative infinity if every combination has weight 0, in which case
 *     there are no chances
 */
@SuppressWarnings("ArrayRecordComponent") // read by the parts of the engine, never compared
record Posteriors(double[][] chances, double logLikelihood) {

    static Posteriors impossible(int variables) {
        return new Posteriors(new double[variables][0], Double.NEGATIVE_INFINITY);
    }

    boolean isPossible() {
        return logLikelihood > Double.NEGATIVE_INFINITY;
    }
}
