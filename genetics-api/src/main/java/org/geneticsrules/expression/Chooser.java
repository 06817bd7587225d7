package org.geneticsrules.expression;

import org.geneticsrules.probability.Distribution;

/** Decides draws where they are reached. */
interface Chooser {

    /**
     * Decides a draw; asked once for each draw of an animal.
     *
     * @param pointer pointer of the case whose chance it is
     * @param chances the chance of each outcome, of which there are at least two
     * @return one of the outcomes
     */
    String choose(String pointer, Distribution<String> chances);
}
