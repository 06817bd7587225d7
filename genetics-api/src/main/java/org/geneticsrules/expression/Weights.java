package org.geneticsrules.expression;

import java.math.BigInteger;

/**
 * Weights of the outcomes of a diagram, over one total.
 *
 * @param shares the weight of each outcome, in the order of the diagram; not to be modified
 * @param total what all combinations weigh together, those that end in a lost animal included
 */
@SuppressWarnings("ArrayRecordComponent") // never compared; read in the inner loops of a litter
public record Weights(BigInteger[] shares, BigInteger total) {

    /**
     * Returns what is not lost.
     *
     * @return the sum of the shares
     */
    public BigInteger kept() {
        BigInteger sum = BigInteger.ZERO;
        for (BigInteger share : shares) {
            sum = sum.add(share);
        }
        return sum;
    }
}
