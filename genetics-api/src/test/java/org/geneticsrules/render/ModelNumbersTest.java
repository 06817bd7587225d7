package org.geneticsrules.render;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class ModelNumbersTest {

    private static final double NONE = Double.NEGATIVE_INFINITY;

    @Test
    void few_models_stand_in_their_order() {
        assertEquals("1. -3.0000, 2. -1.5000", ModelNumbers.logs(List.of(-3.0, -1.5), m -> true, "excluded"));
        assertEquals(
                "1. excluded, 2. nothing more, 3. -1.0000, 4. -1.0000, 5. -2.0000, 6. -2.0000",
                ModelNumbers.logs(List.of(NONE, NONE, -1.0, -1.0, -2.0, -2.0), m -> m != 1, "excluded"));
    }

    /** What differs by rounding alone is the same, and models keep their order in it. */
    @Test
    void many_are_sorted_by_what_they_give() {
        assertEquals(
                "-1.0000 under 3; -2.0000 under 1, 4, 5; excluded under 2, 7; nothing more under 6",
                ModelNumbers.logs(
                        List.of(-2.00000000001, NONE, -1.0, -2.0, -2.0, -9.0, NONE), m -> m != 5, "excluded"));
    }

    @Test
    void more_than_a_line_bears_are_counted() {
        assertEquals(
                "-1.0000 under 1; -2.0000 under 2; -3.0000 under 3; -4.0000 under 4; -5.0000 under 5;"
                        + " 3 models more, down to -7.0000",
                ModelNumbers.logs(List.of(-1.0, -2.0, -3.0, -4.0, -5.0, -6.0, -7.0, -7.0), m -> true, "excluded"));
        assertEquals(
                "-1.0000 under 1; -2.0000 under 2; -3.0000 under 3; -4.0000 under 4; -5.0000 under 5; -6.0000 under 6, 7",
                ModelNumbers.logs(List.of(-1.0, -2.0, -3.0, -4.0, -5.0, -6.0, -6.0), m -> true, "excluded"));
        assertEquals(
                "-1.0000 under 1, 2, 3, 4, 5, 6 and 2 more",
                ModelNumbers.logs(List.of(-1.0, -1.0, -1.0, -1.0, -1.0, -1.0, -1.0, -1.0), m -> true, "excluded"));
    }
}
