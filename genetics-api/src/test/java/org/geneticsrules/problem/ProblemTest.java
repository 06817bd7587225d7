package org.geneticsrules.problem;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProblemTest {

    @Test
    void the_text_names_place_message_expectation_nearest_and_code() {
        Problem bare = Problem.of(Stage.SHAPE, "no-alleles", "/loci/C/alleles", "locus C has no alleles");
        assertEquals("/loci/C/alleles: locus C has no alleles [no-alleles]", bare.toString());
        Problem full = Problem.of(Stage.REFERENCES, "unknown-allele", "", "unknown allele \"k\"")
                .expecting("one of C, c")
                .near(Optional.of("c"))
                .at(new Position(1, 5));
        assertEquals(
                "1:5 unknown allele \"k\"; expected one of C, c; did you mean \"c\"? [unknown-allele]",
                full.toString());
    }

    @Test
    void a_place_counts_from_1() {
        assertEquals("2:7", new Position(2, 7).toString());
        assertThrows(IllegalArgumentException.class, () -> new Position(0, 1));
        assertThrows(IllegalArgumentException.class, () -> new Position(1, 0));
    }

    /** RFC 6901: a tilde is written ~0 and a slash ~1. */
    @ParameterizedTest
    @CsvSource({"hue, /hue", "C/c, /C~1c", "a~b, /a~0b", "~1, /~01", "'', /", "white hairs, /white hairs"})
    void a_pointer_escapes_tilde_and_slash(String name, String pointer) {
        assertEquals(pointer, Pointer.of(name));
        assertEquals("/traits" + pointer, Pointer.of("traits", name));
    }

    @Test
    void a_pointer_of_no_name_is_the_whole_document() {
        assertEquals("", Pointer.of());
    }

    @Test
    void an_unknown_name_lists_the_known_ones_only_while_they_are_few() {
        List<String> twelve = new ArrayList<>();
        for (int i = 1; i <= 12; i++) {
            twelve.add("name" + i);
        }
        Problem few = Problems.unknown(Stage.REFERENCES, "unknown-x", "/x", "thing", "nam1", twelve);
        assertEquals("unknown thing \"nam1\"", few.message());
        assertEquals(Optional.of("one of " + String.join(", ", twelve)), few.expected());
        assertEquals(Optional.of("name1"), few.nearest());
        twelve.add("name13");
        Problem many = Problems.unknown(Stage.REFERENCES, "unknown-x", "/x", "thing", "nam1", twelve);
        assertEquals(Optional.empty(), many.expected());
        assertEquals(Optional.of("name1"), many.nearest());
        assertEquals(
                Optional.empty(),
                Problems.unknown(Stage.REFERENCES, "unknown-x", "/x", "thing", "nam1", List.of())
                        .expected());
    }

    @Test
    void a_stage_reports_all_its_problems_together_in_order() {
        Problems problems = new Problems(Stage.MEANING);
        assertDoesNotThrow(problems::throwIfAny);
        problems.add("first", "/a", "one thing");
        problems.add("second", "/b", "another thing", "something else");
        List<Problem> before = problems.list();
        problems.unknown("third", "/c", "colour", "grene", List.of("green", "red"));
        assertEquals(2, before.size());
        ProblemsException thrown = assertThrows(ProblemsException.class, problems::throwIfAny);
        assertEquals(problems.list(), thrown.problems());
        assertEquals(
                "/a: one thing [first]\n/b: another thing; expected something else [second]\n"
                        + "/c: unknown colour \"grene\"; expected one of green, red; did you mean \"green\"? [third]",
                thrown.getMessage());
        thrown.problems().forEach(problem -> assertEquals(Stage.MEANING, problem.stage()));
    }

    @Test
    void an_exception_without_problem_is_a_mistake() {
        assertThrows(IllegalArgumentException.class, () -> new ProblemsException(List.of()));
        Problem only = Problem.of(Stage.SYNTAX, "bad", "", "bad");
        assertEquals(List.of(only), new ProblemsException(only).problems());
    }

    @Test
    void stages_are_named_in_the_order_of_checking() {
        List<String> words = new ArrayList<>();
        for (Stage stage : Stage.values()) {
            words.add(stage.word());
        }
        assertEquals(List.of("syntax", "shape", "references", "meaning"), words);
    }

    @Test
    void a_refusal_names_estimate_limit_and_alternative() {
        TooLargeException refused = new TooLargeException("boxes", 250_000.0, 200_000, "ask about fewer traits.");
        assertEquals(
                "an exact answer needs about 250000 boxes, more than the 200000 allowed; ask about fewer traits.",
                refused.getMessage());
        assertEquals(250_000.0, refused.estimate());
        assertEquals(200_000.0, refused.limit());
    }
}
