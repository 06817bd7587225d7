package org.geneticsrules.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is no JSON text, and where that is noticed. */
class SyntaxTest {

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "``|empty-document|1:1",
                "` \n `|empty-document|2:2",
                "{\"kind\": \"model\"|not-json|1:17",
                "{\"kind\": \"mod|not-json|1:14",
                "{\"kind\": \"model\",}|not-json|1:18",
                "[1, 2|not-json|1:6",
                "{\"a\": 1} {}|trailing-text|1:10",
                "{\"a\": 1, \"b\": 2, \"a\": 3}|duplicate-key|1:18",
                "`{\n  \"a\": {\"b\": 1,\n    \"\\u0062\": 2}}`|duplicate-key|3:5",
                "{\"a\": NaN}|not-json|1:10",
                "{\"a\": Infinity}|not-json|1:15",
                "{\"a\": 01}|not-json|1:8",
                "{\"a\": +1}|not-json|1:8",
                "{\"a\": .5}|not-json|1:7",
                "{\"a\": 'b'}|not-json|1:7",
                "{a: 1}|not-json|1:2",
                "{\"a\": 1 /* note */}|not-json|1:9",
                "`{\"a\": \"b\tc\"}`|not-json|1:9",
                "{\"a\": \"\\q\"}|not-json|1:9",
                "{\"a\": \"\\ud800\"}|lone-surrogate|1:7",
                "{\"\\udc00\": 1}|lone-surrogate|1:2",
                "{\"a\": 1e999999999}|number-out-of-range|1:7",
                "{\"a\": 1e-999999999}|number-out-of-range|1:7",
                "{\"a\": 1e99999999999999999999}|number-out-of-range|1:7",
            })
    void a_mistake_of_syntax_is_located(String text, String code, String position) {
        Problem problem = onlyProblem(Source.of("text", text));
        assertEquals(code, problem.code(), problem::toString);
        assertEquals(Stage.SYNTAX, problem.stage());
        assertEquals(position, problem.position().orElseThrow().toString(), problem::toString);
        assertFalse(problem.message().contains("Feature"), "advice for programmers of the reader: " + problem);
    }

    @Test
    void a_duplicate_key_names_its_first_place() {
        Problem problem = onlyProblem(Source.of("text", "{\"a\": 1, \"b\": 2, \"a\": 3}"));
        assertTrue(problem.message().contains("first at 1:2"), problem.message());
    }

    @Test
    void bytes_that_are_not_utf_8_are_refused_where_they_stand() {
        byte[] latin = "{\n\"a\": \"\u00e9t\u00e9\"}".getBytes(StandardCharsets.ISO_8859_1);
        Problem problem = onlyProblem(Source.of("latin", latin));
        assertEquals("not-utf-8", problem.code());
        assertEquals("2:7", problem.position().orElseThrow().toString());
    }

    @Test
    void utf_16_is_refused() {
        byte[] wide = "{\"kind\": \"model\"}".getBytes(StandardCharsets.UTF_16);
        assertEquals("not-utf-8", onlyProblem(Source.of("wide", wide)).code());
    }

    @Test
    void a_text_with_half_a_character_is_refused() {
        assertEquals(
                "not-utf-8",
                onlyProblem(Source.of("half", "{\"a\": \"\ud800\"}")).code());
    }

    @Test
    void a_byte_order_mark_is_passed_over_and_not_counted() {
        String marked = "\uFEFF" + Samples.text(DocumentKind.CATALOGUE);
        assertEquals(
                Samples.catalogue().reference(),
                Documents.reader().readCatalogue(Source.of("marked", marked)).reference());
        Problem problem = onlyProblem(Source.of("marked", "\uFEFF{x"));
        assertEquals("1:2", problem.position().orElseThrow().toString());
    }

    private static Problem onlyProblem(Source source) {
        ProblemsException thrown =
                assertThrows(ProblemsException.class, () -> Documents.reader().readCatalogue(source));
        List<Problem> problems = thrown.problems();
        assertEquals(1, problems.size(), thrown::getMessage);
        return problems.get(0);
    }
}
