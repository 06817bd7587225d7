package org.geneticsrules.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.expression.Completeness;
import org.geneticsrules.model.Draft;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.render.CompletenessText;
import org.geneticsrules.testing.RandomModels;
import org.geneticsrules.trait.Catalogue;
import org.junit.jupiter.api.Test;

/** Reports as documents and as text, and of documents that contradict themselves. */
class CompletenessDocumentTest {

    private static final String TRAITS = """
            {"formatVersion": 0, "kind": "catalogue", "id": "invented.traits", "version": "1",
              "traits": {"glow": {"states": ["bright", "dull", "unlit"]}}}
            """;

    /** Two cases of K on and M on, and two masks of K off and M off. */
    private static final String TORN = """
            {"formatVersion": 0, "kind": "model", "id": "invented.torn", "version": "1",
              "catalogue": {"id": "invented.traits", "version": "1"},
              "loci": {
                "K": {"alleles": ["K", "k"], "expressions": ["on", "off"],
                      "dominance": {"order": ["K > k"], "shows": {"K": "on", "k": "off"}}},
                "M": {"alleles": ["M", "m"], "expressions": ["on", "off"],
                      "dominance": {"order": ["M > m"], "shows": {"M": "on", "m": "off"}}}},
              "traits": {
                "glow": {"cases": {
                  "one": {"when": {"K": ["on"]}, "state": "bright"},
                  "two": {"when": {"M": ["on"]}, "state": "dull"}}}},
              "masks": {
                "upper": {"when": {"K": ["off"]}, "covers": {"glow": "unlit"}},
                "other": {"when": {"M": ["off"]}, "covers": {"glow": "dull"}}}}
            """;

    private static final Schema SCHEMA = schema();

    private static Schema schema() {
        String id = "urn:geneticsrules:schema:completeness:0";
        return SchemaRegistry.withDefaultDialect(
                        SpecificationVersion.DRAFT_2020_12,
                        builder -> builder.schemas(Map.of(id, CompletenessDocument.schema())))
                .getSchema(SchemaLocation.of(id));
    }

    private static Draft torn(String text) {
        DocumentReader reader = Documents.reader();
        Catalogue traits = reader.readCatalogue(Source.of("traits", TRAITS));
        return reader.readDraft(Source.of("torn", text), List.of(traits));
    }

    private static void valid(Completeness report) {
        String text = Documents.write(CompletenessDocument.of(report));
        assertEquals(
                List.of(),
                SCHEMA.validate(text, InputFormat.JSON).stream()
                        .map(Object::toString)
                        .toList(),
                text);
    }

    @Test
    void every_report_follows_the_schema_and_fits_the_page() {
        for (long seed = 0; seed < 150; seed++) {
            Completeness report = Completeness.of(RandomModels.whole(seed));
            valid(report);
            String page = CompletenessText.of(report);
            assertTrue(page.endsWith("\n"));
            page.lines().forEach(line -> assertTrue(line.length() <= 100, line));
            for (Completeness.Gap gap : report.gaps()) {
                assertTrue(page.contains("- " + gap.trait() + ": no claim is made"), page);
            }
            for (Completeness.Unreached one : report.unreached()) {
                assertTrue(page.replaceAll("\\s+", " ").contains("(" + one.pointer() + ")"), page);
            }
        }
    }

    @Test
    void the_schema_names_all_parts_and_grades_and_nothing_else() {
        String schema = CompletenessDocument.schema().replaceAll("\\s+", " ");
        for (Completeness.Part part : Completeness.Part.values()) {
            assertTrue(schema.contains("\"" + part.word() + "\""), part.word());
        }
        Arrays.stream(Grade.values())
                .forEach(grade -> assertTrue(schema.contains("\"" + grade.word() + "\": {"), grade.word()));
        String odd = Documents.write(CompletenessDocument.of(Completeness.of(torn(TORN))))
                .replace("\"withoutRule\"", "\"with0utRule\"");
        assertTrue(SCHEMA.validate(odd, InputFormat.JSON).size() > 0);
    }

    @Test
    void a_document_that_contradicts_itself_is_reported_on_with_places() {
        Draft draft = torn(TORN);
        assertEquals(
                List.of(
                        "11:7 /traits/glow/cases/two: cases \"one\" and \"two\" of glow both hold for genotype K/K M/M;"
                                + " expected cases that exclude each other [overlapping-cases]",
                        "14:50 /masks/other/covers/glow: masks \"upper\" and \"other\" show glow differently for genotype"
                                + " k/k m/m: \"unlit\" and \"dull\"; expected one of them stated \"over\" the other"
                                + " [mask-conflict]"),
                draft.conflicts().stream().map(Problem::toString).toList());
        assertEquals(
                draft.conflicts(),
                assertThrows(ProblemsException.class, draft::model).problems());
        Completeness report = Completeness.of(draft);
        valid(report);
        String page = CompletenessText.of(report);
        assertTrue(page.contains("- 11:7 /traits/glow/cases/two: cases \"one\" and \"two\" of glow both hold"), page);
        assertEquals(1, report.gaps().size(), page);
    }

    @Test
    void a_document_with_other_faults_is_no_draft() {
        ProblemsException refused = assertThrows(
                ProblemsException.class,
                () -> torn(TORN.replace("\"two\": {\"when\": {\"M\"", "\"two\": {\"when\": {\"N\"")));
        assertEquals("unknown-variable", refused.problems().get(0).code());
    }

    @Test
    void a_draft_without_conflicts_is_the_model() {
        String sound = TORN.replace("\"K\": [\"on\"]}, \"state\"", "\"K\": [\"on\"], \"M\": [\"off\"]}, \"state\"")
                .replace("\"covers\": {\"glow\": \"dull\"}", "\"covers\": {\"glow\": \"dull\"}, \"over\": [\"upper\"]");
        Draft draft = torn(sound);
        assertEquals(List.of(), draft.conflicts());
        Completeness ofModel = Completeness.of(draft.model());
        assertEquals(ofModel, Completeness.of(draft));
    }
}
