package org.geneticsrules.expression;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** What is passed on along a chromosome, listed by hand. */
class ChainTest {

    static BigInteger[] row(long... numbers) {
        BigInteger[] row = new BigInteger[numbers.length];
        for (int i = 0; i < row.length; i++) {
            row[i] = BigInteger.valueOf(numbers[i]);
        }
        return row;
    }

    /**
     * Gametes of a parent {@code A B C / a b c}: in each interval the other strand with 1/10 and 1/4. On the first strand every locus
     * shows its first value.
     */
    static Chain gametes() {
        return gametesOf("A", "B", "C");
    }

    static Chain gametesOf(String... loci) {
        BigInteger[][] shown = {row(1, 0), row(0, 1)};
        return Chain.of(
                List.of(loci),
                row(1, 1),
                new BigInteger[][][] {{row(9, 1), row(1, 9)}, {row(3, 1), row(1, 3)}},
                new BigInteger[][][] {shown, shown, shown});
    }

    /** By hand: no crossover 27 of 40, one in the first interval 3, in the second 9, in both 1; half of each on either strand. */
    @Test
    void gametes_of_three_linked_loci() {
        Map<List<Integer>, Integer> listed = new LinkedHashMap<>();
        gametes()
                .each((values, weight) -> listed.put(List.of(values[0], values[1], values[2]), weight.intValueExact()));
        assertEquals(
                Map.of(
                        List.of(0, 0, 0), 27,
                        List.of(0, 0, 1), 9,
                        List.of(0, 1, 1), 3,
                        List.of(0, 1, 0), 1,
                        List.of(1, 1, 1), 27,
                        List.of(1, 1, 0), 9,
                        List.of(1, 0, 0), 3,
                        List.of(1, 0, 1), 1),
                listed);
        assertEquals(Probability.of(1, 80), gametes().chance((locus, value) -> value == (locus == 1 ? 1 : 0)));
        assertEquals(Probability.of(1, 2), gametes().chance((locus, value) -> locus != 1 || value == 1));
        assertEquals(Probability.ONE, gametes().chance((locus, value) -> true));
        assertEquals(Probability.ZERO, gametes().chance((locus, value) -> locus != 2));
    }

    /** Over B the outer loci are 1/10 x 3/4 + 9/10 x 1/4 = 3/10 apart. */
    @Test
    void loci_that_are_not_asked_for_are_passed_over() {
        Map<List<Integer>, BigInteger> outer = new LinkedHashMap<>();
        gametes()
                .restrictedTo(Set.of("A", "C"))
                .each((values, weight) -> outer.put(List.of(values[0], values[1]), weight));
        assertEquals(
                Distribution.of(Map.of(
                        List.of(0, 0), Probability.of(7, 20),
                        List.of(0, 1), Probability.of(3, 20),
                        List.of(1, 0), Probability.of(3, 20),
                        List.of(1, 1), Probability.of(7, 20))),
                Distribution.ofWeights(outer));
        for (String alone : gametes().loci()) {
            Chain one = gametes().restrictedTo(Set.of(alone));
            assertEquals(List.of(alone), one.loci());
            assertEquals(Probability.of(1, 2), one.chance((locus, value) -> value == 0));
        }
        assertEquals(gametes(), gametes().restrictedTo(Set.of("A", "B", "C", "D")));
    }

    @Test
    void chains_are_compared_by_what_they_hold() {
        assertEquals(gametes(), gametes());
        assertEquals(gametes().hashCode(), gametes().hashCode());
        assertNotEquals(gametes(), gametes().restrictedTo(Set.of("A", "B")));
        assertNotEquals(Chain.single("A", row(1, 3)), Chain.single("A", row(3, 1)));
        assertNotEquals(Chain.single("A", row(1, 3)), Chain.single("B", row(1, 3)));
        assertEquals("[A, B, C] in 2 states", gametes().toString());
        assertThrows(
                IllegalArgumentException.class,
                () -> Chain.of(List.of("A", "B"), row(1), new BigInteger[0][][], new BigInteger[2][][]));
        assertThrows(
                IllegalArgumentException.class,
                () -> Chain.of(List.of("A"), row(1), new BigInteger[0][][], new BigInteger[2][][]));
    }

    @Test
    void a_law_has_each_locus_in_one_chain() {
        KitLaw law = KitLaw.of(Sex.MALE, List.of(gametes(), Chain.single("D", row(1, 1))));
        assertEquals(List.of("A", "B", "C", "D"), List.copyOf(law.loci()));
        assertEquals(Sex.MALE, law.sex());
        assertEquals(gametes(), law.chain("B").orElseThrow());
        assertFalse(law.chain("E").isPresent());
        assertTrue(law.toString().startsWith("male "), law.toString());
        IllegalArgumentException refused = assertThrows(
                IllegalArgumentException.class,
                () -> KitLaw.of(Sex.MALE, List.of(gametes(), Chain.single("B", row(1, 1)))));
        assertTrue(refused.getMessage().startsWith("locus B is in two of the chains"), refused.getMessage());
    }
}
