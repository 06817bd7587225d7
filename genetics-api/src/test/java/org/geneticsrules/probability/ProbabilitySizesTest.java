package org.geneticsrules.probability;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import org.geneticsrules.testing.Once;
import org.junit.jupiter.api.Test;

/** Chances on both sides of the size of a long, against fractions of whole numbers of any size. */
@Once
class ProbabilitySizesTest {

    private static List<BigInteger> sizes() {
        List<BigInteger> sizes = new ArrayList<>();
        for (int bits : new int[] {0, 1, 2, 31, 32, 62, 63, 64, 100}) {
            for (int off = -1; off <= 1; off++) {
                sizes.add(BigInteger.TWO.pow(bits).add(BigInteger.valueOf(off)));
            }
        }
        sizes.add(BigInteger.valueOf(3).pow(39));
        sizes.removeIf(size -> size.signum() < 0);
        return sizes;
    }

    private static List<Probability> chances() {
        List<Probability> chances = new ArrayList<>();
        for (BigInteger up : sizes()) {
            for (BigInteger down : sizes()) {
                if (down.signum() > 0 && up.compareTo(down) <= 0) {
                    chances.add(Probability.of(up, down));
                }
            }
        }
        return chances;
    }

    @Test
    void every_chance_is_in_lowest_terms_whatever_its_size() {
        for (BigInteger up : sizes()) {
            for (BigInteger down : sizes()) {
                if (down.signum() > 0 && up.compareTo(down) <= 0) {
                    Probability chance = Probability.of(up, down);
                    assertEquals(BigInteger.ONE, chance.numerator().gcd(chance.denominator()));
                    assertEquals(
                            up.multiply(chance.denominator()),
                            chance.numerator().multiply(down));
                    BigInteger common = BigInteger.valueOf(6).pow(30);
                    assertEquals(chance, Probability.of(up.multiply(common), down.multiply(common)));
                    assertEquals(
                            chance.hashCode(),
                            Probability.of(up.multiply(common), down.multiply(common))
                                    .hashCode());
                }
            }
        }
    }

    @Test
    void arithmetic_agrees_with_fractions_of_any_size() {
        for (Probability one : chances()) {
            for (Probability other : chances()) {
                BigInteger mine = one.numerator().multiply(other.denominator());
                BigInteger theirs = other.numerator().multiply(one.denominator());
                BigInteger common = one.denominator().multiply(other.denominator());
                assertEquals(mine.compareTo(theirs), one.compareTo(other));
                assertEquals(Probability.of(one.numerator().multiply(other.numerator()), common), one.times(other));
                if (mine.add(theirs).compareTo(common) <= 0) {
                    assertEquals(Probability.of(mine.add(theirs), common), one.plus(other));
                } else {
                    assertThrows(IllegalArgumentException.class, () -> one.plus(other));
                }
                if (mine.compareTo(theirs) >= 0) {
                    assertEquals(Probability.of(mine.subtract(theirs), common), one.minus(other));
                } else {
                    assertThrows(IllegalArgumentException.class, () -> one.minus(other));
                }
            }
        }
    }
}
