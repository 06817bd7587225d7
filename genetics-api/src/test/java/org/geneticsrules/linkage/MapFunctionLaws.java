package org.geneticsrules.linkage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.geneticsrules.probability.Probability;

/** Laws of the map functions. */
class MapFunctionLaws {

    private static final Probability HALF = Probability.of(1, 2);

    /** Half of the last decimal that a converted fraction keeps. */
    private static final double ROUNDING = 0.5e-12;

    @Provide
    Arbitrary<BigDecimal> distances() {
        return Arbitraries.bigDecimals()
                .between(BigDecimal.ZERO, BigDecimal.valueOf(1300))
                .ofScale(4);
    }

    @Provide
    Arbitrary<Probability> fractions() {
        return Arbitraries.longs()
                .between(1, 1_000_000)
                .flatMap(whole -> Arbitraries.longs().between(0, whole / 2).map(part -> Probability.of(part, whole)));
    }

    /** The fraction from one series of the whole exponential, without the bounds and the squarings of the function itself. */
    private static BigDecimal series(MapFunction function, BigDecimal distance) {
        MathContext context = new MathContext(200);
        BigDecimal x = distance.multiply(new BigDecimal(function == MapFunction.HALDANE ? "0.02" : "0.04"));
        BigDecimal sum = BigDecimal.ZERO;
        BigDecimal term = BigDecimal.ONE;
        for (int n = 1; n <= 400; n++) {
            sum = sum.add(term);
            term = term.multiply(x.negate()).divide(BigDecimal.valueOf(n), context);
        }
        BigDecimal whole = function == MapFunction.HALDANE ? BigDecimal.ONE : BigDecimal.ONE.add(sum);
        return BigDecimal.ONE
                .subtract(sum)
                .divide(whole.multiply(BigDecimal.valueOf(2)), context)
                .setScale(12, RoundingMode.HALF_EVEN);
    }

    static void conversionIsCorrectlyRounded(MapFunction function, BigDecimal distance) {
        assertEquals(Probability.from(series(function, distance)), function.fraction(distance));
    }

    static void distancesAndFractionsGrowTogether(MapFunction function, BigDecimal one, BigDecimal other) {
        Probability nearer = function.fraction(one.min(other));
        Probability farther = function.fraction(one.max(other));
        assertTrue(nearer.compareTo(farther) <= 0);
        assertTrue(farther.compareTo(HALF) <= 0);
    }

    /** An error of the fraction weighs in the distance by the slope, 100 / (1 - 2r) or 100 / (1 - 4r^2). */
    static void conversionsUndoEachOther(MapFunction function, BigDecimal distance) {
        double d = distance.doubleValue();
        Probability fraction = function.fraction(distance);
        double open = 1 - 2 * fraction.toDouble();
        if (open > 1e-6) {
            assertEquals(d, function.centiMorgans(fraction), 100 * 2 * ROUNDING / open + 1e-12 * d);
        }
    }

    static void distancesAddUp(MapFunction function, BigDecimal one, BigDecimal other) {
        Probability across = function.across(function.fraction(one), function.fraction(other));
        assertEquals(function.fraction(one.add(other)).toDouble(), across.toDouble(), 4 * ROUNDING);
    }

    static void goingAcrossIsCommutativeAndAssociative(
            MapFunction function, Probability r, Probability s, Probability t) {
        assertEquals(function.across(r, s), function.across(s, r));
        assertEquals(function.across(function.across(r, s), t), function.across(r, function.across(s, t)));
        assertEquals(r, function.across(r, Probability.ZERO));
        assertEquals(HALF, function.across(r, HALF));
    }

    /** Interference leaves fewer double crossovers, which are not seen as recombination. */
    static void interferenceLeavesMoreRecombinants(BigDecimal distance) {
        Probability without = MapFunction.HALDANE.fraction(distance);
        Probability with = MapFunction.KOSAMBI.fraction(distance);
        assertTrue(without.compareTo(with) <= 0);
        assertTrue(with.toDouble() <= distance.doubleValue() / 100 + ROUNDING);
    }

    @Property(tries = 300)
    void rounding(@ForAll MapFunction function, @ForAll("distances") BigDecimal distance) {
        conversionIsCorrectlyRounded(function, distance);
    }

    @Property(tries = 300)
    void growth(
            @ForAll MapFunction function, @ForAll("distances") BigDecimal one, @ForAll("distances") BigDecimal other) {
        distancesAndFractionsGrowTogether(function, one, other);
    }

    @Property(tries = 300)
    void there_and_back(@ForAll MapFunction function, @ForAll("distances") BigDecimal distance) {
        conversionsUndoEachOther(function, distance);
    }

    @Property(tries = 300)
    void sums(
            @ForAll MapFunction function, @ForAll("distances") BigDecimal one, @ForAll("distances") BigDecimal other) {
        distancesAddUp(function, one, other);
    }

    @Property
    void across(
            @ForAll MapFunction function,
            @ForAll("fractions") Probability r,
            @ForAll("fractions") Probability s,
            @ForAll("fractions") Probability t) {
        goingAcrossIsCommutativeAndAssociative(function, r, s, t);
    }

    @Property(tries = 300)
    void interference(@ForAll("distances") BigDecimal distance) {
        interferenceLeavesMoreRecombinants(distance);
    }
}
