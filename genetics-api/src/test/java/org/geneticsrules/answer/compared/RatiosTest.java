package org.geneticsrules.answer.compared;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class RatiosTest {

    private static String ratio(double number) {
        return Ratios.of(Math.log(number));
    }

    /** A ratio is cut off and not rounded where a bar is near: 19.99 is not 20. */
    @Test
    void a_ratio_has_as_many_digits_as_say_something() {
        assertEquals("1.00 : 1", ratio(1));
        assertEquals("2.67 : 1", ratio(8.0 / 3));
        assertEquals("19.9 : 1", ratio(19.99));
        assertEquals("999.9 : 1", ratio(999.99));
        assertEquals("2483 : 1", ratio(2483.7));
        assertEquals("about 3 x 10^12 : 1", ratio(3.9e12));
        assertEquals("about 9 x 10^400 : 1", Ratios.of(400 * Math.log(10) + Math.log(9.5)));
        assertEquals("beyond any ratio", Ratios.of(Double.POSITIVE_INFINITY));
    }

    @Test
    void a_chance_has_two_digits_that_count() {
        assertEquals("0", Ratios.chance(0));
        assertEquals("1.00", Ratios.chance(1));
        assertEquals("1.00", Ratios.chance(0.9996));
        assertEquals("0.48", Ratios.chance(0.4831));
        assertEquals("0.050", Ratios.chance(0.05));
        assertEquals("0.0012", Ratios.chance(0.00123));
        assertEquals("2.4e-05", Ratios.chance(0.0000241));
    }

    @Test
    void a_list_ends_after_a_few_names() {
        List<String> names = List.of("a", "b", "c", "d", "e", "f", "g");
        assertEquals("", Ratios.some(names.subList(0, 0)));
        assertEquals("a", Ratios.some(names.subList(0, 1)));
        assertEquals("a and b", Ratios.some(names.subList(0, 2)));
        assertEquals("a, b, c, d, e and f", Ratios.some(names.subList(0, 6)));
        assertEquals("a, b, c, d, e and 2 more", Ratios.some(names));
        assertEquals("a, b, or c", Ratios.some(names.subList(0, 3), ", ", ", or "));
    }
}
