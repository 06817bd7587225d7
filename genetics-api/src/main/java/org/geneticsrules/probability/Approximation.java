package org.geneticsrules.probability;

import com.google.common.collect.ImmutableList;
import java.math.BigInteger;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.StringJoiner;

/**
 * The chances of finitely many mutually exclusive outcomes in floating point: the fast companion of {@link Distribution}, for
 * questions over so many animals that exact fractions would grow beyond use.
 *
 * <p>What cannot happen is kept apart from what is merely improbable: {@link #isPossible} is exact, and a possible outcome has a finite
 * {@link #log} however small its chance is. Every chance is a sum of products of positive numbers, so no digits cancel, and its
 * relative error is at most {@link #relativeError}.
 *
 * <p>Outcomes need not exhaust what can happen: of animals counted at birth some are lost before. {@link #missing} is what is left, and
 * {@link #given} the answer among the rest.
 *
 * <pre>{@code
 * Approximation<Phenotype> kits = cross.approximate();
 * kits.chance(Phenotype.of("eye", "pink"));   // 0.25
 * }</pre>
 *
 * <p>Immutable and thread-safe if the outcomes are.
 *
 * @param <T> the type of an outcome, with {@code equals} and {@code hashCode} by value
 */
public final class Approximation<T> {

    /** Half the distance between neighbouring numbers at 1: the relative error of one operation. */
    private static final double ROUNDING = 0x1p-53;

    private static final double LN2 = Math.log(2);

    private final Outcomes<T> outcomes;

    /** One for each outcome, and at last that of none of them. */
    private final ScaledNumbers chances;

    private final double relativeError;

    private Approximation(Outcomes<T> outcomes, ScaledNumbers chances, double relativeError) {
        this.outcomes = outcomes;
        this.chances = chances;
        this.relativeError = relativeError;
    }

    /**
     * Returns chances that an engine worked out.
     *
     * @param <T> the type of an outcome
     * @param outcomes the outcomes, in display order
     * @param chances for each outcome, and at last for none of them, its chance as a number times a power of two; 0 if and only if it
     *     cannot happen; copied
     * @param exponents the powers of two
     * @param relativeError what the relative error of each chance is at most
     * @return the chances, trusted to sum to 1 but for the error
     * @throws IllegalArgumentException if there is not one chance and one power for each outcome and for none of them
     */
    public static <T> Approximation<T> of(
            Outcomes<T> outcomes, double[] chances, int[] exponents, double relativeError) {
        int expected = outcomes.list().size() + 1;
        if (chances.length != expected || exponents.length != expected) {
            throw new IllegalArgumentException("expected " + expected + " chances and powers, but found "
                    + chances.length + " and " + exponents.length);
        }
        ScaledNumbers copy = new ScaledNumbers(expected);
        for (int i = 0; i < expected; i++) {
            copy.add(i, chances[i], exponents[i]);
        }
        return new Approximation<>(outcomes, copy, relativeError);
    }

    /**
     * Returns the outcomes that can happen.
     *
     * @return possible outcomes in declared order
     */
    public List<T> outcomes() {
        ImmutableList.Builder<T> possible = ImmutableList.builder();
        for (int i = 0; i < outcomes.list().size(); i++) {
            if (!chances.isZero(i)) {
                possible.add(outcomes.list().get(i));
            }
        }
        return possible.build();
    }

    /**
     * Tells whether an outcome can happen, exactly.
     *
     * @param outcome any value
     * @return true if its chance is more than 0, however small
     */
    public boolean isPossible(T outcome) {
        int position = outcomes.position(outcome);
        return position >= 0 && !chances.isZero(position);
    }

    /**
     * Returns the chance of an outcome.
     *
     * @param outcome any value
     * @return its chance, from 0 to 1; 0 also where it is possible but less than the smallest number of floating point, 4.9e-324
     */
    public double chance(T outcome) {
        int position = outcomes.position(outcome);
        return position < 0 ? 0 : chances.value(position);
    }

    /**
     * Returns the natural logarithm of the chance of an outcome.
     *
     * @param outcome any value
     * @return the logarithm, finite for all that is possible and negative infinity for all else
     */
    public double log(T outcome) {
        int position = outcomes.position(outcome);
        return position < 0 || chances.isZero(position)
                ? Double.NEGATIVE_INFINITY
                : Math.log(chances.number(position)) + chances.exponent(position) * LN2;
    }

    /**
     * Returns the chance that none of the outcomes happens.
     *
     * @return the chance, such as that of an animal to be lost before it is counted
     */
    public double missing() {
        return chances.value(outcomes.list().size());
    }

    /**
     * Returns a bound on the error.
     *
     * @return what |chance - exact chance| is at most, as a share of the exact chance; for {@link #log} this is an absolute error, besides
     *     its own rounding
     */
    public double relativeError() {
        return relativeError;
    }

    /**
     * Returns the chances given that one of the outcomes happens.
     *
     * @return the renormalised chances, or empty if none of the outcomes can happen
     */
    public Optional<Approximation<T>> given() {
        int size = outcomes.list().size();
        if (chances.isZero(size)) {
            return Optional.of(this);
        }
        ScaledNumbers sum = new ScaledNumbers(1);
        for (int i = 0; i < size; i++) {
            sum.add(0, chances.number(i), chances.exponent(i));
        }
        if (sum.isZero(0)) {
            return Optional.empty();
        }
        ScaledNumbers shares = new ScaledNumbers(size + 1);
        for (int i = 0; i < size; i++) {
            shares.add(i, chances.number(i) / sum.number(0), chances.exponent(i) - sum.exponent(0));
        }
        return Optional.of(new Approximation<>(outcomes, shares, 2 * relativeError + (size + 1) * ROUNDING));
    }

    /**
     * Adds up answers about the same outcomes, each with a weight: the law of total probability. Not thread-safe.
     *
     * @param <T> the type of an outcome
     */
    public static final class Mixture<T> {

        private final Outcomes<T> outcomes;
        private final ScaledNumbers sums;
        private final ScaledNumbers whole = new ScaledNumbers(1);
        private double greatestError;
        private int parts;

        /**
         * Starts with nothing.
         *
         * @param outcomes the outcomes of all parts
         */
        public Mixture(Outcomes<T> outcomes) {
            this.outcomes = outcomes;
            this.sums = new ScaledNumbers(outcomes.list().size() + 1);
        }

        /**
         * Adds a part.
         *
         * @param part an answer about these outcomes
         * @param weight its weight, of any size, at least 0; weights need not sum to 1
         * @throws IllegalArgumentException if the part is about other outcomes
         */
        public void add(Approximation<T> part, BigInteger weight) {
            if (part.outcomes != outcomes) {
                throw new IllegalArgumentException("expected chances of " + outcomes + ", but found " + part.outcomes);
            }
            if (weight.signum() > 0) {
                double number = ScaledNumbers.number(weight);
                int exponent = ScaledNumbers.exponent(weight);
                for (int i = 0; i < sums.size(); i++) {
                    sums.add(i, part.chances.number(i) * number, part.chances.exponent(i) + exponent);
                }
                whole.add(0, number, exponent);
                greatestError = Math.max(greatestError, part.relativeError);
                parts++;
            }
        }

        /**
         * Returns the mixture.
         *
         * @return the mean of the parts, or empty if none has a weight
         */
        public Optional<Approximation<T>> build() {
            if (parts == 0) {
                return Optional.empty();
            }
            ScaledNumbers shares = new ScaledNumbers(sums.size());
            for (int i = 0; i < sums.size(); i++) {
                shares.add(i, sums.number(i) / whole.number(0), sums.exponent(i) - whole.exponent(0));
            }
            return Optional.of(new Approximation<>(outcomes, shares, greatestError + (2.0 * parts + 4) * ROUNDING));
        }
    }

    /** Returns every possible outcome with its chance, as in {@code {black=0.5625, brown=0.1875, none seen=0.25}}. */
    @Override
    public String toString() {
        StringJoiner text = new StringJoiner(", ", "{", "}");
        outcomes().forEach(outcome -> text.add(outcome + "=" + chance(outcome)));
        return text.toString();
    }

    /** Numbers of at least 0 times powers of two, so that none of them underflows. */
    private static final class ScaledNumbers {

        /** Numbers are brought back into range when they leave it. */
        private static final int RANGE = 256;

        private final double[] numbers;
        private final int[] exponents;

        ScaledNumbers(int size) {
            this.numbers = new double[size];
            this.exponents = new int[size];
        }

        static double number(BigInteger value) {
            return value.shiftRight(Math.max(0, value.bitLength() - Long.SIZE + 1))
                    .doubleValue();
        }

        static int exponent(BigInteger value) {
            return Math.max(0, value.bitLength() - Long.SIZE + 1);
        }

        int size() {
            return numbers.length;
        }

        boolean isZero(int i) {
            return numbers[i] == 0;
        }

        double number(int i) {
            return numbers[i];
        }

        int exponent(int i) {
            return exponents[i];
        }

        double value(int i) {
            return Math.scalb(numbers[i], exponents[i]);
        }

        void add(int i, double number, int exponent) {
            if (number == 0) {
                return;
            }
            int size = Math.getExponent(number);
            int up = Math.abs(size) > RANGE ? size : 0;
            if (up == 0 && exponent == exponents[i]) {
                numbers[i] += number;
                return;
            }
            double brought = Math.scalb(number, -up);
            int power = exponent + up;
            if (numbers[i] == 0) {
                numbers[i] = brought;
                exponents[i] = power;
            } else if (power <= exponents[i]) {
                numbers[i] += Math.scalb(brought, power - exponents[i]);
            } else {
                numbers[i] = Math.scalb(numbers[i], exponents[i] - power) + brought;
                exponents[i] = power;
            }
        }

        @Override
        public String toString() {
            return Arrays.toString(numbers) + " x 2^" + Arrays.toString(exponents);
        }
    }
}
