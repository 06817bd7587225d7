package org.geneticsrules.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.AlphaChars;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NearestTest {

    private static final List<String> KNOWN = List.of("hue", "eye colour", "white hairs", "throat", "head");

    @ParameterizedTest
    @CsvSource({
        "hue, hue",
        "Hue, hue",
        "huw, hue",
        "hu, hue",
        "ehad, head",
        "eye color, eye colour",
        "EYE COLOUR, eye colour",
        "whitehair, white hairs",
        "throaat, throat"
    })
    void a_misspelt_name_finds_the_one_meant(String name, String meant) {
        assertEquals(Optional.of(meant), Nearest.to(name, KNOWN));
    }

    @ParameterizedTest
    @CsvSource({"shoulder", "xyz", "e", "eyes"})
    void a_name_far_from_all_finds_none(String name) {
        assertEquals(Optional.empty(), Nearest.to(name, KNOWN));
    }

    @Test
    void capitals_differ_less_than_letters() {
        assertEquals(Optional.of("c"), Nearest.to("C", List.of("b", "c")));
        assertEquals(Optional.of("C"), Nearest.to("C", List.of("c", "C")));
        assertEquals(Optional.of("C"), Nearest.to("C'", List.of("c", "C")));
        assertEquals(Optional.of("c"), Nearest.to("c'", List.of("C", "c")));
        assertEquals(Optional.of("Hue"), Nearest.to("hUE", List.of("Hub", "Hue")));
    }

    @Test
    void the_first_of_equals_is_taken() {
        assertEquals(Optional.of("bat"), Nearest.to("cat", List.of("bat", "hat")));
        assertEquals(Optional.of("hat"), Nearest.to("cat", List.of("hat", "bat")));
    }

    @Test
    void among_no_names_none_is_found() {
        assertEquals(Optional.empty(), Nearest.to("hue", List.of()));
    }

    @Property
    void a_known_name_is_nearest_to_itself(
            @ForAll @Size(min = 1, max = 8) List<@AlphaChars @StringLength(min = 1, max = 8) String> known) {
        assertEquals(Optional.of(known.get(0)), Nearest.to(known.get(0), known));
    }

    @Property
    void one_neighbour_swap_is_one_step(@ForAll @AlphaChars @StringLength(min = 2, max = 10) String name) {
        String swapped = name.charAt(1) + name.substring(0, 1) + name.substring(2);
        assertEquals(Optional.of(name), Nearest.to(swapped, List.of(name)));
    }
}
