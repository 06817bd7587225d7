package org.geneticsrules.expression;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** The numbers and tables that flow through diagrams, held to those of the Java library. */
class NumbersTest {

    private static final BigInteger WORD = BigInteger.TWO.pow(64);

    /** Digits that carry most often: none, few, nearly all or all bits. */
    private static long digit(SplittableRandom random) {
        return switch (random.nextInt(5)) {
            case 0 -> 0;
            case 1 -> -1;
            case 2 -> Long.MIN_VALUE;
            case 3 -> random.nextInt(10);
            default -> random.nextLong();
        };
    }

    private static BigInteger unsigned(long digit) {
        return digit < 0 ? BigInteger.valueOf(digit).add(WORD) : BigInteger.valueOf(digit);
    }

    @Test
    void products_are_added_as_whole_numbers_of_any_size_are() {
        SplittableRandom random = new SplittableRandom(1);
        for (int i = 0; i < 4000; i++) {
            int fromDigits = random.nextInt(1, 4);
            int toDigits = fromDigits + 1 + random.nextInt(2);
            long[] from = random.longs(fromDigits + 1).toArray();
            long[] to = new long[toDigits + 3];
            for (int d = 0; d < fromDigits; d++) {
                from[1 + d] = digit(random);
            }
            for (int d = 0; d + 1 < toDigits; d++) { // room at the top
                to[2 + d] = digit(random);
            }
            to[0] = 17;
            to[toDigits + 2] = 19;
            long factor = digit(random);
            BigInteger expected =
                    value(to, 2, toDigits).add(value(from, 1, fromDigits).multiply(unsigned(factor)));
            if (expected.bitLength() > toDigits * 64) {
                continue;
            }
            Limbs.addProduct(to, 2, toDigits, from, 1, fromDigits, factor);
            assertEquals(expected, value(to, 2, toDigits));
            assertEquals(expected, Limbs.toBigInteger(to, 2, toDigits));
            assertEquals(expected.signum() == 0, Limbs.isZero(to, 2, toDigits));
            assertArrayEquals(new long[] {17, 0, 19}, new long[] {to[0], to[1], to[toDigits + 2]});
        }
    }

    private static BigInteger value(long[] number, int at, int digits) {
        BigInteger value = BigInteger.ZERO;
        for (int i = digits - 1; i >= 0; i--) {
            value = value.multiply(WORD).add(unsigned(number[at + i]));
        }
        return value;
    }

    @Test
    void the_upper_half_of_a_product() {
        for (long a : new long[] {0, 1, 2, -1, Long.MIN_VALUE, Long.MAX_VALUE, 0x123456789abcdefL}) {
            for (long b : new long[] {0, 1, 3, -1, -2, Long.MIN_VALUE, Long.MAX_VALUE}) {
                assertEquals(
                        unsigned(a).multiply(unsigned(b)).shiftRight(64),
                        unsigned(Limbs.high(a, b)),
                        () -> a + " times " + b);
            }
        }
    }

    @Test
    void numbers_are_written_and_read_back() {
        for (BigInteger value : List.of(
                BigInteger.ZERO,
                BigInteger.ONE,
                BigInteger.TWO.pow(63),
                WORD.subtract(BigInteger.ONE),
                WORD,
                BigInteger.TWO.pow(127).add(BigInteger.valueOf(5)),
                WORD.pow(3).subtract(BigInteger.ONE))) {
            int digits = Math.max(1, (value.bitLength() + 63) / 64);
            long[] number = {7, 7, 7, 7, 7};
            Limbs.put(value, number, 1, digits);
            assertEquals(value, Limbs.toBigInteger(number, 1, digits));
            assertEquals(7, number[0]);
            assertEquals(7, number[digits + 1]);
            assertTrue(Limbs.digits(Math.log(value.doubleValue() + 1) / Math.log(2)) >= digits, value::toString);
        }
        assertEquals(1, Limbs.digits(0));
        assertEquals(1, Limbs.digits(63.9));
        assertEquals(2, Limbs.digits(64));
        assertEquals(2, Limbs.digits(100));
        assertEquals(3, Limbs.digits(128));
    }

    @Test
    void a_table_finds_what_was_put_last_for_a_key_and_nothing_else() {
        LongTable table = new LongTable();
        Map<Long, Integer> twin = new HashMap<>();
        SplittableRandom random = new SplittableRandom(2);
        for (int i = 0; i < 3000; i++) {
            long key = LongTable.key(random.nextInt(-20, 20), random.nextInt(-20, 20));
            int value = random.nextInt();
            if (value != LongTable.NONE) {
                table.put(key, value);
                twin.put(key, value);
            }
            long asked = LongTable.key(random.nextInt(-25, 25), random.nextInt(-25, 25));
            assertEquals(twin.getOrDefault(asked, LongTable.NONE), table.get(asked));
            assertEquals(twin.size(), table.size());
        }
        assertNotEquals(LongTable.key(1, -1), LongTable.key(0, -1));
        assertNotEquals(LongTable.key(-1, 0), LongTable.key(0, 0));
    }

    @Test
    void weights_are_kept_in_lowest_terms() {
        LocusWeights weights = LocusWeights.of(6, 0, 2);
        assertArrayEquals(new long[] {3, 0, 1}, weights.shares);
        assertEquals(4, weights.total);
        assertEquals("3 : 0 : 1", weights.toString());
        assertEquals(LocusWeights.of(3, 0, 1), weights);
        assertEquals(LocusWeights.of(3, 0, 1).hashCode(), weights.hashCode());
        assertNotEquals(LocusWeights.of(3, 1, 0), weights);
        assertFalse(weights.equals(null));
        assertThrows(IllegalArgumentException.class, () -> LocusWeights.of(1, -1));
        assertThrows(IllegalArgumentException.class, () -> LocusWeights.of(0, 0));
        assertThrows(ArithmeticException.class, () -> LocusWeights.of(Long.MAX_VALUE, 1));
        assertEquals(1, LocusWeights.of(Long.MAX_VALUE).total);
    }

    private static Nodes nodes(int most, int... widths) {
        return new Nodes(widths, most, "test", "ask for less.");
    }

    /** The value at the end of the path for a choice of values. */
    private static int at(Nodes nodes, int root, int... values) {
        int node = root;
        while (node >= 0) {
            node = nodes.child(node, values[nodes.level(node)]);
        }
        return Nodes.value(node);
    }

    @Test
    void diagrams_combine_as_the_functions_they_stand_for() {
        SplittableRandom random = new SplittableRandom(3);
        int[] widths = {2, 3, 2, 4};
        for (int i = 0; i < 60; i++) {
            Nodes nodes = nodes(1000, widths);
            int[] one = random.ints(48, 0, 3).toArray();
            int[] other = random.ints(48, 0, 2).toArray();
            int a = diagram(nodes, one, 0, 0);
            int b = diagram(nodes, other, 0, 0);
            int sum = nodes.combine(a, b, (x, y) -> 10 * x + y);
            int mapped = nodes.map(a, x -> x / 2);
            int[] expected = new int[48];
            for (int place = 0; place < 48; place++) {
                int[] values = {place / 24, place / 8 % 3, place / 4 % 2, place % 4};
                expected[place] = 10 * one[place] + other[place];
                assertEquals(expected[place], at(nodes, sum, values));
                assertEquals(one[place] / 2, at(nodes, mapped, values));
            }
            assertArrayEquals(Arrays.stream(expected).distinct().sorted().toArray(), nodes.leaves(sum));
            assertEquals(a, diagram(nodes, one, 0, 0), "the same function is the same diagram");
        }
    }

    /** The diagram of a table of values, the last level running fastest. */
    private static int diagram(Nodes nodes, int[] table, int level, int offset) {
        if (level == 4) {
            return Nodes.leaf(table[offset]);
        }
        int below = 1;
        for (int l = level + 1; l < 4; l++) {
            below *= nodes.width(l);
        }
        int[] next = new int[nodes.width(level)];
        for (int value = 0; value < next.length; value++) {
            next[value] = diagram(nodes, table, level + 1, offset + value * below);
        }
        return nodes.node(level, next);
    }

    @Test
    void a_test_that_makes_no_difference_is_left_out() {
        Nodes nodes = nodes(10, 2, 2);
        int last = nodes.test(1, value -> value);
        assertEquals(last, nodes.node(0, new int[] {last, last}));
        assertEquals(1, nodes.count());
        assertEquals(1, nodes.level(last));
        assertEquals(Integer.MAX_VALUE, nodes.level(Nodes.leaf(0)));
    }

    @Test
    void a_diagram_too_large_names_what_took_most_of_the_work() {
        Nodes nodes = nodes(40, 2, 2, 2, 2, 2, 2, 2, 2);
        nodes.charge("/small");
        nodes.combine(nodes.test(0, value -> value), nodes.test(1, value -> value), Math::max);
        nodes.charge("/large");
        RuntimeException refused = assertThrows(RuntimeException.class, () -> {
            int sum = Nodes.leaf(0);
            for (int level = 0; level < 8; level++) {
                int weight = 1 << level;
                sum = nodes.combine(sum, nodes.test(level, value -> value * weight), Integer::sum);
            }
        });
        assertTrue(
                refused.getMessage()
                        .contains("most of them come of combining /large, /small with the rest: ask for less."),
                refused.getMessage());
    }

    /** Doses of three genes, 0 to 2 of each: sums 0 to 6 in the ratio 1 : 3 : 6 : 7 : 6 : 3 : 1 of 27 (by counting). */
    @Test
    void sums_of_doses_take_no_more_nodes_than_sums() {
        Nodes nodes = nodes(1000, 3, 3, 3);
        SortedMap<Integer, int[]> doses = new TreeMap<>();
        for (int level = 0; level < 3; level++) {
            doses.put(level, new int[] {0, 1, 2});
        }
        int root = new PartialSums(nodes, doses, sum -> sum).diagram(5);
        int[] counts = new int[7];
        for (int place = 0; place < 27; place++) {
            counts[at(nodes, root, place / 9, place / 3 % 3, place % 3) - 5]++;
        }
        assertArrayEquals(new int[] {1, 3, 6, 7, 6, 3, 1}, counts);
        assertEquals(1 + 3 + 5, nodes.count());
        assertThrows(
                ArithmeticException.class,
                () -> new PartialSums(nodes, doses, sum -> 0).diagram(Integer.MAX_VALUE - 1));
    }
}
