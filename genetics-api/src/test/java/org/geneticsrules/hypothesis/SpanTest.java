package org.geneticsrules.hypothesis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.Arrays;
import org.geneticsrules.problem.TooLargeException;
import org.junit.jupiter.api.Test;

/** Elimination without fractions, and the work it refuses. */
class SpanTest {

    private static BigInteger[] vector(long... entries) {
        return Arrays.stream(entries).mapToObj(BigInteger::valueOf).toArray(BigInteger[]::new);
    }

    @Test
    void a_sum_of_multiples_adds_nothing() {
        Span span = new Span(3, new Span.Work());
        assertTrue(span.add(vector(2, 4, 6)));
        assertTrue(span.add(vector(0, 3, 1)));
        assertFalse(span.add(vector(2, 7, 7)));
        assertFalse(span.add(vector(0, 0, 0)));
        assertFalse(span.isFull());
        assertTrue(span.add(vector(0, 0, 5)));
        assertTrue(span.isFull());
    }

    /** Each vector is a million numbers long, and each but the first costs as many steps: the 40th step of a million is the last. */
    @Test
    void more_steps_than_the_bound_are_refused_with_their_number_and_what_to_ask() {
        int columns = 1_000_000;
        BigInteger[] one = new BigInteger[columns];
        Arrays.fill(one, BigInteger.ZERO);
        one[0] = BigInteger.ONE;
        Span.Work work = new Span.Work();
        Span first = new Span(columns, work);
        Span second = new Span(columns, work);
        assertTrue(first.add(one));
        assertTrue(second.add(one));
        for (int i = 0; i < 20; i++) {
            assertFalse(first.add(one));
            assertFalse(second.add(one)); // the bound is on what all spans of one question do together
        }
        TooLargeException refused = assertThrows(TooLargeException.class, () -> first.add(one));
        assertEquals(40_000_000, refused.limit());
        assertEquals(41_000_000, refused.estimate());
        assertTrue(refused.getMessage().contains("steps of elimination"), refused.getMessage());
        assertTrue(refused.getMessage().contains("ask about fewer traits"), refused.getMessage());
        Span fresh = new Span(columns, new Span.Work());
        assertTrue(fresh.add(one));
        assertFalse(fresh.add(one));
    }
}
