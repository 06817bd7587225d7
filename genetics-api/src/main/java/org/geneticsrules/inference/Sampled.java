package org.geneticsrules.inference;

/**
 * What sampling says of the variables of a graph.
 *
 * @param fit whether all factors can be met; undecided if no number is given because no start was found, or the starts did not meet
 * @param chances for each variable the chance of each state
 * @param errors for each variable the standard error of each chance
 * @param converged for each variable, whether all its chances are as sure as was asked; if not, they are not to be shown
 */
@SuppressWarnings("ArrayRecordComponent") // read by the parts of the engine, never compared
record Sampled(Fit fit, double[][] chances, double[][] errors, boolean[] converged) {

    static Sampled without(Fit fit, int variables) {
        return new Sampled(fit, new double[variables][0], new double[variables][0], new boolean[variables]);
    }
}
