package org.geneticsrules.answer.described;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.RivalModel;
import org.geneticsrules.answer.described.Description.Change;
import org.geneticsrules.answer.described.Description.Fit;
import org.geneticsrules.answer.described.Description.Open;
import org.geneticsrules.answer.described.Description.Reading;
import org.geneticsrules.caution.CautionSet;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.json.DescribedDocument;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.Source;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.render.DescriptionText;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.junit.jupiter.api.Test;

/** Descriptions on an invented model: a coat that greys with every moult, and eyes. */
class DescriptionsTest {

    private static final Catalogue TRAITS = Documents.reader().readCatalogue(Source.of("traits", """
            {"formatVersion": 0, "kind": "catalogue", "id": "example.describe.traits", "version": "1.0.0",
             "seasons": ["winter", "summer"], "lights": ["daylight", "lamplight"],
             "traits": {
               "grey": {"states": ["none", "some", "all"], "ordered": true, "judgeableFrom": {"moult": 1},
                        "note": "Part the hair."},
               "eye": {"states": ["dark", "pink"], "judgeableIn": ["daylight"]},
               "mask": {"states": ["full", "bar"]},
               "stain": {"states": ["clean", "yellowed"], "note": "Skin oil."},
               "paw": {"states": ["pink", "other"]}}}
            """));

    private static final CautionSet CAUTIONS = Documents.reader().readCautions(Source.of("cautions", """
            {"formatVersion": 0, "kind": "cautions", "id": "example.describe.cautions", "version": "1.0.0",
             "catalogue": {"id": "example.describe.traits", "version": "1.0.0"},
             "cautions": {
               "greying": {"trigger": {"shows": {"grey": ["some", "all"], "eye": ["dark"]}, "in": ["animal"]},
                           "line": "Have the hearing tested.", "detail": ["A veterinarian can."], "sources": ["A study."],
                           "date": "2026-11"},
               "white": {"trigger": {"shows": {"grey": ["all"]}, "in": ["animal"]},
                         "line": "White coats too.", "detail": ["A veterinarian can."], "sources": ["A study."],
                         "date": "2026-11"},
               "ancestry": {"trigger": {"question": ["description"]}, "line": "Looks prove no ancestry.", "date": "2026-11"},
               "parents": {"trigger": {"shows": {"grey": ["some"]}, "in": ["parent"]}, "line": "Not here.",
                           "date": "2026-11"}}}
            """), TRAITS);

    private static Model model(String id, String all) {
        return Documents.reader().readModel(Source.of(id, """
                {"formatVersion": 0, "kind": "model", "id": "example.describe.%s", "version": "1.0.0",
                 "catalogue": {"id": "example.describe.traits", "version": "1.0.0"},
                 "loci": {
                   "C": {"alleles": ["C", "c"], "expressions": ["pigment", "albino"],
                         "dominance": {"order": ["C > c"], "shows": {"C": "pigment", "c": "albino"}}},
                   "G": {"alleles": ["G", "g"], "expressions": ["greying", "steady"],
                         "dominance": {"order": ["G > g"], "shows": {"G": "greying", "g": "steady"}}}},
                 "traits": {
                   "eye": {"cases": {"pink": {"when": {"C": ["albino"]}, "state": "pink"}}, "otherwise": "dark"},
                   "grey": {"cases": {"greying": {"when": {"G": ["greying"]},
                     "progression": {"clock": "moult", "start": {"some": "1"},
                       "step": {"some": {"some": "1/2", "all": "1/2"}, "all": %s}}}}, "otherwise": "none"}},
                 "masks": {"albino": {"when": {"C": ["albino"]}, "covers": {"grey": "all"}}},
                 "notModelled": {"stain": "Nobody inherits it."}}
                """.formatted(id, all)), List.of(TRAITS));
    }

    private static final Model STAYS = model("stays", "{\"all\": \"1\"}");

    private static final Model TURNS = model("turns", "{\"all\": \"3/4\", \"some\": \"1/4\"}");

    private static final Descriptions DESCRIPTIONS =
            Descriptions.of(Answers.of(CompiledModel.of(STAYS), List.of(CAUTIONS))
                    .against(List.of(RivalModel.of("A coat may darken", () -> TURNS))));

    private static DescribedAnswer describe(String... looks) {
        return DESCRIPTIONS.describe(new DescribeQuestion(
                Stream.of(looks).map(DescriptionsTest::sighting).toList(), Optional.empty()));
    }

    private static Sighting sighting(String look) {
        String[] parts = look.split("@", -1);
        return new Sighting(
                parts.length > 1 ? LifeStage.parse(parts[1]) : LifeStage.unstated(), Phenotype.parse(parts[0]));
    }

    @Test
    void a_look_that_can_be_is_described_and_nothing_is_guessed() {
        DescribedAnswer answer = describe("eye: dark, grey: some @ moult 2");
        assertEquals(
                "The animal shows grey some, eye dark. All of it can be of one animal under this model.",
                answer.verdict());
        assertEquals(List.of(), answer.rivalVerdicts());
        assertEquals(
                List.of("mask", "stain", "paw"),
                answer.description().open().stream().map(Open::trait).toList());
    }

    @Test
    void a_coat_that_darkens_is_not_one_animal_unless_a_rival_is_right() {
        DescribedAnswer answer =
                describe("grey: all, eye: dark @ moult 2, winter", "grey: some, paw: pink @ moult 3, winter");
        assertEquals(Fit.NOT_ONE_ANIMAL, answer.description().fit());
        assertEquals(
                List.of("grey", "grey"),
                answer.description().apart().stream().map(Reading::trait).toList());
        assertTrue(
                answer.verdict()
                        .contains(
                                "grey: all (moult 2, winter) and grey: some (moult 3, winter) do not go together. A look may have been"),
                answer::verdict);
        assertEquals(
                "The animal shows grey some, eye dark, paw pink. All of it that the model can judge can be of one animal under this model.",
                answer.rivalVerdicts().get(0).verdict());
        String text = DescriptionText.of(answer).replaceAll("\\s+", " ");
        assertTrue(text.contains("Otherwise if \"A coat may darken\" is true: The animal shows"), text);
        assertTrue(
                text.contains(
                        "grey in winter: all (moult 2, winter), some (moult 3, winter) - less each time, or the same"),
                text);
    }

    @Test
    void one_reading_alone_may_be_impossible() {
        DescribedAnswer answer = describe("grey: none, eye: pink @ moult 2");
        assertEquals(2, answer.description().apart().size());
        Descriptions steady = Descriptions.of(Answers.of(
                CompiledModel.of(Model.builder("example.describe.one", "1.0.0", TRAITS)
                        .locus(
                                "C",
                                c -> c.alleles("C", "c")
                                        .dominant("C", "c")
                                        .shows("C", "p")
                                        .shows("c", "a"))
                        .trait("eye", eye -> eye.otherwise("dark"))
                        .build()),
                List.of()));
        DescribedAnswer alone = steady.describe(new DescribeQuestion(List.of(sighting("eye: pink")), Optional.empty()));
        assertTrue(alone.verdict().contains("under this model: eye: pink does not occur."), alone::verdict);
        assertEquals(1, alone.description().apart().size());
    }

    @Test
    void what_was_read_too_early_counts_for_nothing_and_is_told() {
        DescribedAnswer answer = describe("grey: all @ moult 0", "grey: some @ moult 1");
        assertEquals(Fit.ONE_ANIMAL, answer.description().fit());
        assertEquals(
                Optional.of(LifeStage.atMoult(1)),
                answer.description().readings().get(0).tooEarly());
        assertEquals(List.of(), answer.description().courses());
        assertTrue(DescriptionText.of(answer)
                .contains("grey: all - too early to be told, and no evidence; look again from moult 1 on"));
        assertEquals(
                "Nothing that was seen counts: it was read too early, or in a light in which it cannot be told.",
                describe("grey: all @ moult 0").verdict());
        assertEquals(
                Optional.of(LifeStage.atMoult(1)),
                describe("grey: all @ moult 0").description().open().get(0).from());
    }

    @Test
    void what_was_read_in_a_light_in_which_it_cannot_be_told_counts_for_nothing_and_is_told() {
        Sighting lamp = sighting("eye: pink, grey: none @ moult 2").in("lamplight");
        DescribedAnswer answer = DESCRIPTIONS.describe(new DescribeQuestion(List.of(lamp), Optional.empty()));
        assertEquals(Fit.ONE_ANIMAL, answer.description().fit());
        assertEquals(
                "The animal shows grey none. All of it that the model can judge can be of one animal under this model.",
                answer.verdict());
        assertTrue(
                DescriptionText.of(answer)
                        .replaceAll("\\s+", " ")
                        .contains(
                                "eye: pink, in lamplight - not to be told in lamplight, and no evidence; look again in daylight"));
        DescribedAnswer day =
                DESCRIPTIONS.describe(new DescribeQuestion(List.of(lamp.in("daylight")), Optional.empty()));
        assertEquals(Fit.NOT_ONE_ANIMAL, day.description().fit());
        assertTrue(describe("eye: dark").assumptions().stream()
                .anyMatch(one -> one.id().equals("told-in-its-light")));
        assertEquals(
                "unknown-light",
                assertThrows(
                                ProblemsException.class,
                                () -> DESCRIPTIONS.describe(
                                        new DescribeQuestion(List.of(lamp.in("moonlight")), Optional.empty())))
                        .problems()
                        .get(0)
                        .code());
    }

    @Test
    void traits_without_a_rule_are_described_with_the_reason() {
        DescribedAnswer answer = describe("stain: yellowed");
        assertEquals(Fit.NO_CLAIM, answer.description().fit());
        assertEquals("The animal shows stain yellowed.", answer.verdict());
        String text = DescriptionText.of(answer);
        assertTrue(text.contains("Skin oil."), text);
        assertTrue(text.contains("Inheritance: Nobody inherits it."), text);
        assertTrue(answer.evidence().statements().isEmpty());
    }

    @Test
    void a_stage_that_is_not_stated_is_asked_for_where_it_matters() {
        DescribedAnswer answer = describe("grey: some");
        assertEquals(Fit.NOT_FOUND_OUT, answer.description().fit());
        assertTrue(answer.notices().get(0).contains("depends on the moult"), () -> "" + answer.notices());
        assertEquals(List.of(), answer.rivalVerdicts());
        assertEquals(1, answer.notices().size());
    }

    @Test
    void a_contradiction_stands_whatever_else_lacks_a_stage() {
        DescribedAnswer answer = describe("eye: pink, grey: none @ moult 2", "grey: some");
        assertEquals(Fit.NOT_ONE_ANIMAL, answer.description().fit());
        assertEquals(
                "[eye: pink (moult 2), grey: none (moult 2)]",
                answer.description().apart().stream()
                        .sorted(Comparator.comparing(Reading::trait))
                        .toList()
                        .toString());
    }

    @Test
    void looks_whose_season_is_not_stated_are_said_to_be_perhaps_of_two_coats() {
        String text = DescriptionText.of(describe("mask: full", "mask: bar")).replaceAll("\\s+", " ");
        assertTrue(
                text.contains(
                        "mask: full, bar - changed; the season is not stated, so these may be a summer and a winter coat"),
                text);
        assertFalse(text.contains("Looks of one season"), text);
        assertTrue(text.contains("Not known yet"), text);
        assertTrue(text.contains("eye (in daylight)"), text);
    }

    @Test
    void only_looks_of_one_season_are_compared() {
        Description found = describe(
                        "mask: full @ moult 2, winter",
                        "mask: bar @ moult 3, summer",
                        "mask: bar @ moult 4, winter",
                        "mask: bar @ moult 5, summer")
                .description();
        assertEquals(
                List.of(Change.CHANGED, Change.NONE),
                found.courses().stream().map(Description.Course::change).toList());
        assertEquals(
                List.of(Optional.of("winter"), Optional.of("summer")),
                found.courses().stream().map(Description.Course::season).toList());
    }

    @Test
    void the_direction_of_an_ordered_trait_is_told() {
        assertEquals(Change.FORWARD, change("some", "some", "all"));
        assertEquals(Change.BACK, change("all", "some", "none"));
        assertEquals(Change.BOTH_WAYS, change("some", "all", "some"));
        assertEquals(Change.NONE, change("some", "some", "some"));
    }

    private static Change change(String first, String second, String third) {
        return describe(
                        "grey: " + first + " @ moult 1",
                        "grey: " + second + " @ moult 2",
                        "grey: " + third + " @ moult 3")
                .description()
                .courses()
                .get(0)
                .change();
    }

    @Test
    void cautions_go_with_what_was_seen_at_any_look_and_say_what_they_share_once() {
        DescribedAnswer answer = describe("grey: all, eye: dark @ moult 2", "eye: dark @ moult 3");
        assertEquals(
                List.of("greying", "white", "ancestry"),
                answer.cautions().stream().map(one -> one.id()).toList());
        String text = DescriptionText.of(answer);
        assertEquals(text.indexOf("A veterinarian can."), text.lastIndexOf("A veterinarian can."), text);
        assertEquals(text.indexOf("Source: A study."), text.lastIndexOf("Source: A study."), text);
        assertTrue(text.contains("White coats too."), text);
        assertTrue(text.contains("What is said above of the same goes for this too."), text);
        assertEquals(
                List.of("ancestry"),
                describe("grey: none, eye: dark @ moult 2").cautions().stream()
                        .map(one -> one.id())
                        .toList());
        assertFalse(describe("eye: pink @ moult 2").cautions().stream()
                .anyMatch(one -> one.id().equals("greying")));
    }

    @Test
    void all_unknown_words_are_told_at_once() {
        ProblemsException refused = assertThrows(
                ProblemsException.class, () -> describe("gray: some @ moult 1", "eye: darc @ moult 2, sommer"));
        assertEquals(
                List.of("unknown-trait", "unknown-season"),
                refused.problems().stream().map(Problem::code).toList());
        assertThrows(IllegalArgumentException.class, () -> new DescribeQuestion(List.of(), Optional.empty()));
    }

    @Test
    void the_document_is_as_its_schema_says() {
        String id = "urn:geneticsrules:schema:described-answer:0";
        Schema schema = SchemaRegistry.withDefaultDialect(
                        SpecificationVersion.DRAFT_2020_12,
                        builder -> builder.schemas(Map.of(id, DescribedDocument.schema())))
                .getSchema(SchemaLocation.of(id));
        for (DescribedAnswer answer : List.of(
                describe("grey: all, eye: dark @ moult 2, winter", "grey: some, stain: yellowed @ moult 3, winter"),
                describe("grey: all @ moult 0"),
                describe("grey: some"),
                DESCRIPTIONS.describe(new DescribeQuestion(List.of(sighting("eye: dark")), Optional.of(Sex.FEMALE))))) {
            String document = Documents.write(DescribedDocument.of(answer));
            assertEquals(List.of(), schema.validate(document, InputFormat.JSON), document);
            assertTrue(document.contains(answer.verdict().replace("\"", "\\\"")));
            answer.cautions().forEach(caution -> assertTrue(document.contains(caution.line())));
        }
    }
}
