package org.geneticsrules.probability;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Collection;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * An exact chance: a fraction from 0 to 1 in lowest terms with a positive denominator.
 *
 * <p>The canonical form makes {@code equals} the equality of numbers: {@code of(2, 8)} equals {@code of(1, 4)}. Arithmetic never
 * rounds. An operation whose result would leave the range 0 to 1 is a mistake of the caller and is refused with the operands.
 *
 * <pre>{@code
 * Probability carrier = Probability.of(2, 3);
 * Probability albinoKit = carrier.times(Probability.of(1, 4));   // 1/6
 * }</pre>
 *
 * <p>Numbers that fit a long are kept and reckoned with as longs; larger ones are of any size. The two never differ in what they mean.
 *
 * <p>Immutable and thread-safe.
 */
public final class Probability implements Comparable<Probability> {

    private static final long EXACT_IN_DOUBLE = 1L << 53;

    /** The chance of the impossible, 0. */
    public static final Probability ZERO = new Probability(0, 1);

    /** The chance of the certain, 1. */
    public static final Probability ONE = new Probability(1, 1);

    private static final Pattern FRACTION = Pattern.compile("(\\d{1,400})\\s*/\\s*(\\d{1,400})");
    private static final Pattern DECIMAL = Pattern.compile("(\\d{0,400}(?:\\.\\d{1,400})?)\\s*(%?)");

    /** In lowest terms; both 0 where one of the two does not fit, and {@link #large} holds them. */
    private final long numerator;

    private final long denominator;
    private final @Nullable Large large;

    private record Large(BigInteger numerator, BigInteger denominator) {}

    private Probability(long numerator, long denominator) {
        this.numerator = numerator;
        this.denominator = denominator;
        this.large = null;
    }

    private Probability(Large large) {
        this.numerator = 0;
        this.denominator = 0;
        this.large = large;
    }

    /**
     * Returns the chance {@code numerator / denominator}.
     *
     * @param numerator favourable weight, 0 to {@code denominator}
     * @param denominator total weight, at least 1
     * @return the chance in lowest terms
     * @throws IllegalArgumentException if the fraction is not between 0 and 1
     */
    public static Probability of(long numerator, long denominator) {
        if (denominator <= 0 || numerator < 0 || numerator > denominator) {
            throw outside(numerator, denominator);
        }
        if (numerator == 0) {
            return ZERO;
        }
        if (numerator == denominator) {
            return ONE;
        }
        if (Long.bitCount(denominator) == 1) { // Mendelian totals mostly are: no division
            int twos = Long.numberOfTrailingZeros(numerator);
            return new Probability(numerator >> twos, denominator >> twos);
        }
        long divisor = gcd(numerator, denominator);
        return new Probability(numerator / divisor, denominator / divisor);
    }

    /**
     * Returns the chance {@code numerator / denominator} of weights of any size.
     *
     * @param numerator favourable weight, 0 to {@code denominator}
     * @param denominator total weight, at least 1
     * @return the chance in lowest terms
     * @throws IllegalArgumentException if the fraction is not between 0 and 1
     */
    public static Probability of(BigInteger numerator, BigInteger denominator) {
        if (denominator.signum() <= 0 || numerator.signum() < 0 || numerator.compareTo(denominator) > 0) {
            throw outside(numerator, denominator);
        }
        if (denominator.bitLength() < Long.SIZE) {
            return of(numerator.longValue(), denominator.longValue());
        }
        if (numerator.signum() == 0) {
            return ZERO;
        }
        int twos = Math.min(numerator.getLowestSetBit(), denominator.getLowestSetBit());
        BigInteger up = numerator.shiftRight(twos);
        BigInteger down = denominator.shiftRight(twos);
        if (down.bitLength() - 1 > down.getLowestSetBit()) { // not a power of two
            BigInteger divisor = up.gcd(down);
            up = up.divide(divisor);
            down = down.divide(divisor);
        }
        return down.bitLength() < Long.SIZE
                ? of(up.longValue(), down.longValue())
                : new Probability(new Large(up, down));
    }

    /**
     * Returns the sum of chances as a text, also where it exceeds 1 and so is no chance, for messages about chances that do not add up.
     *
     * @param chances any chances
     * @return a whole number or a fraction in lowest terms, such as {@code 19/20} or {@code 5/4}
     */
    public static String total(Collection<Probability> chances) {
        BigInteger up = BigInteger.ZERO;
        BigInteger down = BigInteger.ONE;
        for (Probability chance : chances) {
            up = up.multiply(chance.denominator()).add(chance.numerator().multiply(down));
            down = down.multiply(chance.denominator());
            BigInteger divisor = up.gcd(down);
            up = up.divide(divisor);
            down = down.divide(divisor);
        }
        return down.equals(BigInteger.ONE) ? up.toString() : up + "/" + down;
    }

    private static IllegalArgumentException outside(Number numerator, Number denominator) {
        return new IllegalArgumentException(
                "a probability lies between 0 and 1, but was " + numerator + "/" + denominator);
    }

    /** Greatest common divisor of positive numbers. */
    private static long gcd(long a, long b) {
        long greater = b;
        long less = a;
        while (less != 0) {
            long rest = greater % less;
            greater = less;
            less = rest;
        }
        return greater;
    }

    /** Tells whether the product of two numbers of at least 0 does not fit a long. */
    private static boolean overflows(long a, long b) {
        return Math.multiplyHigh(a, b) != 0 || a * b < 0;
    }

    /**
     * Returns the chance that a decimal number states exactly, so 0.1 is one tenth.
     *
     * @param value a number from 0 to 1
     * @return the same number as a fraction
     * @throws IllegalArgumentException if the value is not between 0 and 1
     */
    public static Probability from(BigDecimal value) {
        return value.scale() > 0
                ? of(value.unscaledValue(), BigInteger.TEN.pow(value.scale()))
                : of(value.toBigIntegerExact(), BigInteger.ONE);
    }

    /**
     * Reads a fraction ({@code 3/4}), a decimal ({@code 0.75}) or a percentage ({@code 75 %}).
     *
     * @param text the text to read, at most 400 digits each side
     * @return the chance
     * @throws IllegalArgumentException if the text is none of these or lies outside 0 to 1
     */
    public static Probability parse(String text) {
        String trimmed = text.strip();
        Matcher fraction = FRACTION.matcher(trimmed);
        if (fraction.matches()) {
            return of(new BigInteger(fraction.group(1)), new BigInteger(fraction.group(2)));
        }
        Matcher decimal = DECIMAL.matcher(trimmed);
        if (decimal.matches() && !decimal.group(1).isEmpty()) {
            BigDecimal value = new BigDecimal(decimal.group(1));
            return from(decimal.group(2).isEmpty() ? value : value.movePointLeft(2));
        }
        throw new IllegalArgumentException(
                "expected a probability such as 3/4, 0.75 or 75 %, but found \"" + text + "\"");
    }

    /**
     * Returns the numerator in lowest terms.
     *
     * @return a whole number from 0 to the denominator
     */
    public BigInteger numerator() {
        return large == null ? BigInteger.valueOf(numerator) : large.numerator;
    }

    /**
     * Returns the denominator in lowest terms.
     *
     * @return a whole number of at least 1
     */
    public BigInteger denominator() {
        return large == null ? BigInteger.valueOf(denominator) : large.denominator;
    }

    /**
     * Tells whether this chance is 0, that is structurally impossible and not merely small.
     *
     * @return true for 0
     */
    public boolean isZero() {
        return numerator == 0 && large == null;
    }

    /**
     * Tells whether this chance is 1.
     *
     * @return true for 1
     */
    public boolean isOne() {
        return numerator == denominator && large == null;
    }

    /**
     * Returns the chance that one of two mutually exclusive events happens.
     *
     * @param other the chance of the other event
     * @return the sum
     * @throws IllegalArgumentException if the sum exceeds 1, because then the events cannot exclude each other
     */
    public Probability plus(Probability other) {
        if (large == null && other.large == null && numerator + other.numerator >= 0) {
            if (denominator == other.denominator) {
                return of(numerator + other.numerator, denominator);
            }
            if (!overflows(denominator, other.denominator)) {
                long mine = numerator * other.denominator;
                long theirs = other.numerator * denominator;
                if (mine + theirs >= 0) {
                    return of(mine + theirs, denominator * other.denominator);
                }
            }
        }
        BigInteger mine = numerator().multiply(other.denominator());
        BigInteger theirs = other.numerator().multiply(denominator());
        return of(mine.add(theirs), denominator().multiply(other.denominator()));
    }

    /**
     * Returns this chance less that of an event it includes.
     *
     * @param other the chance of the included event, at most this
     * @return the difference
     * @throws IllegalArgumentException if {@code other} is larger than this chance
     */
    public Probability minus(Probability other) {
        if (large == null && other.large == null && !overflows(denominator, other.denominator)) {
            return of(numerator * other.denominator - other.numerator * denominator, denominator * other.denominator);
        }
        BigInteger mine = numerator().multiply(other.denominator());
        BigInteger theirs = other.numerator().multiply(denominator());
        return of(mine.subtract(theirs), denominator().multiply(other.denominator()));
    }

    /**
     * Returns the chance that two independent events both happen.
     *
     * @param other the chance of the other event
     * @return the product
     */
    public Probability times(Probability other) {
        if (large == null && other.large == null && !overflows(denominator, other.denominator)) {
            return of(numerator * other.numerator, denominator * other.denominator);
        }
        return of(numerator().multiply(other.numerator()), denominator().multiply(other.denominator()));
    }

    /**
     * Returns the share of {@code whole} that this chance makes up, as in P(A and B) / P(B).
     *
     * @param whole the chance of the including event, at least this and not 0
     * @return the quotient
     * @throws IllegalArgumentException if {@code whole} is 0 or smaller than this chance
     */
    public Probability dividedBy(Probability whole) {
        return of(numerator().multiply(whole.denominator()), denominator().multiply(whole.numerator()));
    }

    /**
     * Returns the chance that the event does not happen.
     *
     * @return 1 minus this
     */
    public Probability complement() {
        return large == null
                ? of(denominator - numerator, denominator)
                : of(large.denominator.subtract(large.numerator), large.denominator);
    }

    /**
     * Returns the chance that the event happens in every one of {@code n} independent trials.
     *
     * @param n number of trials, at least 0
     * @return this to the power {@code n}
     * @throws IllegalArgumentException if {@code n} is negative
     */
    public Probability pow(int n) {
        if (n < 0) {
            throw new IllegalArgumentException("the number of trials must not be negative, but was " + n);
        }
        return of(numerator().pow(n), denominator().pow(n));
    }

    /**
     * Returns the chance that the event happens at least once in {@code n} independent trials, 1 - (1 - p)^n.
     *
     * @param n number of trials, at least 0
     * @return the chance of one or more
     * @throws IllegalArgumentException if {@code n} is negative
     */
    public Probability atLeastOnceIn(int n) {
        return complement().pow(n).complement();
    }

    /**
     * Returns the nearest double, for display and for floating-point work only.
     *
     * @return a number from 0.0 to 1.0
     */
    public double toDouble() {
        if (large == null && numerator < EXACT_IN_DOUBLE && denominator < EXACT_IN_DOUBLE) {
            return (double) numerator / denominator; // both are exact, so that the quotient is rounded once
        }
        return new BigDecimal(numerator())
                .divide(new BigDecimal(denominator()), MathContext.DECIMAL128)
                .doubleValue();
    }

    /**
     * Returns the chance as a decimal rounded half-even, without exponent.
     *
     * @param decimals digits after the point, 0 to 1000
     * @return for example {@code 0.1875}
     * @throws IllegalArgumentException if {@code decimals} is out of range
     */
    public String toDecimal(int decimals) {
        if (decimals < 0 || decimals > 1000) {
            throw new IllegalArgumentException("decimals must be 0 to 1000, but was " + decimals);
        }
        return new BigDecimal(numerator())
                .divide(new BigDecimal(denominator()), decimals, RoundingMode.HALF_EVEN)
                .toPlainString();
    }

    @Override
    public int compareTo(Probability other) {
        if (large == null && other.large == null) {
            long mine = Math.multiplyHigh(numerator, other.denominator);
            long theirs = Math.multiplyHigh(other.numerator, denominator);
            return mine != theirs
                    ? Long.compare(mine, theirs)
                    : Long.compareUnsigned(numerator * other.denominator, other.numerator * denominator);
        }
        return numerator()
                .multiply(other.denominator())
                .compareTo(other.numerator().multiply(denominator()));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Probability that
                && numerator == that.numerator
                && denominator == that.denominator
                && Objects.equals(large, that.large);
    }

    @Override
    public int hashCode() {
        return large == null ? 31 * Long.hashCode(numerator) + Long.hashCode(denominator) : large.hashCode();
    }

    /** Returns the fraction, {@code 3/4}, or {@code 0} or {@code 1}; {@link #parse} reads it back. */
    @Override
    public String toString() {
        return denominator == 1 ? Long.toString(numerator) : numerator() + "/" + denominator();
    }
}
