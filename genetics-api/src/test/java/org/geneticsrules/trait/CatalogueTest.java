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
                    Optional.of(LifeStage.atWeek(10)),
                    List.of(),
                    Optional.of("Measured at flowering.")))
            .seasons("spring", "late summer")
            .build();

    @Test
    void a_trait_may_ask_for_a_light() {
        Trait eye = Trait.of("eye", "dark", "pink").judgeableIn(List.of("daylight", "dusk"));
        assertEquals(Judgeable.YES, eye.judgeable(Optional.of("dusk")));
        assertEquals(Judgeable.NO, eye.judgeable(Optional.of("lamplight")));
        assertEquals(Judgeable.UNKNOWN, eye.judgeable(Optional.empty()));
        assertEquals(Judgeable.YES, Trait.of("size", "small").judgeable(Optional.of("lamplight")));
        assertEquals(
                List.of("daylight", "dusk"),
                eye.judgeableFrom(LifeStage.atWeek(3)).judgeableIn());
        Catalogue lit = Catalogue.builder("lit", "1")
                .lights("daylight", "lamplight", "dusk")
                .trait(eye)
                .build();
        assertEquals(List.of("daylight", "lamplight", "dusk"), lit.lights());
        assertEquals("dusk", lit.checkLight("dusk"));
        ProblemsException unknown = assertThrows(ProblemsException.class, () -> lit.checkLight("lamp light"));
        assertEquals(Optional.of("lamplight"), unknown.problems().get(0).nearest());
        String written = CatalogueDocument.of(lit).toString();
        assertTrue(written.contains("\"judgeableIn\":[\"daylight\",\"dusk\"]"), written);
        assertTrue(written.contains("\"lights\":[\"daylight\",\"lamplight\",\"dusk\"]"), written);
    }

    @Test
    void wrong_lights_are_refused_all_at_once() {
        ProblemsException twice = assertThrows(
                ProblemsException.class,
                () -> Catalogue.builder("lit", "1")
                        .lights("daylight", "daylight", "x-ray")
                        .trait(Trait.of("eye", "dark").judgeableIn(List.of("dusk", "dusk")))
                        .build());
        assertEquals(
                List.of("bad-name", "duplicate-light", "duplicate-light"),
                twice.problems().stream().map(Problem::code).toList());
        ProblemsException unknown = assertThrows(
                ProblemsException.class,
                () -> Catalogue.builder("lit", "1")
                        .lights("daylight")
                        .trait(Trait.of("eye", "dark").judgeableIn(List.of("dailight")))
                        .trait(Trait.of("nose", "dark").judgeableIn(List.of("dusk")))
                        .build());
        assertEquals(
                List.of("/traits/eye/judgeableIn", "/traits/nose/judgeableIn"),
                unknown.problems().stream().map(Problem::pointer).toList());
        assertEquals(Optional.of("daylight"), unknown.problems().get(0).nearest());
    }

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
                        + "\"seasons\":[\"spring\",\"late summer\"],"
                        + "\"taxon\":{\"name\":\"Pisum sativum\",\"ncbi\":3888},\"title\":\"Pea\",\"traits\":{"
                        + "\"seed form\":{\"states\":[\"round\",\"wrinkled\"]},"
                        + "\"stem\":{\"judgeableFrom\":{\"weeks\":10},\"note\":\"Measured at flowering.\",\"ordered\":true,\"states\":[\"short\",\"long\"],"
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
    void a_trait_is_judgeable_from_a_stage_on() {
        assertEquals(Judgeable.NO, PEA.judgeable("stem", LifeStage.atWeek(9)));
        assertEquals(Judgeable.YES, PEA.judgeable("stem", LifeStage.atWeek(10)));
        assertEquals(Judgeable.UNKNOWN, PEA.judgeable("stem", LifeStage.atMoult(3)));
        assertEquals(Judgeable.UNKNOWN, PEA.judgeable("stem", LifeStage.unstated()));
        assertEquals(Judgeable.YES, PEA.judgeable("seed form", LifeStage.unstated()));
        Trait coat = Trait.of("coat", "juvenile", "adult").judgeableFrom(LifeStage.atMoult(1));
        assertEquals(Judgeable.NO, coat.judgeable(LifeStage.atBirth()));
        assertEquals(Judgeable.YES, coat.judgeable(LifeStage.atMoult(1)));
        assertEquals(Judgeable.UNKNOWN, coat.judgeable(LifeStage.atWeek(80)));
        assertThrows(IllegalArgumentException.class, () -> PEA.judgeable("leaf", LifeStage.atBirth()));
    }

    @Test
    void a_trait_is_judgeable_from_an_age_or_from_a_moult() {
        Trait coat = Trait.of("coat", "juvenile", "adult");
        for (LifeStage stage : List.of(
                LifeStage.unstated(),
                LifeStage.atBirth(),
                LifeStage.atWeek(3).in("winter"),
                LifeStage.parse("winter"))) {
            assertThrows(IllegalArgumentException.class, () -> coat.judgeableFrom(stage));
        }
    }

    @Test
    void an_unknown_season_names_the_nearest() {
        LifeStage known = LifeStage.atWeek(20).in("late summer");
        assertEquals(known, PEA.check(known));
        assertEquals(LifeStage.unstated(), PEA.check(LifeStage.unstated()));
        ProblemsException refused = assertThrows(ProblemsException.class, () -> PEA.check(LifeStage.parse("sprang")));
        assertEquals(
                "unknown season \"sprang\"; expected one of spring, late summer; did you mean \"spring\"?"
                        + " [unknown-season]",
                refused.getMessage());
    }

    @Test
    void seasons_are_told_apart_and_cannot_be_taken_for_an_age() {
        Catalogue.Builder builder = Catalogue.builder("x", "1")
                .seasons("winter", "week 3", "winter")
                .trait("season", "a")
                .trait("sex", "b");
        ProblemsException refused = assertThrows(ProblemsException.class, builder::build);
        assertEquals(
                List.of(
                        "/seasons bad-season",
                        "/seasons duplicate-season",
                        "/traits/season reserved-name",
                        "/traits/sex reserved-name"),
                refused.problems().stream()
                        .map(problem -> problem.pointer() + " " + problem.code())
                        .toList());
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
