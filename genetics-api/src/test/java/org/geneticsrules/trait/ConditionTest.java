package org.geneticsrules.trait;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

class ConditionTest {

    private static final Condition DARK_NOT_ALBINO =
            Condition.where("B", "dark", "dusky").and("C", Allowed.allBut("albino"));

    @Test
    void every_named_variable_must_have_an_allowed_value() {
        assertTrue(DARK_NOT_ALBINO.holds(Map.of("B", "dusky", "C", "full")::get));
        assertFalse(DARK_NOT_ALBINO.holds(Map.of("B", "brown", "C", "full")::get));
        assertFalse(DARK_NOT_ALBINO.holds(Map.of("B", "dark", "C", "albino")::get));
    }

    @Test
    void the_empty_condition_always_holds() {
        assertTrue(Condition.always().holds(Map.<String, String>of()::get));
        assertEquals("always", Condition.always().toString());
        assertEquals(Set.of(), Condition.always().names());
    }

    @Test
    void its_text_names_variables_in_declared_order() {
        assertEquals("B: dark or dusky, C: not albino", DARK_NOT_ALBINO.toString());
        assertEquals(List.of("B", "C"), List.copyOf(DARK_NOT_ALBINO.names()));
    }

    @Test
    void a_variable_is_named_once() {
        IllegalArgumentException refused =
                assertThrows(IllegalArgumentException.class, () -> DARK_NOT_ALBINO.and("B", "brown"));
        assertTrue(refused.getMessage().contains("\"B\""), refused.getMessage());
    }

    @Test
    void a_condition_does_not_change_with_what_it_was_made_of() {
        Map<String, Allowed> variables = new LinkedHashMap<>(Map.of("B", Allowed.only("dark")));
        Condition made = new Condition(variables);
        variables.clear();
        assertEquals(Condition.where("B", "dark"), made);
        Set<String> values = new LinkedHashSet<>(List.of("dark"));
        Allowed allowed = new Allowed(false, values);
        values.add("brown");
        assertFalse(allowed.allows("brown"));
    }

    @Test
    void allowed_values_are_listed_in_the_order_of_all() {
        List<String> all = List.of("x", "y", "z");
        assertEquals(List.of("x", "z"), Allowed.only("z", "x", "w").among(all));
        assertEquals(List.of("x", "z"), Allowed.allBut("y").among(all));
        assertEquals("not y or z", Allowed.allBut("y", "z").toString());
        assertTrue(Allowed.allBut("y").allows("anything"));
    }
}
