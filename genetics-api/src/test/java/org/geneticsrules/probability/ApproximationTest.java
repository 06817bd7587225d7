package org.geneticsrules.probability;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Chances in floating point, each times a power of two, held to what is worked out by hand. */
class ApproximationTest {

    private static final double LN2 = Math.log(2);
    private static final Outcomes<String> HUES = Outcomes.of(List.of("black", "blue", "none"));

    private static Approximation<String> of(double black, double blue, double none, double missing) {
        return Approximation.of(HUES, new double[] {black, blue, none, missing}, new int[4], 1e-15);
    }

    private static Approximation<String> scaled(int black, int blue, int none, int missing) {
        return Approximation.of(HUES, new double[] {1, 1, 1, 1}, new int[] {black, blue, none, missing}, 0x1p-50);
    }

    @Test
    void chances_are_as_given() {
        Approximation<String> close = of(0.5, 0, 0.25, 0.25);
        assertEquals(List.of("black", "none"), close.outcomes());
        assertTrue(close.isPossible("black"));
        assertFalse(close.isPossible("blue"));
        assertFalse(close.isPossible("green"));
        assertEquals(0.5, close.chance("black"));
        assertEquals(0, close.chance("blue"));
        assertEquals(0, close.chance("green"));
        assertEquals(-LN2, close.log("black"), 1e-15);
        assertEquals(Double.NEGATIVE_INFINITY, close.log("blue"));
        assertEquals(Double.NEGATIVE_INFINITY, close.log("green"));
        assertEquals(0.25, close.missing());
        assertEquals(1e-15, close.relativeError());
        assertEquals("{black=0.5, none=0.25}", close.toString());
    }

    @Test
    void one_chance_and_one_power_are_needed_for_each_outcome_and_for_what_is_missing() {
        IllegalArgumentException refused = assertThrows(
                IllegalArgumentException.class, () -> Approximation.of(HUES, new double[3], new int[4], 0));
        assertEquals("expected 4 chances and powers, but found 3 and 4", refused.getMessage());
        assertThrows(IllegalArgumentException.class, () -> Approximation.of(HUES, new double[4], new int[5], 0));
    }

    /** A half, an eighth and two to the minus two thousand, which no double holds. */
    @Test
    void what_is_too_small_for_a_number_is_possible() {
        Approximation<String> close = scaled(-1, -2000, -3, -1);
        assertEquals(0.5, close.chance("black"));
        assertEquals(0, close.chance("blue"));
        assertTrue(close.isPossible("blue"));
        assertEquals(-2000 * LN2, close.log("blue"), 1e-9);
        assertEquals(0.125, close.chance("none"));
        assertEquals(0.5, close.missing());
        Approximation<String> tiny =
                Approximation.of(HUES, new double[] {0x1p-1000, 3 * 0x1p-300, 1, 0}, new int[] {-500, 10, 0, 0}, 0);
        assertEquals(-1500 * LN2, tiny.log("black"), 1e-9);
        assertEquals(Math.log(3) - 290 * LN2, tiny.log("blue"), 1e-9);
        assertEquals(3 * 0x1p-290, tiny.chance("blue"));
    }

    /** Of those counted: 1/2 and 1/4 of 3/4 are 2/3 and 1/3. */
    @Test
    void what_is_missing_is_left_out_where_it_is_not_counted() {
        Approximation<String> counted = of(0.5, 0, 0.25, 0.25).given().orElseThrow();
        assertEquals(2.0 / 3, counted.chance("black"), 1e-15);
        assertEquals(1.0 / 3, counted.chance("none"), 1e-15);
        assertFalse(counted.isPossible("blue"));
        assertEquals(0, counted.missing());
        assertTrue(counted.relativeError() > 2e-15 && counted.relativeError() < 4e-15, counted::toString);
        Approximation<String> whole = of(0.5, 0.25, 0.25, 0);
        assertEquals(Optional.of(whole), whole.given());
        assertEquals(Optional.empty(), of(0, 0, 0, 1).given());
        // of very little there are still shares: 2, 1 and 1 of 4
        Approximation<String> little = scaled(-1999, -2000, -2000, 0).given().orElseThrow();
        assertEquals(0.5, little.chance("black"));
        assertEquals(0.25, little.chance("blue"));
        assertEquals(0.25, little.chance("none"));
        // whichever of two is greater comes first or last
        Approximation<String> rising = scaled(-2000, -1999, -1998, 0).given().orElseThrow();
        assertEquals(1.0 / 7, rising.chance("black"), 1e-15);
        assertEquals(2.0 / 7, rising.chance("blue"), 1e-15);
        assertEquals(4.0 / 7, rising.chance("none"), 1e-15);
    }

    /** Three parts of (1/2, 0, 1/2) and one of (0, 1/4, 3/4): 3/8, 1/16 and 9/16. */
    @Test
    void a_mixture_is_the_mean_of_its_parts() {
        Approximation.Mixture<String> mixture = new Approximation.Mixture<>(HUES);
        assertEquals(Optional.empty(), mixture.build());
        mixture.add(of(0.5, 0, 0.5, 0), BigInteger.valueOf(3));
        mixture.add(of(1, 0, 0, 0), BigInteger.ZERO);
        mixture.add(of(0, 0.25, 0.75, 0), BigInteger.ONE);
        Approximation<String> mean = mixture.build().orElseThrow();
        assertEquals(0.375, mean.chance("black"), 1e-15);
        assertEquals(0.0625, mean.chance("blue"), 1e-15);
        assertEquals(0.5625, mean.chance("none"), 1e-15);
        assertEquals(0, mean.missing());
        assertTrue(mean.relativeError() > 1e-15 && mean.relativeError() < 3e-15, mean::toString);
        Approximation.Mixture<String> none = new Approximation.Mixture<>(HUES);
        none.add(of(1, 0, 0, 0), BigInteger.ZERO);
        assertEquals(Optional.empty(), none.build());
    }

    /** Weights of any size: 2^2000 and 3 x 2^2000 are as one to three. */
    @Test
    void a_mixture_takes_weights_that_no_double_holds() {
        Approximation.Mixture<String> mixture = new Approximation.Mixture<>(HUES);
        BigInteger huge = BigInteger.TWO.pow(2000);
        mixture.add(of(1, 0, 0, 0), huge);
        mixture.add(of(0, 1, 0, 0), huge.multiply(BigInteger.valueOf(3)));
        mixture.add(of(0, 0, 1, 0), BigInteger.ONE);
        Approximation<String> mean = mixture.build().orElseThrow();
        assertEquals(0.25, mean.chance("black"), 1e-15);
        assertEquals(0.75, mean.chance("blue"), 1e-15);
        assertEquals(0, mean.chance("none"));
        assertTrue(mean.isPossible("none"));
        assertEquals(-2002 * LN2, mean.log("none"), 1e-9);
    }

    @Test
    void a_mixture_is_of_the_same_outcomes() {
        Approximation.Mixture<String> mixture =
                new Approximation.Mixture<>(Outcomes.of(List.of("black", "blue", "none")));
        assertThrows(IllegalArgumentException.class, () -> mixture.add(of(1, 0, 0, 0), BigInteger.ONE));
    }

    @Test
    void shared_outcomes_are_gone_through_without_those_of_weight_0() {
        StringBuilder read = new StringBuilder();
        Distribution.ofWeights(HUES, new long[] {9, 0, 7})
                .asMap()
                .forEach((hue, chance) ->
                        read.append(hue).append(' ').append(chance).append("; "));
        assertEquals("black 9/16; none 7/16; ", read.toString());
    }
}
