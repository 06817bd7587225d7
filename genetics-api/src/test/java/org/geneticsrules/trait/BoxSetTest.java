package org.geneticsrules.trait;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.problem.TooLargeException;
import org.junit.jupiter.api.Test;

class BoxSetTest {

    private static final BoxSpace SPACE = space("B", List.of("dark", "brown"), "C", List.of("full", "pale", "albino"));

    private static BoxSpace space(String one, List<String> values, String other, List<String> more) {
        Map<String, List<String>> variables = new LinkedHashMap<>();
        variables.put(one, values);
        variables.put(other, more);
        return BoxSpace.of(variables);
    }

    @Test
    void a_set_prints_its_boxes_in_words() {
        BoxSet albino = SPACE.where("C", Allowed.only("albino"));
        BoxSet brown = SPACE.where("B", Allowed.only("brown"));
        assertEquals("C: albino", albino.toString());
        assertEquals("always", SPACE.everything().toString());
        assertEquals("nothing", SPACE.nothing().toString());
        assertEquals("C: albino | B: brown, C: full or pale", albino.or(brown).toString());
    }

    @Test
    void many_variables_cost_no_more_than_their_boxes() {
        Map<String, List<String>> sixty = new LinkedHashMap<>();
        for (int i = 0; i < 60; i++) {
            sixty.put("L" + i, List.of("x", "y", "z"));
        }
        BoxSpace space = BoxSpace.of(sixty);
        BoxSet most = space.everything().minus(space.where("L0", Allowed.only("x")));
        assertEquals(BigInteger.valueOf(3).pow(59).multiply(BigInteger.TWO), most.size());
        assertEquals(1, most.boxes().size());
    }

    @Test
    void a_set_of_too_many_boxes_is_refused() {
        Map<String, List<String>> variables = new LinkedHashMap<>();
        for (int i = 0; i < 60; i++) {
            variables.put("L" + i, List.of("x", "y"));
        }
        BoxSpace space = BoxSpace.of(variables);
        BoxSet[] left = {space.everything()};
        // Neighbouring pairs never both x: the number of boxes grows as the Fibonacci numbers.
        TooLargeException refused = assertThrows(TooLargeException.class, () -> {
            for (int i = 0; i + 1 < 60; i++) {
                BoxSet both =
                        space.where("L" + i, Allowed.only("x")).and(space.where("L" + (i + 1), Allowed.only("x")));
                left[0] = left[0].minus(both);
            }
        });
        assertTrue(refused.estimate() > refused.limit());
    }

    @Test
    void sets_over_different_variables_do_not_mix() {
        BoxSet other = space("B", List.of("dark", "brown"), "D", List.of("x")).everything();
        assertThrows(IllegalArgumentException.class, () -> SPACE.everything().and(other));
        assertThrows(IllegalArgumentException.class, () -> SPACE.everything().minus(other));
        assertThrows(IllegalArgumentException.class, () -> SPACE.everything().or(other));
        assertNotEquals(SPACE.everything(), other);
    }

    @Test
    void the_order_of_variables_is_part_of_a_space() {
        BoxSpace swapped = space("C", List.of("full", "pale", "albino"), "B", List.of("dark", "brown"));
        assertNotEquals(SPACE, swapped);
        assertEquals(SPACE, space("B", List.of("dark", "brown"), "C", List.of("full", "pale", "albino")));
        assertEquals(List.of("B", "C"), SPACE.names());
        assertEquals(List.of("full", "pale", "albino"), SPACE.values("C"));
    }

    @Test
    void an_unknown_variable_or_value_is_refused_with_those_there_are() {
        IllegalArgumentException variable =
                assertThrows(IllegalArgumentException.class, () -> SPACE.where("X", Allowed.only("dark")));
        assertTrue(variable.getMessage().contains("the variables are B, C"), variable.getMessage());
        IllegalArgumentException value = assertThrows(
                IllegalArgumentException.class, () -> SPACE.everything().contains(Map.of("B", "dark", "C", "grey")));
        assertTrue(value.getMessage().contains("\"grey\"") && value.getMessage().contains("albino"));
        assertThrows(IllegalArgumentException.class, () -> SPACE.everything().contains(Map.of("B", "dark")));
    }

    @Test
    void a_condition_that_allows_nothing_is_the_empty_set() {
        assertEquals(SPACE.nothing(), SPACE.where("B", Allowed.only()));
        assertEquals(SPACE.nothing(), SPACE.where("B", Allowed.allBut("dark", "brown")));
        assertEquals(SPACE.everything(), SPACE.where("B", Allowed.allBut()));
    }
}
