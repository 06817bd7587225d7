package org.geneticsrules.answer.named;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.NamedDocument;
import org.geneticsrules.json.Source;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.render.NameText;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.vocabulary.Match;
import org.geneticsrules.vocabulary.Meaning;
import org.geneticsrules.vocabulary.Occasion;
import org.geneticsrules.vocabulary.Vocabulary;
import org.junit.jupiter.api.Test;

/** Answers about names, on an invented vocabulary of three traits. */
class NameAnswersTest {

    private static final Catalogue TRAITS = Documents.reader().readCatalogue(Source.of("traits", """
            {"formatVersion": 0, "kind": "catalogue", "id": "example.names.traits", "version": "1.0.0",
             "traits": {
               "tone": {"states": ["full", "pale", "white"]},
               "eye": {"states": ["dark", "pink"]},
               "head": {"states": ["plain", "striped", "white"]}}}
            """));

    private static final Vocabulary HILLS = vocabulary("hills", "The hills", """
            "moor": {"facet": "colour", "evidence": "heard",
              "senses": {"usual": {"looks": {"dark": {"tone": ["full"], "eye": ["dark"]}}}}},
            "sandy": {"facet": "colour", "evidence": "heard",
              "senses": {"usual": {"looks": {"pale": {"tone": ["pale"], "eye": ["dark"]}}}}},
            "tinted": {"facet": "colour", "evidence": "once",
              "senses": {"usual": {"looks": {"any": {"tone": {"not": ["white"]}}}}}},
            "badger": {"facet": "marks", "evidence": "once",
              "senses": {"wide": {"looks": {"any": {"head": ["striped", "white"]}}}}},
            "streak": {"facet": "marks", "evidence": "heard",
              "senses": {"old": {"looks": {"stripe": {"head": ["striped"]}}, "to": "1999"}}}""");

    private static final Vocabulary COAST = vocabulary("coast", "The coast", """
            "dun": {"facet": "colour", "evidence": "heard",
              "senses": {"usual": {"looks": {"pale": {"tone": ["pale"], "eye": ["dark"]}}}}},
            "light": {"facet": "colour",
              "senses": {"usual": {"looks": {"pale": {"tone": ["pale", "white"]}}}}},
            "blaze": {"facet": "marks", "evidence": "heard",
              "senses": {"usual": {"looks": {"stripe": {"head": ["striped"]}}}}}""");

    private static final NameAnswers NAMES = NameAnswers.of(answers());

    private static final Schema SCHEMA = schema();

    private static Vocabulary vocabulary(String id, String region, String names) {
        return Documents.reader().readVocabulary(Source.of(id, """
                        {"formatVersion": 0, "kind": "vocabulary", "id": "example.names.%s", "version": "1.0.0", "region": "%s",
                         "catalogue": {"id": "example.names.traits", "version": "1.0.0"},
                         "evidence": {
                           "heard": {"grade": "practice", "claim": "People say so.", "sources": ["One.", "Another."]},
                           "once": {"grade": "conjecture", "claim": "Somebody says so.", "sources": ["One."]}},
                         "facets": {"colour": {"title": "Colour"}, "marks": {"title": "White marks"}},
                         "names": {%s}}
                        """.formatted(id, region, names)), List.of(TRAITS));
    }

    private static Answers answers() {
        Model model = Model.builder("example.names.model", "1.0.0", TRAITS)
                .locus(
                        "C",
                        c -> c.alleles("C", "c")
                                .dominant("C", "c")
                                .shows("C", "pigment")
                                .shows("c", "albino"))
                .trait("eye", eye -> eye.otherwise("dark"))
                .trait("tone", tone -> tone.otherwise("full"))
                .trait("head", head -> head.otherwise("plain"))
                .build();
        return Answers.of(
                CompiledModel.of(model), List.of(Documents.reader().readCautions(Source.of("cautions", """
                        {"formatVersion": 0, "kind": "cautions", "id": "example.names.cautions", "version": "1.0.0",
                         "catalogue": {"id": "example.names.traits", "version": "1.0.0"},
                         "cautions": {
                           "head": {"trigger": {"shows": {"head": ["white"]}, "in": ["animal"]},
                                    "line": "A white head.", "date": "2026-11"}}}
                        """), TRAITS)));
    }

    private static Schema schema() {
        String id = "urn:geneticsrules:schema:named-answer:0";
        return SchemaRegistry.withDefaultDialect(
                        SpecificationVersion.DRAFT_2020_12,
                        builder -> builder.schemas(Map.of(id, NamedDocument.schema())))
                .getSchema(SchemaLocation.of(id));
    }

    /** The text of an answer in one line, after its document was held to the schema. */
    private static String text(NamedAnswer answer) {
        assertEquals(
                List.of(), SCHEMA.validate(Documents.write(NamedDocument.of(answer)), InputFormat.JSON), answer::kind);
        return NameText.of(answer).replaceAll("\\s+", " ");
    }

    private static NamedAnswer name(String look) {
        return NAMES.name(List.of(HILLS, COAST), Phenotype.parse(look), Occasion.unstated());
    }

    private static NamedAnswer meaning(Vocabulary vocabulary, String word) {
        return NAMES.meaning(Meaning.of(vocabulary, word, Occasion.unstated()));
    }

    private static List<String> raised(NamedAnswer answer) {
        return answer.cautions().stream().map(Caution::id).toList();
    }

    @Test
    void the_most_telling_names_stand_in_the_verdict() {
        NamedAnswer answer = name("tone: pale, eye: dark, head: plain");
        assertEquals("The hills: \"sandy\"; The coast: \"dun\".", answer.verdict());
        String text = text(answer);
        assertTrue(text.contains("- also, more broadly, \"tinted\" "), text);
        assertTrue(text.contains("- not \"moor\": tone is pale, and would have to be full"), text);
        assertTrue(
                text.contains("- not \"badger\": head is plain, and would have to be striped or white"),
                "a state that is one of several: " + text);
        assertFalse(text.contains("streak"), "a word of long ago: " + text);
    }

    @Test
    void where_none_is_certain_the_verdict_says_what_is_possible_and_what_to_look_at() {
        assertEquals(
                "The hills: perhaps \"moor\", \"sandy\" or \"tinted\" (look at tone);"
                        + " The coast: perhaps \"dun\" or \"light\" (look at tone).",
                name("eye: dark").verdict());
        NamedAnswer white = name("tone: white, eye: dark, head: plain");
        assertEquals("The hills: no name there covers what was seen; The coast: \"light\".", white.verdict());
        text(white);
    }

    @Test
    void a_word_for_nearly_everything_gives_way_to_names_still_open() {
        Vocabulary wide = vocabulary("wide", "Wide", """
                "tinted": {"facet": "colour", "senses": {"any": {"looks": {"any": {"eye": ["dark"]}}}}},
                "moor": {"facet": "colour", "senses": {"any": {"looks": {"any": {"tone": ["full"], "eye": ["dark"]}}}}},
                "sandy": {"facet": "colour", "senses": {"any": {"looks": {"any": {"tone": ["pale"], "eye": ["dark"]}}}}}""");
        assertEquals(
                "Wide: perhaps \"moor\" or \"sandy\" (look at tone); certain is only the wide word \"tinted\".",
                NAMES.name(List.of(wide), Phenotype.parse("eye: dark"), Occasion.unstated())
                        .verdict());
        assertEquals(
                "Wide: \"sandy\".",
                NAMES.name(List.of(wide), Phenotype.parse("eye: dark, tone: pale"), Occasion.unstated())
                        .verdict());
    }

    @Test
    void an_answer_is_as_strong_as_the_weakest_sense_it_rests_on() {
        assertEquals(
                Optional.of(Grade.CONJECTURE),
                name("tone: pale, eye: dark, head: plain").evidence().grade());
        NamedAnswer attested = meaning(HILLS, "sandy");
        assertEquals(Optional.of(Grade.PRACTICE), attested.evidence().grade());
        assertEquals(
                List.of("example.names.hills /names/sandy/senses/usual"),
                attested.evidence().senses().stream()
                        .map(one -> one.vocabulary() + " " + one.statement().pointer())
                        .toList());
        assertEquals(
                Optional.of(Grade.CONJECTURE),
                meaning(COAST, "light").evidence().grade(),
                "what has no evidence counts as conjecture");
    }

    @Test
    void cautions_are_raised_by_what_is_seen_and_by_what_a_name_may_mean() {
        assertEquals(List.of("head"), raised(name("head: white")));
        assertEquals(List.of(), raised(name("head: striped")));
        NamedAnswer badger = meaning(HILLS, "badger");
        assertEquals(List.of("head"), raised(badger), "the head may be white, though nobody said so");
        assertTrue(text(badger).contains("A white head."));
        assertEquals(List.of(), raised(meaning(COAST, "blaze")));
        assertEquals(List.of(), raised(meaning(HILLS, "sandy")));
    }

    @Test
    void a_meaning_is_told_with_what_weakens_it() {
        NamedAnswer answer = meaning(HILLS, "sandy");
        assertEquals("\"sandy\" in The hills has one sense, and says: tone: pale, eye: dark.", answer.verdict());
        assertTrue(text(answer).contains("was said without a date"), answer.notices()::toString);
        LocalDate day = LocalDate.of(1998, 5, 1);
        assertTrue(NAMES.meaning(Meaning.of(HILLS, "streak", Occasion.unstated().on(day)))
                .notices()
                .isEmpty());
    }

    @Test
    void a_conversion_says_what_is_the_same_and_what_is_lost() {
        NamedAnswer exact = convert("sandy");
        assertEquals("\"sandy\" is \"dun\" in The coast, and means exactly the same.", exact.verdict());
        assertTrue(text(exact).contains("- \"dun\": exactly the same"), exact.verdict());
        NamedAnswer renamed = convert("streak");
        assertEquals("\"streak\" is \"blaze\" in The coast, and means exactly the same.", renamed.verdict());
        NamedAnswer lossy = convert("badger");
        assertEquals(
                "No name in The coast means exactly \"badger\"; the nearest is \"blaze\", which means less,"
                        + " so that something is lost.",
                lossy.verdict());
        String text = text(lossy);
        assertTrue(text.contains("It does not mean: head: white"), text);
        assertEquals(
                Match.NARROWER,
                ((NameFinding.Converted) lossy.finding())
                        .conversion()
                        .candidates()
                        .get(0)
                        .match());
        assertEquals(List.of("head"), raised(lossy));
    }

    private static NamedAnswer convert(String word) {
        return NAMES.convert(List.of(Meaning.of(HILLS, word, Occasion.unstated())), COAST, Optional.empty());
    }

    @Test
    void an_unknown_word_is_named_with_the_nearest() {
        ProblemsException unknown = assertThrows(ProblemsException.class, () -> meaning(HILLS, "sandi"));
        assertEquals("unknown-name", unknown.problems().get(0).code());
        assertTrue(unknown.getMessage().contains("\"sandy\""), unknown::getMessage);
        assertThrows(ProblemsException.class, () -> name("tone: pal"));
    }
}
