package org.geneticsrules.trait;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.geneticsrules.document.Canonical;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CatalogueTest {

    private static final Catalogue PEA = Catalogue.builder("example.pea.traits", "1.0.0")
            .title("Pea")
            .taxon(Taxon.of("Pisum sativum", 3888))
            .trait("seed form", "round", "wrinkled")
            .trait(new Trait(
                    "stem",
                    Optional.of("Length of the stem"),
                    List.of("short", "long"),
                    true,
                    Optional.of("Measured at flowering.")))
            .build();

    @Test
    void traits_are_found_by_id_in_declared_order() {
        assertEquals(List.of("seed form", "stem"), List.copyOf(PEA.traits().keySet()));
        assertEquals(Optional.of(Trait.of("seed form", "round", "wrinkled")), PEA.trait("seed form"));
        assertEquals(Optional.empty(), PEA.trait("seed"));
        assertEquals(Optional.of("Pea"), PEA.title());
        assertEquals(
                "Pisum sativum (NCBI Taxonomy 3888)", PEA.taxon().orElseThrow().toString());
        assertEquals("example.pea.traits 1.0.0", PEA.toString());
    }

    @Test
    void its_document_states_everything_and_nothing_that_is_absent() {
        assertEquals(
                "{\"formatVersion\":0,\"id\":\"example.pea.traits\",\"kind\":\"catalogue\","
                        + "\"taxon\":{\"name\":\"Pisum sativum\",\"ncbi\":3888},\"title\":\"Pea\",\"traits\":{"
                        + "\"seed form\":{\"states\":[\"round\",\"wrinkled\"]},"
                        + "\"stem\":{\"note\":\"Measured at flowering.\",\"ordered\":true,\"states\":[\"short\",\"long\"],"
                        + "\"title\":\"Length of the stem\"}},\"version\":\"1.0.0\"}",
                CatalogueDocument.of(PEA).toString());
        assertEquals(
                Optional.of(Canonical.sha256(CatalogueDocument.of(PEA))),
                PEA.reference().sha256());
    }

    @Test
    void the_hash_changes_with_the_content() {
        Catalogue one = Catalogue.builder("x", "1").trait("a", "p", "q").build();
        Catalogue same = Catalogue.builder("x", "1").trait("a", "p", "q").build();
        Catalogue other = Catalogue.builder("x", "1").trait("a", "q", "p").build();
        assertEquals(one.reference(), same.reference());
        assertNotEquals(one.reference(), other.reference());
    }

    @Test
    void a_description_is_put_into_catalogue_order() {
        Phenotype given = Phenotype.parse("stem: long, seed form: round");
        assertEquals("seed form: round, stem: long", PEA.check(given).toString());
        assertEquals(Phenotype.unspecified(), PEA.check(Phenotype.unspecified()));
    }

    @Test
    void unknown_traits_and_states_are_reported_together_with_the_nearest() {
        ProblemsException refused = assertThrows(
                ProblemsException.class,
                () -> PEA.check(Phenotype.parse("seed from: round, stem: longg, leaf: green")));
        assertEquals(
                List.of("unknown-trait", "unknown-state", "unknown-trait"),
                refused.problems().stream().map(Problem::code).toList());
        assertEquals(Optional.of("seed form"), refused.problems().get(0).nearest());
        assertEquals(
                "unknown state of stem \"longg\"; expected one of short, long; did you mean \"long\"? [unknown-state]",
                refused.problems().get(1).toString());
        assertEquals(Optional.empty(), refused.problems().get(2).nearest());
        refused.problems().forEach(problem -> assertEquals(Stage.REFERENCES, problem.stage()));
    }

    @Test
    void all_faults_of_a_catalogue_are_reported_together() {
        Catalogue.Builder builder = Catalogue.builder("x", "1")
                .trait("no states")
                .trait("co:lour", "red")
                .trait("twice", "red", "blue", "red")
                .trait("eye", "dark, pink");
        ProblemsException refused = assertThrows(ProblemsException.class, builder::build);
        assertEquals(
                List.of(
                        "/traits/no states no-states",
                        "/traits/co:lour bad-name",
                        "/traits/twice/states duplicate-state",
                        "/traits/eye/states bad-name"),
                refused.problems().stream()
                        .map(problem -> problem.pointer() + " " + problem.code())
                        .toList());
        refused.problems().forEach(problem -> assertEquals(Stage.SHAPE, problem.stage()));
        assertTrue(refused.getMessage().contains("\"dark, pink\" cannot name a state"), refused.getMessage());
    }

    @Test
    void a_trait_is_added_once() {
        Catalogue.Builder builder = Catalogue.builder("x", "1").trait("hue", "black");
        assertThrows(IllegalArgumentException.class, () -> builder.trait("hue", "brown"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"hue", "reddish brown", "9 to 5", "s'il", "c.k", "brun-rouge", "\u00e9tat", "x", "n."})
    void plain_words_can_be_names(String name) {
        assertTrue(PlainWords.are(name));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "", " hue", "hue ", "a:b", "a,b", "a;b", "a/b", "a\tb", "-a", "a-", "'a", "a\nb", "(a)", "x-", "x-note"
            })
    void other_spellings_cannot_be_names(String name) {
        assertFalse(PlainWords.are(name));
    }

    @Test
    void a_name_has_at_most_80_characters() {
        assertTrue(PlainWords.are("a".repeat(80)));
        assertFalse(PlainWords.are("a".repeat(81)));
    }
}
