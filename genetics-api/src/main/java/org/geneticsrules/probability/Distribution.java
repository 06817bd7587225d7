package org.geneticsrules.probability;

import com.google.common.collect.ImmutableMap;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * The chances of finitely many mutually exclusive outcomes, which sum to exactly 1.
 *
 * <p>Outcomes keep the order in which they were first given. Outcomes of chance 0 are not listed, so {@link #outcomes()} is the
 * support. Two distributions are equal when they give every outcome the same chance, whatever the order.
 *
 * <pre>{@code
 * Distribution<String> egg = Distribution.ofWeights(Map.of("C", 1L, "c", 1L));
 * Distribution<String> kit = egg.product(egg, (a, b) -> a + "/" + b);
 * }</pre>
 *
 * <p>Immutable and thread-safe if the outcomes are.
 *
 * @param <T> the type of an outcome, with {@code equals} and {@code hashCode} by value
 */
public final class Distribution<T> {

    /** Positive chances in display order; never modified. */
    private final Map<T, Probability> chances;

    private Distribution(Map<T, Probability> chances) {
        this.chances = chances;
    }

    /**
     * Returns the distribution with the given chances.
     *
     * @param <T> the type of an outcome
     * @param chances chance of each outcome, in display order; must sum to exactly 1
     * @return the distribution without the outcomes of chance 0
     * @throws IllegalArgumentException if the chances do not sum to 1
     */
    public static <T> Distribution<T> of(Map<T, Probability> chances) {
        BigInteger common = BigInteger.ONE;
        for (Probability chance : chances.values()) {
            common = lcm(common, chance.denominator());
        }
        BigInteger sum = BigInteger.ZERO;
        ImmutableMap.Builder<T, Probability> positive = ImmutableMap.builder();
        for (Map.Entry<T, Probability> entry : chances.entrySet()) {
            Probability chance = entry.getValue();
            sum = sum.add(chance.numerator().multiply(common.divide(chance.denominator())));
            if (!chance.isZero()) {
                positive.put(entry.getKey(), chance);
            }
        }
        if (!sum.equals(common)) {
            throw new IllegalArgumentException(
                    "the chances of a distribution sum to 1, but these sum to " + sum + "/" + common + ": " + chances);
        }
        return new Distribution<>(positive.buildOrThrow());
    }

    /**
     * Returns the distribution proportional to whole-number weights, such as 9 : 3 : 4.
     *
     * @param <T> the type of an outcome
     * @param weights weight of each outcome, at least 0, in display order; at least one positive
     * @return the distribution
     * @throws IllegalArgumentException if a weight is negative or all are 0
     */
    public static <T> Distribution<T> ofWeights(Map<T, ? extends Number> weights) {
        LinkedHashMap<T, BigInteger> exact = new LinkedHashMap<>();
        BigInteger total = BigInteger.ZERO;
        for (Map.Entry<T, ? extends Number> entry : weights.entrySet()) {
            BigInteger weight = entry.getValue() instanceof BigInteger big
                    ? big
                    : BigInteger.valueOf(entry.getValue().longValue());
            if (weight.signum() < 0) {
                throw negative(entry.getKey(), weight);
            }
            exact.put(entry.getKey(), weight);
            total = total.add(weight);
        }
        if (total.signum() == 0) {
            throw new IllegalArgumentException("at least one weight must be positive, but found " + weights);
        }
        ImmutableMap.Builder<T, Probability> chances = ImmutableMap.builder();
        for (Map.Entry<T, BigInteger> entry : exact.entrySet()) {
            if (entry.getValue().signum() > 0) {
                chances.put(entry.getKey(), Probability.of(entry.getValue(), total));
            }
        }
        return new Distribution<>(chances.buildOrThrow());
    }

    /**
     * Returns the distribution of shared outcomes proportional to whole-number weights.
     *
     * @param <T> the type of an outcome
     * @param outcomes the outcomes, in display order
     * @param weights one weight for each outcome, at least 0; at least one positive; their sum fits a long
     * @return the distribution
     * @throws IllegalArgumentException if a weight is negative, all are 0, or there is not one for each outcome
     * @throws ArithmeticException if the sum does not fit a long
     */
    public static <T> Distribution<T> ofWeights(Outcomes<T> outcomes, long[] weights) {
        long[] copy = weights.clone();
        requireOneEach(outcomes, copy.length);
        long total = 0;
        for (int i = 0; i < copy.length; i++) {
            long weight = copy[i];
            total += weight;
            if (weight < 0) {
                throw negative(outcomes.list().get(i), weight);
            }
            if (total < 0) {
                throw new ArithmeticException("the sum of the weights does not fit a long");
            }
        }
        if (total == 0) {
            throw new IllegalArgumentException(
                    "at least one weight must be positive, but all of " + outcomes + " are 0");
        }
        return new Distribution<>(new Weighted<>(outcomes, new Weighted.Small(copy, total)));
    }

    /**
     * Returns the distribution of shared outcomes proportional to whole-number weights of any size.
     *
     * @param <T> the type of an outcome
     * @param outcomes the outcomes, in display order
     * @param weights one weight for each outcome, at least 0; at least one positive
     * @return the distribution
     * @throws IllegalArgumentException if a weight is negative, all are 0, or there is not one for each outcome
     */
    public static <T> Distribution<T> ofWeights(Outcomes<T> outcomes, BigInteger[] weights) {
        BigInteger[] copy = weights.clone();
        requireOneEach(outcomes, copy.length);
        BigInteger total = BigInteger.ZERO;
        for (int i = 0; i < copy.length; i++) {
            total = total.add(copy[i]);
            if (copy[i].signum() < 0) {
                throw negative(outcomes.list().get(i), copy[i]);
            }
        }
        if (total.signum() == 0) {
            throw new IllegalArgumentException(
                    "at least one weight must be positive, but all of " + outcomes + " are 0");
        }
        return new Distribution<>(new Weighted<>(outcomes, new Weighted.Large(copy, total)));
    }

    /**
     * Returns the distribution of shared outcomes whose chances an engine works out when they are read.
     *
     * @param <T> the type of an outcome
     * @param outcomes the outcomes, in display order
     * @param weights the chance of each outcome, trusted to sum to 1
     * @return the distribution
     */
    public static <T> Distribution<T> of(Outcomes<T> outcomes, Weighing weights) {
        return new Distribution<>(new Weighted<>(outcomes, weights));
    }

    private static void requireOneEach(Outcomes<?> outcomes, int weights) {
        if (outcomes.list().size() != weights) {
            throw new IllegalArgumentException(
                    "expected one weight for each of " + outcomes.list().size() + " outcomes, but found " + weights);
        }
    }

    private static <T> IllegalArgumentException negative(T outcome, Number weight) {
        return new IllegalArgumentException("a weight must not be negative, but " + outcome + " has " + weight);
    }

    /**
     * Returns the distribution in which one outcome is certain.
     *
     * @param <T> the type of an outcome
     * @param outcome the certain outcome
     * @return the distribution that gives it chance 1
     */
    public static <T> Distribution<T> certain(T outcome) {
        return new Distribution<>(ImmutableMap.of(outcome, Probability.ONE));
    }

    /**
     * Returns the outcomes that can happen.
     *
     * @return the outcomes of positive chance in declared order, unmodifiable
     */
    public Set<T> outcomes() {
        return chances.keySet();
    }

    /**
     * Returns every outcome with its chance.
     *
     * @return the positive chances in declared order, unmodifiable
     */
    public Map<T, Probability> asMap() {
        return chances;
    }

    /**
     * Returns the chance of an outcome.
     *
     * @param outcome any value
     * @return its chance, 0 if it is not listed
     */
    public Probability probability(T outcome) {
        Probability chance = chances.get(outcome);
        return chance == null ? Probability.ZERO : chance;
    }

    /**
     * Returns the chance of an event.
     *
     * @param event tells which outcomes belong to the event
     * @return the summed chance of those outcomes
     */
    public Probability probabilityOf(Predicate<? super T> event) {
        Probability sum = Probability.ZERO;
        for (Map.Entry<T, Probability> entry : chances.entrySet()) {
            if (event.test(entry.getKey())) {
                sum = sum.plus(entry.getValue());
            }
        }
        return sum;
    }

    /**
     * Returns the distribution of a function of the outcome; outcomes with one image are added up.
     *
     * @param <R> the type of an image
     * @param function what is seen of an outcome
     * @return the distribution of the image
     */
    public <R> Distribution<R> map(Function<? super T, ? extends R> function) {
        LinkedHashMap<R, Probability> images = new LinkedHashMap<>();
        chances.forEach((outcome, chance) -> images.merge(function.apply(outcome), chance, Probability::plus));
        return new Distribution<>(ImmutableMap.copyOf(images));
    }

    /**
     * Returns the joint distribution of two independent outcomes.
     *
     * @param <U> the type of the other outcome
     * @param <R> the type of the joint outcome
     * @param other the independent distribution
     * @param join builds the joint outcome
     * @return the distribution of the joint outcome, this one's order first
     */
    public <U, R> Distribution<R> product(Distribution<U> other, BiFunction<? super T, ? super U, ? extends R> join) {
        LinkedHashMap<R, Probability> joint = new LinkedHashMap<>();
        chances.forEach((mine, p) -> other.chances.forEach(
                (theirs, q) -> joint.merge(join.apply(mine, theirs), p.times(q), Probability::plus)));
        return new Distribution<>(ImmutableMap.copyOf(joint));
    }

    /**
     * Returns the mixture of the distributions that follow each outcome (the law of total probability).
     *
     * @param <R> the type of a later outcome
     * @param next the distribution that follows an outcome
     * @return the distribution of the later outcome
     */
    public <R> Distribution<R> flatMap(Function<? super T, Distribution<R>> next) {
        LinkedHashMap<R, Probability> mixture = new LinkedHashMap<>();
        chances.forEach((outcome, p) ->
                next.apply(outcome).chances.forEach((later, q) -> mixture.merge(later, p.times(q), Probability::plus)));
        return new Distribution<>(ImmutableMap.copyOf(mixture));
    }

    /**
     * Returns the distribution given that an event is known to have happened.
     *
     * @param event tells which outcomes belong to the event
     * @return the renormalised distribution, or empty if the event is impossible here
     */
    public Optional<Distribution<T>> given(Predicate<? super T> event) {
        Probability whole = probabilityOf(event);
        if (whole.isZero()) {
            return Optional.empty();
        }
        ImmutableMap.Builder<T, Probability> kept = ImmutableMap.builder();
        chances.forEach((outcome, chance) -> {
            if (event.test(outcome)) {
                kept.put(outcome, chance.dividedBy(whole));
            }
        });
        return Optional.of(new Distribution<>(kept.buildOrThrow()));
    }

    /**
     * Returns the chances as the smallest whole numbers in the same proportion, such as 9, 3, 4.
     *
     * @return one positive number per outcome, in the order of {@link #outcomes()}
     */
    public List<BigInteger> ratio() {
        BigInteger common = BigInteger.ONE;
        for (Probability chance : chances.values()) {
            common = lcm(common, chance.denominator());
        }
        List<BigInteger> parts = new ArrayList<>(); // without a common divisor, as the chances are in lowest terms
        for (Probability chance : chances.values()) {
            parts.add(chance.numerator().multiply(common.divide(chance.denominator())));
        }
        return Collections.unmodifiableList(parts);
    }

    private static BigInteger lcm(BigInteger a, BigInteger b) {
        return a.equals(b) ? a : a.divide(a.gcd(b)).multiply(b);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Distribution<?> that && chances.equals(that.chances);
    }

    @Override
    public int hashCode() {
        return chances.hashCode();
    }

    /** Returns every outcome with its chance, as in {@code {black=9/16, brown=3/16, none seen=1/4}}. */
    @Override
    public String toString() {
        return chances.toString();
    }
}
