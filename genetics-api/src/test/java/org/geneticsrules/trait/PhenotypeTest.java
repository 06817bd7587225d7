package org.geneticsrules.trait;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PhenotypeTest {

    private static final Phenotype BLACK = Phenotype.parse("hue: black, eye: pink");

    @Provide
    Arbitrary<Map<String, String>> states() {
        Arbitrary<String> words = Arbitraries.strings()
                .withChars("ab1\u00e9 .'-")
                .ofMinLength(1)
                .ofMaxLength(8)
                .filter(PlainWords::are);
        return Arbitraries.maps(words, words).ofMaxSize(5);
    }

    static void textReadsBack(Map<String, String> states) {
        Phenotype phenotype = Phenotype.from(states);
        assertEquals(phenotype, Phenotype.parse(phenotype.toString()));
        assertEquals(phenotype.toString(), Phenotype.parse(phenotype.toString()).toString());
        assertEquals(List.copyOf(states.keySet()), List.copyOf(phenotype.traits()));
    }

    static void aPhenotypeShowsItsParts(Map<String, String> states, String trait) {
        Phenotype whole = Phenotype.from(states);
        Phenotype part = whole.restrictedTo(List.of(trait));
        assertTrue(whole.shows(part));
        assertEquals(whole.state(trait), part.state(trait));
        assertEquals(part.equals(whole), part.shows(whole));
    }

    @Property
    void text_reads_back(@ForAll("states") Map<String, String> states) {
        textReadsBack(states);
    }

    @Property
    void parts(@ForAll("states") Map<String, String> states) {
        states.keySet().forEach(trait -> aPhenotypeShowsItsParts(states, trait));
        aPhenotypeShowsItsParts(states, "no such trait");
    }

    @Test
    void spaces_and_semicolons_are_read_and_commas_printed() {
        assertEquals(BLACK, Phenotype.parse("  hue :black ;eye:  pink "));
        assertEquals("hue: black, eye: pink", BLACK.toString());
        assertEquals(Phenotype.unspecified(), Phenotype.parse(" "));
        assertEquals("", Phenotype.unspecified().toString());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"hue", "hue:", ": black", "hue: black,", "hue: black,, eye: pink", ",", "hue black, eye: pink"})
    void a_part_without_trait_or_state_is_refused(String text) {
        IllegalArgumentException refused = assertThrows(IllegalArgumentException.class, () -> Phenotype.parse(text));
        assertTrue(refused.getMessage().contains("expected \"trait: state\""), refused.getMessage());
    }

    @Test
    void a_trait_stated_twice_is_refused_even_if_alike() {
        assertThrows(IllegalArgumentException.class, () -> Phenotype.parse("hue: black, hue: black"));
    }

    @Test
    void order_does_not_count_for_equality_and_absent_traits_say_nothing() {
        assertEquals(BLACK, Phenotype.parse("eye: pink, hue: black"));
        assertEquals(BLACK.hashCode(), Phenotype.parse("eye: pink, hue: black").hashCode());
        assertEquals(Optional.empty(), BLACK.state("throat"));
        assertTrue(BLACK.shows(Phenotype.of("eye", "pink")));
        assertFalse(BLACK.shows(Phenotype.of("eye", "black")));
        assertFalse(BLACK.shows(Phenotype.of("throat", "bib")));
        assertTrue(BLACK.shows(Phenotype.unspecified()));
    }

    @Test
    void a_phenotype_does_not_change_with_what_it_was_made_of() {
        Map<String, String> states = new LinkedHashMap<>(Map.of("hue", "black"));
        Phenotype made = Phenotype.from(states);
        states.put("hue", "brown");
        assertEquals(Phenotype.of("hue", "black"), made);
        assertThrows(UnsupportedOperationException.class, () -> made.asMap().clear());
    }
}
