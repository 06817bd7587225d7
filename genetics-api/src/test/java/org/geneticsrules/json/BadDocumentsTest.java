package org.geneticsrules.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every mistake that a document can hold is found, named and located; the table is {@code bad-documents.txt}. */
class BadDocumentsTest {

    /** Codes that no file can reach, because a builder's caller alone can make the mistake; {@link BuilderMistakesTest} has them. */
    private static final Set<String> BUILDERS_ALONE = Set.of(
            "blank-id",
            "dominance-in-part",
            "duplicate-id",
            "duplicate-light",
            "duplicate-season",
            "empty-group",
            "no-alleles",
            "no-states",
            "other-record",
            "too-many-intervals");

    /** Codes of questions, of genotype text and of records held against a model; the tests of their types have them. */
    private static final Set<String> OF_QUESTIONS = Set.of(
            "genotype-sex",
            "names-exclude-each-other",
            "not-in-use",
            "several-facets",
            "several-vocabularies",
            "too-many-looks",
            "unknown-name",
            "unknown-population",
            "unknown-season",
            "unknown-vocabulary");

    /** Where the codes of genotype text are. */
    private static final Set<String> GENOTYPE_TEXT =
            Set.of("GenotypeParser.java", "GenotypeReading.java", "GenotypeText.java", "PairReader.java");

    /** Codes of the text before it is a tree, and of limits; {@link SyntaxTest} and {@link LimitsTest} have them. */
    private static final Set<String> OF_THE_TEXT = Set.of(
            "duplicate-key",
            "empty-document",
            "lone-surrogate",
            "not-json",
            "not-utf-8",
            "number-out-of-range",
            "too-deep",
            "too-large-to-check",
            "too-many-bytes",
            "too-many-items",
            "trailing-text");

    /** Codes that take several documents to reach; {@link PatchTest} has them. */
    private static final Set<String> OF_SEVERAL_PATCHES = Set.of("patches-overlap", "repeated-patch");

    /** One block of the table. */
    record Row(DocumentKind kind, String stage, String code, String pointer, List<String[]> edits, String message) {
        /** The sample with the mistake made. */
        String text() {
            String text = Samples.text(kind);
            for (String[] edit : edits) {
                assertTrue(text.contains(edit[0]), () -> "the sample does not hold " + edit[0]);
                text = text.replace(edit[0], edit[1]);
            }
            return text;
        }

        @Override
        public String toString() {
            return code + " at " + pointer;
        }
    }

    static List<Row> rows() {
        List<Row> rows = new ArrayList<>();
        for (String block : Samples.resource("bad-documents.txt").split("\n\n== ", -1)) {
            if (!block.startsWith("#")) {
                rows.add(row(block));
            }
        }
        return rows;
    }

    private static Row row(String block) {
        String[] head = block.substring(0, block.indexOf('\n')).split(" *\\| *", -1);
        List<String[]> edits = new ArrayList<>();
        Matcher edit = Pattern.compile("^- ([\\s\\S]*?)\n\\+ ([\\s\\S]*?)(?=\n[-?] )", Pattern.MULTILINE)
                .matcher(block);
        while (edit.find()) {
            edits.add(new String[] {edit.group(1), edit.group(2)});
        }
        String message = block.substring(block.indexOf("\n? ") + 3).strip();
        return new Row(DocumentKind.valueOf(head[0]), head[1], head[2], head[3], edits, message);
    }

    @ParameterizedTest
    @MethodSource("rows")
    void the_mistake_is_found_where_it_was_made(Row row) {
        Source source = Source.of("damaged", row.text());
        ProblemsException thrown = assertThrows(ProblemsException.class, () -> read(row.kind, source));
        List<Problem> found = thrown.problems().stream()
                .filter(problem -> problem.code().equals(row.code))
                .filter(problem -> problem.pointer().equals(row.pointer))
                .toList();
        assertTrue(!found.isEmpty(), () -> "found only " + thrown.getMessage());
        Problem problem = found.get(0);
        assertEquals(row.stage, problem.stage().word());
        assertTrue(problem.toString().contains(row.message), problem::toString);
        assertTrue(problem.position().isPresent(), problem::toString);
    }

    /** A code that is added to the library without a document that reaches it fails here. */
    @Test
    void every_code_in_the_sources_is_reached() throws IOException {
        Set<String> expected = new TreeSet<>();
        Pattern code = Pattern.compile(
                "(?:\\.add|unknown|[Pp]roblem|of|sentence|text|read)\\(\\s*(?:\\w+, |Stage\\.\\w+,\\s*)?"
                        + "\"([a-z0-9]+(?:-[a-z0-9]+)+)\"");
        for (String name : List.of("model", "trait", "patch", "pedigree", "vocabulary", "json")) {
            try (Stream<Path> files = Files.list(Path.of("src/main/java/org/geneticsrules/" + name))) {
                for (Path file : files.filter(path -> !GENOTYPE_TEXT.contains(String.valueOf(path.getFileName())))
                        .toList()) {
                    Matcher found = code.matcher(Files.readString(file));
                    while (found.find()) {
                        expected.add(found.group(1));
                    }
                }
            }
        }
        assertTrue(expected.size() > 50, expected::toString);
        Set<String> reached = new LinkedHashSet<>(OF_THE_TEXT);
        reached.addAll(BUILDERS_ALONE);
        reached.addAll(OF_QUESTIONS);
        reached.addAll(OF_SEVERAL_PATCHES);
        rows().forEach(row -> reached.add(row.code));
        expected.removeAll(reached);
        assertEquals(Set.of(), expected, "codes without a document that reaches them");
    }

    private static Object read(DocumentKind kind, Source source) {
        return kind == DocumentKind.CAUTIONS
                ? Documents.reader().readCautions(source, Samples.catalogue())
                : Samples.read(kind, source, Documents.reader(), List.of(Samples.catalogue()));
    }
}
