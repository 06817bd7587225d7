package org.geneticsrules.cross;

import java.math.BigInteger;
import java.util.LinkedHashMap;
import java.util.Map;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.TooLargeException;

/**
 * How likely a test mating is to miss what it looks for, after so many kits, litters or mates, and how many it takes.
 *
 * <p>Each step (a kit, a litter, a mate with a litter) shows nothing with a chance that depends on what the animals carry that all
 * steps have in common. If that is not known for certain, neither is the chance: it has values v with weights w, and n steps show
 * nothing with the chance sum w v^n. This falls with n, towards the weight of the value 1: what the steps can never show, because
 * all of them have it in common. So there may be no n that is enough.
 *
 * <pre>{@code
 * Detection carrierMate = Detection.of(Distribution.certain(Probability.of(3, 4)));
 * carrierMate.fewest(Probability.of(1, 20));     // Reached[steps=11, missed=177147/4194304]: 3^11 of 4^11
 * }</pre>
 *
 * <p>A miss is not a posterior. The miss is the chance of seeing nothing <i>if</i> the animal is what it is tested for; how likely the
 * animal is to be so after nothing was seen depends on how likely it was before: see {@link #missFor}.
 *
 * <p>Obtained from a {@link TestMating}. Immutable and thread-safe.
 */
public final class Detection {

    /** Exact chances of more binary digits than this are not computed. */
    private static final double MOST_BITS = 1 << 18;

    /** No test goes on for longer; an estimate above it is as good as any. */
    private static final double LONGEST = 1e15;

    private final Distribution<Probability> step;
    private final Probability limit;

    /** The denominator that all values have in common, and that all weights have. */
    private final BigInteger values;

    private final BigInteger weights;

    /** The weight of each value, as numerators over these. */
    private final Map<BigInteger, BigInteger> terms = new LinkedHashMap<>();

    private Detection(Distribution<Probability> step) {
        this.step = step;
        this.limit = step.probability(Probability.ONE);
        BigInteger commonValue = BigInteger.ONE;
        BigInteger commonWeight = BigInteger.ONE;
        for (Map.Entry<Probability, Probability> one : step.asMap().entrySet()) {
            commonValue = lcm(commonValue, one.getKey().denominator());
            commonWeight = lcm(commonWeight, one.getValue().denominator());
        }
        this.values = commonValue;
        this.weights = commonWeight;
        step.asMap().forEach((value, weight) -> terms.put(over(value, values), over(weight, weights)));
    }

    private static BigInteger lcm(BigInteger a, BigInteger b) {
        return a.divide(a.gcd(b)).multiply(b);
    }

    private static BigInteger over(Probability chance, BigInteger common) {
        return chance.numerator().multiply(common.divide(chance.denominator()));
    }

    /** The answer to how many steps it takes. */
    public sealed interface Fewest {}

    /**
     * So many steps are enough, and one less is not.
     *
     * @param steps the number of kits, litters or mates
     * @param missed the chance that all of them show nothing all the same
     */
    public record Reached(int steps, Probability missed) implements Fewest {}

    /**
     * No number of steps is enough.
     *
     * @param limit the chance that nothing is shown, however many there are
     */
    public record Never(Probability limit) implements Fewest {}

    /**
     * Returns the detection by steps of a kind.
     *
     * @param step the chance that a step shows nothing, with the weight of each value that this chance may have for all steps together
     * @return the detection
     */
    public static Detection of(Distribution<Probability> step) {
        return new Detection(step);
    }

    /**
     * Returns the chance of a miss that must be asked for, so that an animal that has shown nothing is what it was tested for with at
     * most a given chance (Bayes' rule). It is assumed that an animal which is not what it is tested for never shows it.
     *
     * @param before the chance before the test, for example 2/3 for a sib of an affected animal
     * @param after the chance that may be left after it
     * @return the miss to ask {@link #fewest} for; 1 if no test is needed
     */
    public static Probability missFor(Probability before, Probability after) {
        if (before.compareTo(after) <= 0) {
            return Probability.ONE;
        }
        // before x / (before x + 1 - before) = after, where x is the miss
        Probability otherwise = after.times(before.complement());
        return otherwise.dividedBy(otherwise.plus(before.minus(after)));
    }

    /**
     * Returns what one step may show nothing with.
     *
     * @return the weight of each value that the chance may have for all steps together
     */
    public Distribution<Probability> step() {
        return step;
    }

    /**
     * Returns the chance that a number of steps show nothing.
     *
     * @param steps number of kits, litters or mates, at least 0
     * @return the chance of a miss
     * @throws IllegalArgumentException if the number is negative
     * @throws TooLargeException if the exact chance has too many digits
     */
    public Probability missed(int steps) {
        if (steps < 0) {
            throw new IllegalArgumentException("the number of steps must not be negative, but was " + steps);
        }
        require(steps);
        return Probability.of(sum(steps), weights.multiply(values.pow(steps)));
    }

    private BigInteger sum(int steps) {
        BigInteger sum = BigInteger.ZERO;
        for (Map.Entry<BigInteger, BigInteger> term : terms.entrySet()) {
            sum = sum.add(term.getValue().multiply(term.getKey().pow(steps)));
        }
        return sum;
    }

    private void require(double steps) {
        double bits = steps * values.bitLength();
        if (bits > MOST_BITS) {
            throw new TooLargeException(
                    "binary digits, for about " + Math.round(steps) + " kits, litters or mates",
                    bits,
                    MOST_BITS,
                    "allow a larger chance of a miss, or ask for fewer of them.");
        }
    }

    /**
     * Returns the chance of a miss that remains however many steps there are.
     *
     * @return the weight of those animals of which no step can show anything
     */
    public Probability limit() {
        return limit;
    }

    /**
     * Returns the smallest number of steps that show nothing with at most a given chance.
     *
     * <p>The number is estimated by floating point from the logarithms of the values, and then made certain by exact comparison on both
     * sides of it.
     *
     * @param atMost the chance of a miss that is accepted, for example 1/20
     * @return the number, or that there is none
     * @throws TooLargeException if the exact chance would have too many digits
     */
    public Fewest fewest(Probability atMost) {
        int comparison = limit.compareTo(atMost);
        boolean certain = step.outcomes().stream().allMatch(value -> value.isZero() || value.isOne());
        if (comparison > 0 || (comparison == 0 && !certain && !atMost.isOne())) {
            return new Never(limit); // at the limit itself only after infinitely many steps
        }
        if (atMost.isOne()) {
            return new Reached(0, Probability.ONE);
        }
        if (certain) {
            return new Reached(1, limit);
        }
        double estimate = estimate(atMost);
        require(estimate + 2);
        int enough = (int) Math.ceil(estimate);
        int width = 1;
        while (!isEnough(enough, atMost)) { // only if floating point erred
            enough += width;
            width *= 2;
            require(enough);
        }
        int few = Math.max(0, enough - 2);
        width = 1;
        while (few > 0 && isEnough(few, atMost)) {
            enough = few;
            few = Math.max(0, few - width);
            width *= 2;
        }
        while (enough - few > 1) { // few is too few, or 0, which is never enough
            int middle = (few + enough) >>> 1;
            if (isEnough(middle, atMost)) {
                enough = middle;
            } else {
                few = middle;
            }
        }
        return new Reached(enough, missed(enough));
    }

    private boolean isEnough(int steps, Probability atMost) {
        BigInteger missed = sum(steps).multiply(atMost.denominator());
        BigInteger accepted = weights.multiply(values.pow(steps)).multiply(atMost.numerator());
        return missed.compareTo(accepted) <= 0;
    }

    /** Where the sum of the terms that fall has come down to what the limit leaves, on a logarithmic scale. */
    private double estimate(Probability atMost) {
        double target = log(atMost.minus(limit));
        double low = 0;
        double high = 1;
        while (falling(high) > target && high < LONGEST) {
            high *= 2;
        }
        while (high - low > Math.max(1e-3, high * 1e-9)) {
            double middle = (low + high) / 2;
            if (falling(middle) > target) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    /** The logarithm of the miss above the limit after a number of steps, 1 or a fraction of it at least. */
    private double falling(double steps) {
        double sum = 0;
        double greatest = Double.NEGATIVE_INFINITY;
        for (Map.Entry<Probability, Probability> one : step.asMap().entrySet()) {
            Probability value = one.getKey();
            if (!value.isZero() && !value.isOne()) {
                double log = log(one.getValue())
                        + steps
                                * (value.toDouble() < 0.5
                                        ? log(value)
                                        : Math.log1p(-value.complement().toDouble()));
                if (log > greatest) {
                    sum = sum * Math.exp(greatest - log) + 1;
                    greatest = log;
                } else {
                    sum += Math.exp(log - greatest);
                }
            }
        }
        return greatest + Math.log(sum);
    }

    private static double log(Probability chance) {
        return log(chance.numerator()) - log(chance.denominator());
    }

    private static double log(BigInteger number) {
        int shift = Math.max(0, number.bitLength() - 1000);
        return Math.log(number.shiftRight(shift).doubleValue()) + shift * Math.log(2);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Detection that && step.equals(that.step);
    }

    @Override
    public int hashCode() {
        return step.hashCode();
    }

    /** Returns the chances of a step, as in {@code {3/4=1/2, 1=1/2}}. */
    @Override
    public String toString() {
        return step.toString();
    }
}
