package org.geneticsrules.trait;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.geneticsrules.problem.ProblemsException;
import org.junit.jupiter.api.Test;

/** The words by which documents and people name sexes, clocks, conditions, stages and records. */
class TraitWordsTest {

    @Test
    void each_sex_has_one_word_and_is_found_by_it() {
        assertEquals(List.of("female", "male"), Sex.words());
        assertEquals(Optional.of(Sex.FEMALE), Sex.of("female"));
        assertEquals(Optional.of(Sex.MALE), Sex.of("male"));
        assertEquals(Optional.empty(), Sex.of("Female"));
        assertEquals("male", Sex.MALE.word());
        assertEquals(Sex.MALE, Sex.FEMALE.other());
        assertEquals(Sex.FEMALE, Sex.MALE.other());
    }

    @Test
    void each_clock_has_one_word_and_is_found_by_it() {
        for (Clock clock : Clock.values()) {
            assertEquals(Optional.of(clock), Clock.of(clock.word()));
            assertTrue(Clock.words().contains(clock.word()));
        }
        assertEquals(List.of("moult", "week"), Clock.words());
        assertEquals(Optional.empty(), Clock.of("year"));
    }

    @Test
    void a_record_says_when_it_was_made_where_that_is_known() {
        Phenotype dark = Phenotype.of("hue", "dark");
        assertEquals("hue: dark", Sighting.of(dark).toString());
        assertEquals("hue: dark (week 6)", new Sighting(LifeStage.atWeek(6), dark).toString());
        assertEquals(
                "hue: dark (week 6, in dusk)",
                new Sighting(LifeStage.atWeek(6), dark).in("dusk").toString());
        assertEquals("hue: dark (in dusk)", Sighting.of(dark).in("dusk").toString());
    }

    @Test
    void a_condition_writes_what_it_allows_or_what_it_forbids() {
        assertEquals(
                "{\"A\":[\"one\",\"two\"],\"B\":{\"not\":[\"three\"]}}",
                Condition.where("A", "one", "two")
                        .and("B", Allowed.allBut("three"))
                        .toNode()
                        .toString());
    }

    @Test
    void a_phenotype_needs_a_trait_and_a_state_on_either_side_of_the_colon() {
        for (String text : List.of(":", ": dark", "hue:", ":dark", "hue", "hue: dark,", "hue: dark, hue: pale")) {
            assertThrows(IllegalArgumentException.class, () -> Phenotype.parse(text), text);
        }
        assertEquals(Phenotype.of("h", "d"), Phenotype.parse("h:d"));
        assertEquals(Phenotype.unspecified(), Phenotype.parse("  "));
    }

    @Test
    void a_catalogue_writes_from_which_moult_a_trait_can_be_told() {
        Trait late = new Trait(
                "hairs",
                Optional.empty(),
                List.of("none", "some"),
                false,
                Optional.of(LifeStage.atMoult(2)),
                List.of(),
                Optional.empty());
        String written = CatalogueDocument.of(
                        Catalogue.builder("example", "1.0.0").trait(late).build())
                .toString();
        assertTrue(written.contains("\"judgeableFrom\":{\"moult\":2}"), written);
    }

    @Test
    void a_catalogue_without_an_id_or_a_version_is_refused() {
        for (Catalogue.Builder blank : List.of(Catalogue.builder(" ", "1.0.0"), Catalogue.builder("example", " "))) {
            ProblemsException refused = assertThrows(
                    ProblemsException.class, () -> blank.trait("hue", "dark").build());
            assertEquals("blank-id", refused.problems().get(0).code());
        }
    }
}
