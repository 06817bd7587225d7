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
import org.geneticsrules.answer.RivalModel;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.document.Node;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.NamedDocument;
import org.geneticsrules.json.Source;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.render.NameText;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.vocabulary.Conversion;
import org.geneticsrules.vocabulary.Match;
import org.geneticsrules.vocabulary.Meaning;
import org.geneticsrules.vocabulary.Occasion;
import org.geneticsrules.vocabulary.PartialDate;
import org.geneticsrules.vocabulary.Vocabulary;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Answers about names, on an invented vocabulary of three traits. */
@Tag("default-jdk")
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
    void a_name_said_too_early_may_still_raise_a_caution() {
        Vocabulary late = vocabulary("late", "Late", """
                "ghost": {"facet": "marks", "senses": {"usual": {
                  "looks": {"any": {"head": ["white"]}}, "judgeableFrom": {"moult": 2}}}}""");
        Meaning early = Meaning.of(late, "ghost", Occasion.unstated().at(LifeStage.atMoult(1)));
        assertEquals(Optional.empty(), early.evidence(), "as a record it says nothing");
        NamedAnswer answer = NAMES.meaning(early);
        assertEquals(List.of("head"), raised(answer), "somebody saw white on the head, if too early");
        assertTrue(text(answer).contains("cannot be said before moult 2, so that it was said tells nothing"));
    }

    @Test
    void notices_stand_in_the_document_too() {
        NamedAnswer answer = meaning(HILLS, "streak");
        assertEquals(1, answer.notices().size());
        assertEquals(
                Node.texts(answer.notices()),
                ((Node.ObjectNode) NamedDocument.of(answer)).members().get("notices"));
    }

    @Test
    void rivals_have_no_say_in_what_people_call_an_animal() {
        Model silent = Model.builder("example.names.silent", "1.0.0", TRAITS)
                .locus(
                        "C",
                        c -> c.alleles("C", "c")
                                .dominant("C", "c")
                                .shows("C", "pigment")
                                .shows("c", "albino"))
                .notModelled("eye", "not looked into")
                .notModelled("tone", "not looked into")
                .notModelled("head", "not looked into")
                .build();
        NameAnswers contested = NameAnswers.of(answers().against(List.of(RivalModel.of("silent", () -> silent))));
        Phenotype look = Phenotype.parse("tone: pale, eye: dark, head: white");
        NamedAnswer plain = NAMES.name(List.of(HILLS, COAST), look, Occasion.unstated());
        assertEquals(plain, contested.name(List.of(HILLS, COAST), look, Occasion.unstated()));
        assertEquals(List.of("head"), raised(plain));
    }

    @Test
    void pointers_come_with_the_vocabulary_into_which_they_lead() {
        NamedAnswer answer = convert("sandy");
        String text = text(answer);
        assertTrue(text.contains("\"sandy\", sense \"usual\", of example.names.hills"), text);
        assertTrue(text.contains("\"dun\", sense \"usual\", of example.names.coast"), text);
        String json = Documents.write(NamedDocument.of(answer)).replaceAll("\\s+", " ");
        assertTrue(
                json.contains("\"vocabulary\": \"example.names.coast\", \"pointer\": \"/names/light/senses/usual\""),
                json);
        assertEquals(
                List.of("example.names.coast"),
                answer.evidence().weakest().stream()
                        .map(NameEvidence.OfSense::vocabulary)
                        .toList());
    }

    @Test
    void a_year_stands_for_any_of_its_days() {
        PartialDate year = PartialDate.of(1999);
        Vocabulary changed = vocabulary("changed", "The dale", """
                "streak": {"facet": "marks", "evidence": "heard", "senses": {
                  "old": {"looks": {"stripe": {"head": ["striped"]}}, "to": "1999-06-30"},
                  "new": {"looks": {"white": {"head": ["white"]}}, "from": "1999-07"}}},
                "blaze": {"facet": "marks", "evidence": "heard", "senses": {
                  "old": {"looks": {"stripe": {"head": ["striped"]}}, "to": "1999-06-30"},
                  "new": {"looks": {"stripe": {"head": ["striped"]}}, "from": "1999-07"}}}""");
        Occasion in1999 = Occasion.unstated().on(year);
        NamedAnswer answer = NAMES.name(List.of(changed), Phenotype.parse("head: striped"), in1999);
        assertEquals("The dale: \"blaze\" (a word of several senses).", answer.verdict());
        assertTrue(answer.given().contains("in 1999"), answer.given()::toString);
        String text = text(answer);
        assertTrue(text.contains("- perhaps \"streak\"; in use as \"old\" until 1999-06-30"), text);
        assertTrue(
                text.contains("Which day in 1999 is not known, and these were in use on a part of the days only:"
                        + " \"streak\" (old) until 1999-06-30, \"blaze\" (old) until 1999-06-30,"),
                text);
        NamedAnswer june = NAMES.name(
                List.of(changed),
                Phenotype.parse("head: striped"),
                Occasion.unstated().on(PartialDate.of(1999, 6)));
        assertEquals(
                "The dale: \"streak\" and \"blaze\".", june.verdict(), "in June both words had one sense throughout");
        assertTrue(june.notices().isEmpty(), june.notices()::toString);
        Meaning said = Meaning.of(changed, "streak", in1999);
        assertEquals(2, said.readings().size());
        assertTrue(text(NAMES.meaning(said)).contains("sense \"new\" (from 1999-07 on): head: white"));
        String json = Documents.write(NamedDocument.of(NAMES.meaning(said)));
        assertTrue(json.contains("\"partly\": \"1999-07/..\""), json);
        NamedAnswer today = NAMES.convert(List.of(said), changed, Optional.of(year));
        assertTrue(today.given().contains("to be named in 1999"), today.given()::toString);
        assertTrue(text(today).contains("\"streak\": exactly the same"), today.verdict());
        ProblemsException never = assertThrows(
                ProblemsException.class,
                () -> Meaning.of(HILLS, "streak", Occasion.unstated().on(PartialDate.of(2000, 1))));
        assertEquals(
                "nobody said \"streak\" in 2000-01", never.problems().get(0).message());
    }

    @Test
    void lists_of_names_are_cut_and_say_how_many_more_there_are() {
        StringBuilder names = new StringBuilder();
        for (int i = 0; i < 12; i++) {
            names.append(i == 0 ? "" : ", ").append("""
                    "pale %d": {"facet": "colour", "senses": {"usual": {
                      "looks": {"pale": {"tone": ["pale"]}}, "to": "1999-06"}}},
                    "dark %d": {"facet": "colour", "senses": {"usual": {
                      "looks": {"dark": {"tone": ["full"]}}, "to": "1999-06"}}}""".formatted(i, i));
        }
        Vocabulary many = vocabulary("many", "Many", names.toString());
        NamedAnswer answer = NAMES.name(
                List.of(many),
                Phenotype.parse("tone: pale"),
                Occasion.unstated().on(PartialDate.of(1999)));
        String text = text(answer);
        assertTrue(text.contains("\"pale 7\" (usual) until 1999-06, and 4 more."), text);
        assertTrue(text.contains("- 4 more are possible"), text);
        assertTrue(text.contains("\"dark 7\" or 4 more: tone is pale"), text);
        NamedAnswer same = NAMES.convert(
                List.of(Meaning.of(many, "pale 0", Occasion.unstated())), many, Optional.of(PartialDate.of(1998)));
        assertTrue(same.verdict().contains("\"pale 7\" or any of 4 others in Many"), same.verdict());
        assertTrue(text(same).contains("further from it: 4."), text(same));
    }

    @Test
    void what_is_taken_for_granted_stands_in_one_line() {
        Catalogue late = Documents.reader().readCatalogue(Source.of("traits", """
                {"formatVersion": 0, "kind": "catalogue", "id": "example.late", "version": "1.0.0",
                 "traits": {
                   "tone": {"states": ["full", "pale"], "judgeableFrom": {"weeks": 3}},
                   "eye": {"states": ["dark", "pink"], "judgeableFrom": {"weeks": 3}},
                   "head": {"states": ["plain", "white"], "judgeableFrom": {"moult": 1}}}}
                """));
        Vocabulary names = Documents.reader().readVocabulary(Source.of("late", """
                {"formatVersion": 0, "kind": "vocabulary", "id": "example.late.names", "version": "1.0.0",
                 "catalogue": {"id": "example.late", "version": "1.0.0"}, "facets": {"coat": {}},
                 "names": {
                   "ghost": {"facet": "coat", "senses": {"usual": {
                     "looks": {"any": {"tone": ["pale"], "eye": ["dark"], "head": ["white"]}},
                     "judgeableFrom": {"moult": 2}}}},
                   "shade": {"facet": "coat", "senses": {"usual": {
                     "looks": {"any": {"tone": ["pale"]}}, "judgeableFrom": {"moult": 2}}}}}}
                """), List.of(late));
        assertEquals(
                List.of(
                        "it is taken for granted that each of these could be told: tone, eye (from week 3 on),"
                                + " head (from moult 1 on)",
                        "it is taken for granted that each of these could be said by then: \"ghost\", \"shade\""
                                + " (from moult 2 on)"),
                NAMES.name(List.of(names), Phenotype.parse("tone: pale, eye: dark, head: white"), Occasion.unstated())
                        .notices());
        List<String> said = meaning(names, "ghost").notices();
        assertEquals(
                List.of(
                        "it is taken for granted that \"ghost\" could be said, which is so from moult 2 on",
                        "it is taken for granted that each of these could be told: tone, eye (from week 3 on),"
                                + " head (from moult 1 on)"),
                said.subList(1, said.size()));
    }

    @Test
    void a_document_lists_ten_thousand_conditions_and_counts_the_rest() {
        StringBuilder traits = new StringBuilder();
        StringBuilder names = new StringBuilder();
        StringBuilder looks = new StringBuilder();
        StringBuilder facets = new StringBuilder();
        for (int t = 0; t < 6; t++) {
            String comma = t == 0 ? "" : ", ";
            traits.append(comma).append("\"t%d\": {\"states\": [".formatted(t));
            for (int s = 0; s < 10; s++) {
                traits.append(s == 0 ? "" : ", ").append("\"s%d\"".formatted(s));
            }
            traits.append("]}");
            looks.append(comma).append("\"look %d\": {\"t%d\": [\"s%d\", \"s%d\"]}".formatted(t, t, t, t + 1));
        }
        for (int f = 0; f < 3; f++) {
            facets.append("\"f%d\": {}, ".formatted(f));
            for (int n = 0; n < 10; n++) {
                names.append(
                        "\"f%d n%d\": {\"facet\": \"f%d\", \"senses\": {\"usual\": {\"looks\": {\"a\": {\"t%d\": {\"not\": [\"s%d\"]}}}}}}, "
                                .formatted(f, n, f, f, n));
            }
        }
        Catalogue wide = Documents.reader().readCatalogue(Source.of("traits", """
                {"formatVersion": 0, "kind": "catalogue", "id": "example.wide", "version": "1.0.0", "traits": {%s}}
                """.formatted(traits)));
        Vocabulary vocabulary = Documents.reader()
                .readVocabulary(Source.of("wide", """
                {"formatVersion": 0, "kind": "vocabulary", "id": "example.wide.names", "version": "1.0.0",
                 "catalogue": {"id": "example.wide", "version": "1.0.0"}, "facets": {%s "whole": {}},
                 "names": {%s "any": {"facet": "whole", "senses": {"usual": {"looks": {%s}}}}}}
                """.formatted(facets, names, looks)), List.of(wide));
        Conversion found = Conversion.of(
                List.of(Meaning.of(vocabulary, "any", Occasion.unstated())),
                vocabulary,
                List.of("f0", "f1", "f2"),
                Optional.empty());
        long all = found.uncovered().values().stream()
                        .mapToLong(set -> set.boxes().size())
                        .sum()
                + found.candidates().stream()
                        .mapToLong(one -> one.alsoMeans().boxes().size()
                                + one.leavesOut().boxes().size())
                        .sum();
        assertTrue(all > 10_000, "the test needs more than " + all);
        NamedAnswer asked = convert("sandy");
        NamedAnswer answer = new NamedAnswer(
                asked.kind(),
                asked.question(),
                asked.verdict(),
                asked.given(),
                new NameFinding.Converted(found),
                asked.cautions(),
                asked.evidence(),
                asked.vocabularies(),
                asked.notices());
        text(answer);
        long[] counted = {0, 0};
        count(NamedDocument.of(answer), counted);
        assertEquals(10_000, counted[0]);
        assertEquals(all, counted[0] + counted[1]);
    }

    private static void count(Node node, long[] into) {
        if (node instanceof Node.ListNode list) {
            list.items().forEach(item -> count(item, into));
        }
        if (node instanceof Node.ObjectNode object) {
            object.members().forEach((name, value) -> {
                if (name.equals("conditions")) {
                    into[0] += ((Node.ListNode) value).items().size();
                } else if (name.equals("more")) {
                    into[1] += ((Node.NumberNode) value).value().longValueExact();
                } else {
                    count(value, into);
                }
            });
        }
    }

    @Test
    void an_unknown_word_is_named_with_the_nearest() {
        ProblemsException unknown = assertThrows(ProblemsException.class, () -> meaning(HILLS, "sandi"));
        assertEquals("unknown-name", unknown.problems().get(0).code());
        assertTrue(unknown.getMessage().contains("\"sandy\""), unknown::getMessage);
        assertThrows(ProblemsException.class, () -> name("tone: pal"));
    }
}
