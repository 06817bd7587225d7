package org.geneticsrules.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.collect.ImmutableMap;
import com.google.common.collect.Maps;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.geneticsrules.answer.compared.Analysis;
import org.geneticsrules.caution.QuestionKind;
import org.geneticsrules.caution.Relation;
import org.geneticsrules.caution.Role;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.Node.ListNode;
import org.geneticsrules.document.Node.ObjectNode;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.linkage.MapFunction;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.pedigree.Fertility;
import org.geneticsrules.pedigree.Hearing;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Clock;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

class SchemaTest {

    private static final int MUTATIONS = 1_200;

    private static final ImmutableMap<DocumentKind, Schema> SCHEMAS = Maps.toMap(
            Arrays.asList(DocumentKind.values()),
            kind -> SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                    .getSchema(Documents.schema(kind), InputFormat.JSON));

    /**
     * What the reader finds at the stage of shape although the schema cannot, or not always: it would have to compare parts with one
     * another, to know a fraction from a larger one, or to count only the keys that are not for own use.
     */
    private static final List<String> BEYOND_THE_SCHEMA = List.of(
            "ambiguous-allele",
            "ambiguous-name",
            "ambiguous-symbol",
            "bad-chance",
            "bad-fraction",
            "bad-frequency",
            "bad-rate",
            "bad-symbol",
            "certain-error",
            "chances-sum",
            "dose-range",
            "duplicate-allele",
            "empty-look",
            "looks-differ",
            "map-order",
            "missing-position",
            "no-change",
            "no-expressions",
            "no-loci",
            "no-such-date",
            "repeated-candidate",
            "repeated-change",
            "reserved-name",
            "reserved-symbol",
            "unknown-locus",
            "zero-chance");

    static Stream<Arguments> shipped() {
        return Arrays.stream(DocumentKind.values())
                .flatMap(kind -> Shipped.files(kind).stream().map(file -> Arguments.of(kind, file)));
    }

    @ParameterizedTest
    @MethodSource("shipped")
    void a_shipped_document_is_valid(DocumentKind kind, Path file) {
        assertEquals(List.of(), schema(kind).validate(Shipped.text(file), InputFormat.JSON));
    }

    @ParameterizedTest
    @EnumSource(DocumentKind.class)
    void a_sample_is_valid(DocumentKind kind) {
        assertEquals(List.of(), schema(kind).validate(Samples.text(kind), InputFormat.JSON));
    }

    @ParameterizedTest
    @EnumSource(DocumentKind.class)
    void a_schema_is_valid_under_the_meta_schema_and_names_itself(DocumentKind kind) throws IOException {
        String text = Documents.schema(kind);
        Schema meta = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
        assertEquals(List.of(), meta.validate(text, InputFormat.JSON));
        ObjectNode schema = (ObjectNode) tree(text);
        assertEquals(
                Node.text("urn:geneticsrules:schema:" + kind.word() + ":0"),
                schema.members().get("$id"));
    }

    @Test
    void the_lists_of_words_in_the_schemas_are_those_of_the_library() throws IOException {
        List<List<String>> lists = new ArrayList<>();
        for (DocumentKind kind : DocumentKind.values()) {
            collectEnums(tree(Documents.schema(kind)), lists);
        }
        assertEquals(
                List.of(
                        Transmission.words(),
                        MapFunction.words(),
                        Sex.words(),
                        Clock.words(),
                        Arrays.stream(Grade.values()).map(Grade::word).toList(),
                        Arrays.stream(QuestionKind.values())
                                .map(QuestionKind::word)
                                .toList(),
                        Arrays.stream(Role.values()).map(Role::word).toList(),
                        Arrays.stream(Relation.values()).map(Relation::word).toList(),
                        Sex.words(),
                        Fertility.words(),
                        Hearing.words(),
                        Arrays.stream(Grade.values()).map(Grade::word).toList(),
                        Arrays.stream(Analysis.Kind.values())
                                .map(Analysis.Kind::word)
                                .toList(),
                        DocumentKind.words().subList(0, 6)),
                lists);
    }

    /** What the schema refuses the reader refuses; what the reader finds at the stage of shape the schema refuses, save the listed. */
    @Test
    void schema_and_reader_refuse_the_same_shapes(TestReporter reporter) throws IOException {
        List<Catalogue> catalogues = List.of(Samples.catalogue());
        Map<String, Integer> refusedByReaderAlone = new TreeMap<>();
        int refusedByBoth = 0;
        int acceptedByBoth = 0;
        for (int seed = 0; seed < MUTATIONS; seed++) {
            DocumentKind kind = List.of(DocumentKind.values()).get(seed % DocumentKind.values().length);
            String damaged = Documents.write(new Mutations(seed).tree(tree(Samples.text(kind))));
            boolean valid = schema(kind).validate(damaged, InputFormat.JSON).isEmpty();
            List<Problem> problems = problems(kind, damaged, catalogues);
            List<String> shape = problems.stream()
                    .filter(problem -> problem.stage() == Stage.SHAPE)
                    .map(Problem::code)
                    .toList();
            assertTrue(valid || !problems.isEmpty(), () -> "the schema alone refuses " + damaged);
            if (!valid) {
                refusedByBoth++;
            } else if (shape.isEmpty()) {
                acceptedByBoth++;
            } else {
                assertTrue(
                        BEYOND_THE_SCHEMA.containsAll(shape),
                        () -> shape + " is not refused by the schema: " + damaged);
                shape.forEach(code -> refusedByReaderAlone.merge(code, 1, Integer::sum));
            }
        }
        reporter.publishEntry("refused by both", Integer.toString(refusedByBoth));
        reporter.publishEntry("accepted by both", Integer.toString(acceptedByBoth));
        reporter.publishEntry("refused by the reader alone", refusedByReaderAlone.toString());
        assertTrue(refusedByBoth > MUTATIONS / 4, refusedByBoth + " refused");
        assertTrue(acceptedByBoth > MUTATIONS / 10, acceptedByBoth + " accepted");
    }

    @ParameterizedTest
    @MethodSource("org.geneticsrules.json.BadDocumentsTest#rows")
    void the_schema_refuses_shapes_that_are_bad_by_hand(BadDocumentsTest.Row row) {
        boolean valid =
                schema(row.kind()).validate(row.text(), InputFormat.JSON).isEmpty();
        boolean shape = row.stage().equals(Stage.SHAPE.word());
        assertTrue(shape ? !valid || BEYOND_THE_SCHEMA.contains(row.code()) : valid, row::toString);
    }

    private static List<Problem> problems(DocumentKind kind, String text, List<Catalogue> catalogues) {
        try {
            Source source = Source.of("damaged", text);
            if (kind == DocumentKind.PATCH) {
                // The shapes of the statements that it sets are those of the model's schema.
                Documents.reader().readPatch(source);
            } else {
                Samples.read(kind, source, Documents.reader(), catalogues);
            }
            return List.of();
        } catch (ProblemsException e) {
            return e.problems();
        }
    }

    private static void collectEnums(Node node, List<List<String>> into) {
        if (node instanceof ObjectNode object) {
            object.members().forEach((name, member) -> {
                if ("enum".equals(name)) {
                    into.add(((ListNode) member)
                            .items().stream()
                                    .map(item -> ((Node.TextNode) item).value())
                                    .toList());
                } else {
                    collectEnums(member, into);
                }
            });
        } else if (node instanceof ListNode list) {
            list.items().forEach(item -> collectEnums(item, into));
        }
    }

    private static Node tree(String text) throws IOException {
        return Tokeniser.read(Source.of("text", text), Limits.standard()).node();
    }

    private static Schema schema(DocumentKind kind) {
        return SCHEMAS.get(kind);
    }
}
