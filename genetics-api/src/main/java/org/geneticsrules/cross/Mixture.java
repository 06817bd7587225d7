package org.geneticsrules.cross;

import java.math.BigInteger;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;

/**
 * Adds up weights that are fractions of different denominators, exactly.
 *
 * @param <T> what is weighed
 */
final class Mixture<T> {

    private final Map<T, BigInteger> parts = new LinkedHashMap<>();

    /** The denominator that all parts have in common. */
    private BigInteger common = BigInteger.ONE;

    /** Adds a weight. */
    void add(T key, BigInteger numerator, BigInteger denominator) {
        if (numerator.signum() != 0) {
            parts.merge(key, scaled(numerator, denominator), BigInteger::add);
        }
    }

    private BigInteger scaled(BigInteger numerator, BigInteger denominator) {
        BigInteger[] times = common.divideAndRemainder(denominator);
        if (times[1].signum() == 0) {
            return numerator.multiply(times[0]);
        }
        BigInteger gcd = common.gcd(denominator);
        BigInteger factor = denominator.divide(gcd);
        parts.replaceAll((key, part) -> part.multiply(factor));
        BigInteger before = common;
        common = common.multiply(factor);
        return numerator.multiply(before.divide(gcd));
    }

    /** What has been weighed, in the order in which it came. */
    Map<T, BigInteger> parts() {
        return parts;
    }

    /** The shares of the whole; empty if nothing has any weight. */
    Optional<Distribution<T>> distribution() {
        return parts.isEmpty() ? Optional.empty() : Optional.of(Distribution.ofWeights(parts));
    }

    /** The mean of chances that are themselves matters of chance. */
    static Probability mean(Distribution<Probability> chances) {
        Mixture<Boolean> mean = new Mixture<>();
        chances.asMap().forEach((chance, weight) -> {
            BigInteger whole = weight.denominator().multiply(chance.denominator());
            mean.add(true, weight.numerator().multiply(chance.numerator()), whole);
            mean.add(false, weight.numerator().multiply(chance.denominator().subtract(chance.numerator())), whole);
        });
        return mean.distribution().orElseThrow().probability(true);
    }
}
