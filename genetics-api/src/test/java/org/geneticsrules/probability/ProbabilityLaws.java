package org.geneticsrules.probability;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

/** Laws of exact chances: those of a field as far as results stay between 0 and 1, of the canonical form, and of the order. */
class ProbabilityLaws {

    @Provide
    Arbitrary<Probability> chances() {
        return Chances.chances();
    }

    private static Probability half(Probability p) {
        return p.times(Probability.of(1, 2));
    }

    static void additionIsCommutativeAndAssociative(Probability a, Probability b, Probability c) {
        // Quarters of three chances stay below 1 together.
        Probability p = half(half(a));
        Probability q = half(half(b));
        Probability r = half(half(c));
        assertEquals(p.plus(q), q.plus(p));
        assertEquals(p.plus(q).plus(r), p.plus(q.plus(r)));
        assertEquals(p, p.plus(Probability.ZERO));
        assertEquals(p, p.plus(q).minus(q));
    }

    static void multiplicationIsCommutativeAssociativeAndDistributive(Probability a, Probability b, Probability c) {
        assertEquals(a.times(b), b.times(a));
        assertEquals(a.times(b).times(c), a.times(b.times(c)));
        assertEquals(a, a.times(Probability.ONE));
        assertEquals(Probability.ZERO, a.times(Probability.ZERO));
        assertEquals(a.times(half(b).plus(half(c))), a.times(half(b)).plus(a.times(half(c))));
    }

    static void divisionUndoesMultiplication(Probability a, Probability b) {
        if (b.isZero()) {
            assertThrows(IllegalArgumentException.class, () -> a.times(b).dividedBy(b));
        } else {
            assertEquals(a, a.times(b).dividedBy(b));
        }
    }

    static void complementIsAnInvolution(Probability a) {
        assertEquals(a, a.complement().complement());
        assertEquals(Probability.ONE, a.plus(a.complement()));
        assertEquals(a.isZero(), a.complement().isOne());
    }

    static void theFormIsCanonical(Probability a, int factor) {
        assertTrue(a.denominator().signum() > 0);
        assertEquals(BigInteger.ONE, a.numerator().gcd(a.denominator()));
        BigInteger k = BigInteger.valueOf(factor);
        Probability same =
                Probability.of(a.numerator().multiply(k), a.denominator().multiply(k));
        assertEquals(a, same);
        assertEquals(a.hashCode(), same.hashCode());
        assertEquals(a.toString(), same.toString());
    }

    static void parsingReadsBackWhatIsPrinted(Probability a) {
        assertEquals(a, Probability.parse(a.toString()));
        assertEquals(a, Probability.parse(a.numerator() + " / " + a.denominator()));
    }

    static void theOrderIsTotalAndThatOfTheNumbers(Probability a, Probability b, Probability c) {
        assertEquals(Integer.signum(a.compareTo(b)), -Integer.signum(b.compareTo(a)));
        assertEquals(a.equals(b), a.compareTo(b) == 0);
        if (a.compareTo(b) <= 0) {
            assertEquals(b, a.plus(b.minus(a)));
            assertTrue(a.times(c).compareTo(b.times(c)) <= 0);
            assertTrue(b.compareTo(c) > 0 || a.compareTo(c) <= 0);
        } else {
            assertThrows(IllegalArgumentException.class, () -> b.minus(a));
        }
    }

    static void repeatedTrialsMultiply(Probability a, int n) {
        Probability all = Probability.ONE;
        Probability none = Probability.ONE;
        for (int i = 0; i < n; i++) {
            all = all.times(a);
            none = none.times(a.complement());
        }
        assertEquals(all, a.pow(n));
        assertEquals(none.complement(), a.atLeastOnceIn(n));
        assertFalse(n > 0 && a.atLeastOnceIn(n).compareTo(a) < 0);
    }

    static void theDoubleIsNear(Probability a) {
        double nearest = a.numerator().doubleValue() / a.denominator().doubleValue();
        assertEquals(nearest, a.toDouble(), 1e-15);
    }

    @Property
    void addition(
            @ForAll("chances") Probability a, @ForAll("chances") Probability b, @ForAll("chances") Probability c) {
        additionIsCommutativeAndAssociative(a, b, c);
    }

    @Property
    void multiplication(
            @ForAll("chances") Probability a, @ForAll("chances") Probability b, @ForAll("chances") Probability c) {
        multiplicationIsCommutativeAssociativeAndDistributive(a, b, c);
    }

    @Property
    void division(@ForAll("chances") Probability a, @ForAll("chances") Probability b) {
        divisionUndoesMultiplication(a, b);
    }

    @Property
    void complement(@ForAll("chances") Probability a) {
        complementIsAnInvolution(a);
    }

    @Property
    void canonical_form(@ForAll("chances") Probability a, @ForAll @IntRange(min = 1, max = 1000) int factor) {
        theFormIsCanonical(a, factor);
    }

    @Property
    void text(@ForAll("chances") Probability a) {
        parsingReadsBackWhatIsPrinted(a);
    }

    @Property
    void order(@ForAll("chances") Probability a, @ForAll("chances") Probability b, @ForAll("chances") Probability c) {
        theOrderIsTotalAndThatOfTheNumbers(a, b, c);
    }

    @Property
    void trials(@ForAll("chances") Probability a, @ForAll @IntRange(min = 0, max = 12) int n) {
        repeatedTrialsMultiply(a, n);
    }

    @Property
    void nearest_double(@ForAll("chances") Probability a) {
        theDoubleIsNear(a);
    }
}
