package org.geneticsrules.linkage;

import com.google.common.collect.ImmutableList;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.geneticsrules.probability.Probability;

/**
 * How a distance on a genetic map turns into a recombination fraction.
 *
 * <p>Map distances add up along a chromosome, recombination fractions do not. Which fraction belongs to a distance depends on how
 * crossovers keep one another away, and each function states one view of that. A model keeps fractions; a distance is converted once,
 * to {@value #DECIMALS} decimals.
 *
 * <pre>{@code
 * MapFunction.HALDANE.fraction(new BigDecimal("11.1572"));   // 0.1000002..., 12 decimals
 * MapFunction.HALDANE.centiMorgans(Probability.of(1, 10));   // 11.157177565710485
 * }</pre>
 */
public enum MapFunction {
    /** Crossovers do not interfere: {@code r = (1 - exp(-d/50)) / 2} (Haldane 1919). */
    HALDANE(50) {
        @Override
        BigDecimal shortfall(BigDecimal exponential, MathContext rounding) {
            return BigDecimal.ONE.divide(exponential.multiply(TWO), rounding);
        }

        @Override
        public double centiMorgans(Probability fraction) {
            return -50 * logOfOneLessTwice(require(fraction));
        }

        @Override
        public Probability across(Probability first, Probability second) {
            return require(first).times(require(second).complement()).plus(second.times(first.complement()));
        }
    },
    /** Interference falls off as the distance grows: {@code r = tanh(d/50) / 2} (Kosambi 1944). */
    KOSAMBI(25) {
        @Override
        BigDecimal shortfall(BigDecimal exponential, MathContext rounding) {
            return BigDecimal.ONE.divide(exponential.add(BigDecimal.ONE), rounding);
        }

        @Override
        public double centiMorgans(Probability fraction) {
            return 25 * (StrictMath.log1p(2 * require(fraction).toDouble()) - logOfOneLessTwice(fraction));
        }

        @Override
        public Probability across(Probability first, Probability second) {
            BigInteger a = require(first).numerator();
            BigInteger b = first.denominator();
            BigInteger c = require(second).numerator();
            BigInteger d = second.denominator();
            return Probability.of(
                    a.multiply(d).add(c.multiply(b)),
                    b.multiply(d).add(a.multiply(c).shiftLeft(2)));
        }
    };

    /** Decimals of a fraction that was converted from a distance. */
    public static final int DECIMALS = 12;

    private static final Probability HALF = Probability.of(1, 2);
    private static final BigDecimal TWO = BigDecimal.valueOf(2);

    /** From this distance on, a fraction falls short of 1/2 by far less than the last decimal: e^-60 is below 10^-26. */
    private static final BigDecimal FAR = BigDecimal.valueOf(3000);

    /** Up to this distance, a fraction, which is at most a hundredth of it, rounds to 0. */
    private static final BigDecimal NEAR = new BigDecimal("1e-11");

    /** Squarings after the series: they make its argument at most 120 / 2^10. */
    private static final int SQUARINGS = 10;

    private final BigDecimal perCentiMorgan;

    MapFunction(int unit) {
        this.perCentiMorgan = BigDecimal.ONE.divide(BigDecimal.valueOf(unit)); // 0.02 or 0.04, exactly
    }

    /**
     * Returns the words of all map functions.
     *
     * @return {@code haldane}, {@code kosambi}
     */
    public static List<String> words() {
        return Stream.of(values()).map(MapFunction::word).collect(ImmutableList.toImmutableList());
    }

    /**
     * Finds a map function by its word.
     *
     * @param word a word
     * @return the function, or empty if the word names none
     */
    public static Optional<MapFunction> of(String word) {
        int position = words().indexOf(word);
        return position < 0 ? Optional.empty() : Optional.of(values()[position]);
    }

    /**
     * Returns the word for this map function in documents.
     *
     * @return {@code haldane} or {@code kosambi}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * Returns the recombination fraction of two loci.
     *
     * @param centiMorgans their distance on the map, at least 0
     * @return the fraction, from 0 to 1/2, correctly rounded to {@value #DECIMALS} decimals, half to even
     * @throws IllegalArgumentException if the distance is negative
     */
    public Probability fraction(BigDecimal centiMorgans) {
        if (centiMorgans.signum() < 0) {
            throw new IllegalArgumentException("a map distance is at least 0 centimorgans, but was " + centiMorgans);
        }
        if (centiMorgans.compareTo(NEAR) <= 0) {
            return Probability.ZERO;
        }
        if (centiMorgans.compareTo(FAR) >= 0) {
            return HALF;
        }
        BigDecimal exponent = centiMorgans.multiply(perCentiMorgan);
        // The exponential of a fraction other than 0 is no fraction, so the true value lies on no rounding edge, and at
        // some
        // precision both bounds fall on one side of every edge.
        for (int digits = 40; ; digits *= 2) {
            BigDecimal low = bound(exponent, digits, RoundingMode.FLOOR);
            if (low.compareTo(bound(exponent, digits, RoundingMode.CEILING)) == 0) {
                return Probability.from(low);
            }
        }
    }

    /** A bound of the fraction from below or above, rounded to the decimals kept. */
    private BigDecimal bound(BigDecimal exponent, int digits, RoundingMode direction) {
        RoundingMode opposite = direction == RoundingMode.FLOOR ? RoundingMode.CEILING : RoundingMode.FLOOR;
        BigDecimal exponential = exponential(exponent, new MathContext(digits, direction));
        BigDecimal fraction = new BigDecimal("0.5").subtract(shortfall(exponential, new MathContext(digits, opposite)));
        return fraction.setScale(DECIMALS, RoundingMode.HALF_EVEN);
    }

    /** A bound of e^x from the side to which the context rounds; 0 < x < 120. */
    private static BigDecimal exponential(BigDecimal x, MathContext context) {
        BigDecimal reduced = x.divide(BigDecimal.valueOf(1 << SQUARINGS), context);
        BigDecimal smallest = BigDecimal.ONE.movePointLeft(context.getPrecision() + 5);
        BigDecimal term = BigDecimal.ONE;
        BigDecimal sum = BigDecimal.ONE;
        for (int n = 1; term.compareTo(smallest) > 0; n++) {
            term = term.multiply(reduced).divide(BigDecimal.valueOf(n), context);
            sum = sum.add(term, context);
        }
        if (context.getRoundingMode() == RoundingMode.CEILING) {
            sum = sum.add(
                    term, context); // each further term is below half of the one before, so all together below the last
        }
        for (int i = 0; i < SQUARINGS; i++) {
            sum = sum.multiply(sum, context);
        }
        return sum;
    }

    /** By how much the fraction falls short of 1/2, where the exponential of the distance is known. */
    abstract BigDecimal shortfall(BigDecimal exponential, MathContext rounding);

    /**
     * Returns the distance of two loci on the map.
     *
     * @param fraction their recombination fraction, from 0 to 1/2
     * @return the distance in centimorgans, within a few units in the last place; infinite for 1/2
     * @throws IllegalArgumentException if the fraction is more than 1/2
     */
    public abstract double centiMorgans(Probability fraction);

    /**
     * Returns the fraction between the outer two of three loci whose neighbouring distances add up on this function's map: {@code r + s
     * - 2rs} for {@link #HALDANE}, {@code (r + s) / (1 + 4rs)} for {@link #KOSAMBI}.
     *
     * @param first fraction between the first and the middle locus, from 0 to 1/2
     * @param second fraction between the middle and the last locus, from 0 to 1/2
     * @return the exact fraction, from 0 to 1/2
     * @throws IllegalArgumentException if a fraction is more than 1/2
     */
    public abstract Probability across(Probability first, Probability second);

    /** ln(1 - 2r), taken where the logarithm loses no digits. */
    private static double logOfOneLessTwice(Probability fraction) {
        return fraction.compareTo(Probability.of(1, 4)) < 0
                ? StrictMath.log1p(-2 * fraction.toDouble())
                : StrictMath.log(fraction.complement().minus(fraction).toDouble());
    }

    private static Probability require(Probability fraction) {
        if (fraction.compareTo(HALF) > 0) {
            throw new IllegalArgumentException("a recombination fraction is from 0 to 1/2, but was " + fraction);
        }
        return fraction;
    }
}
