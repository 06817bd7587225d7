package org.geneticsrules.cross;

import java.math.BigInteger;
import java.util.Arrays;
import java.util.Optional;
import org.geneticsrules.expression.Diagram;
import org.geneticsrules.expression.KitLaw;
import org.geneticsrules.expression.Weights;
import org.geneticsrules.probability.Approximation;

/**
 * The chances of the kits of two parents, half of which are daughters and half sons when conceived.
 *
 * @param daughters the law of a daughter; of any kit where there are no others
 * @param sons the law of a son, where the sexes may differ
 */
record Young(KitLaw daughters, Optional<KitLaw> sons) {

    /** Weighs what comes of a kit. */
    Weights weigh(Diagram<?> diagram) {
        Weights female = diagram.weigh(daughters);
        if (sons.isEmpty()) {
            return female;
        }
        Weights male = diagram.weigh(sons.get());
        BigInteger common = female.total().gcd(male.total());
        BigInteger timesFemale = male.total().divide(common);
        BigInteger timesMale = female.total().divide(common);
        BigInteger[] shares = new BigInteger[female.shares().length];
        Arrays.setAll(shares, i -> female.shares()[i].multiply(timesFemale).add(male.shares()[i].multiply(timesMale)));
        return new Weights(shares, female.total().multiply(timesFemale).shiftLeft(1));
    }

    /** The same in floating point, all kits conceived together. */
    <T> Approximation<T> approximate(Diagram<T> diagram) {
        Approximation<T> female = diagram.approximate(daughters);
        if (sons.isEmpty()) {
            return female;
        }
        Approximation.Mixture<T> both = diagram.mixture();
        both.add(female, BigInteger.ONE);
        both.add(diagram.approximate(sons.get()), BigInteger.ONE);
        return both.build().orElseThrow();
    }
}
