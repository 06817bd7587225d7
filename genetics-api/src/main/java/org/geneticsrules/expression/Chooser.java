package org.geneticsrules.expression;

import org.geneticsrules.probability.Distribution;

/**
 * Decides what chance decides in the life of an animal, draw by draw, where draws are reached.
 *
 * <p>Whoever implements it says whether the outcomes are given, drawn, or gone through one after another. It is asked from one thread at a
 * time.
 */
@FunctionalInterface
public interface Chooser {

    /**
     * Decides a draw; asked once for each draw of an animal.
     *
     * @param pointer pointer of the case whose chance it is
     * @param chances the chance of each outcome, of which there are at least two
     * @return one of the outcomes
     */
    String choose(String pointer, Distribution<String> chances);
}
