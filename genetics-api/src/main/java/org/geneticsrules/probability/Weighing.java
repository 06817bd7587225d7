package org.geneticsrules.probability;

/**
 * The chances of shared outcomes, worked out by an engine no sooner than they are read.
 *
 * <p>An engine that keeps an answer as a product of factors multiplies it out when a chance is first asked for, and keeps the result.
 * Chances must be positive for at least one outcome and sum to exactly 1; {@link Distribution#of(Outcomes, Weighing)} does not check
 * this. Implementations are thread-safe and give the same chances whenever they are asked.
 */
public interface Weighing {

    /**
     * Tells whether an outcome can happen.
     *
     * @param outcome position of the outcome in {@link Outcomes#list()}
     * @return true if its chance is not 0
     */
    boolean isPositive(int outcome);

    /**
     * Returns the chance of an outcome.
     *
     * @param outcome position of the outcome in {@link Outcomes#list()}
     * @return its chance
     */
    Probability chance(int outcome);
}
