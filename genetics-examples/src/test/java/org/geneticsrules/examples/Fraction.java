package org.geneticsrules.examples;

import java.math.BigInteger;
import tools.jackson.databind.JsonNode;

/** An exact fraction in lowest terms. It uses nothing of the library. */
record Fraction(BigInteger up, BigInteger down) {

    static final Fraction NOUGHT = of(BigInteger.ZERO, BigInteger.ONE);
    static final Fraction ONE = of(BigInteger.ONE, BigInteger.ONE);
    static final Fraction HALF = of(BigInteger.ONE, BigInteger.TWO);

    static Fraction of(BigInteger up, BigInteger down) {
        BigInteger common = up.gcd(down);
        return new Fraction(up.divide(common), down.divide(common));
    }

    /** A chance of an answer. */
    static Fraction of(JsonNode chance) {
        return of(
                new BigInteger(chance.get("numerator").asString()),
                new BigInteger(chance.get("denominator").asString()));
    }

    /** A chance of a model, {@code 3/4} or a whole number. */
    static Fraction of(String text) {
        int slash = text.indexOf('/');
        return slash < 0
                ? of(new BigInteger(text), BigInteger.ONE)
                : of(new BigInteger(text.substring(0, slash)), new BigInteger(text.substring(slash + 1)));
    }

    boolean isNought() {
        return up.signum() == 0;
    }

    Fraction times(Fraction other) {
        return of(up.multiply(other.up), down.multiply(other.down));
    }

    Fraction plus(Fraction other) {
        return of(up.multiply(other.down).add(other.up.multiply(down)), down.multiply(other.down));
    }

    Fraction minus(Fraction other) {
        return of(up.multiply(other.down).subtract(other.up.multiply(down)), down.multiply(other.down));
    }

    Fraction over(Fraction other) {
        return of(up.multiply(other.down), down.multiply(other.up));
    }

    @Override
    public String toString() {
        return up + "/" + down;
    }
}
