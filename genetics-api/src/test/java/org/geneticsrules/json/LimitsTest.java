package org.geneticsrules.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.InputStream;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.geneticsrules.problem.ProblemsException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class LimitsTest {

    private static final Limits STANDARD = Limits.standard();

    static Stream<Arguments> limits() {
        return Stream.of(
                Arguments.of("too-deep", STANDARD.withDepth(3)),
                Arguments.of("too-long-text", STANDARD.withTextLength(12)),
                Arguments.of("too-long-name", STANDARD.withNameLength(10)),
                Arguments.of("too-long-number", STANDARD.withNumberLength(3)),
                Arguments.of("too-many-items", STANDARD.withItems(5)),
                Arguments.of("too-many-loci", STANDARD.withLoci(1)),
                Arguments.of("too-many-groups", STANDARD.withLoci(5)),
                Arguments.of("too-many-alleles", STANDARD.withAlleles(2)),
                Arguments.of("too-many-order-statements", STANDARD.withAlleles(1)),
                Arguments.of("too-many-traits", STANDARD.withTraits(3)),
                Arguments.of("too-many-cases", STANDARD.withCases(1)),
                Arguments.of("too-many-masks", STANDARD.withMasks(2)),
                Arguments.of("too-many-bytes", STANDARD.withBytes(200)));
    }

    @ParameterizedTest
    @MethodSource("limits")
    void a_document_above_a_limit_is_refused(String code, Limits limits) {
        assertTrue(codes(Samples.text(DocumentKind.MODEL), limits).contains(code), code);
    }

    @Test
    void a_sense_with_too_many_looks_is_refused() {
        Source names = Source.of("names", Samples.text(DocumentKind.VOCABULARY));
        ProblemsException thrown = assertThrows(
                ProblemsException.class,
                () -> Documents.reader(STANDARD.withCases(1)).readVocabulary(names, List.of(Samples.catalogue())));
        assertEquals("too-many-looks", thrown.problems().get(0).code());
        assertEquals("/names/ash/senses/old/looks", thrown.problems().get(0).pointer());
    }

    @Test
    void a_document_at_the_limits_is_read() {
        Limits exact = new Limits(Samples.text(DocumentKind.MODEL).length(), 8, 24, 13, 4, 17, 11, 3, 5, 2, 4);
        assertEquals(List.of(), codes(Samples.text(DocumentKind.MODEL), exact));
    }

    /** A source without end: only a reader that stops at the limit returns. */
    @Test
    void reading_stops_at_the_limit() {
        long[] served = {0};
        Source endless = Source.opening("endless", () -> new InputStream() {
            @Override
            public int read() {
                served[0]++;
                return ' ';
            }

            @Override
            public int read(byte[] into, int from, int length) {
                Arrays.fill(into, from, from + length, (byte) ' ');
                served[0] += length;
                return length;
            }
        });
        ProblemsException thrown =
                assertThrows(ProblemsException.class, () -> Documents.reader().readCatalogue(endless));
        assertEquals("too-many-bytes", thrown.problems().get(0).code());
        assertTrue(served[0] < STANDARD.bytes() + 10_000L, served[0] + " bytes were read");
    }

    @Test
    void a_tower_of_lists_is_refused() {
        String tower = "[".repeat(1_000_000);
        assertEquals(List.of("too-deep"), codes(tower, STANDARD));
    }

    @Test
    void problems_beyond_two_hundred_are_counted() {
        String keys =
                IntStream.range(0, 1_000).mapToObj(i -> "\"k" + i + "\": 0").collect(Collectors.joining(", "));
        List<String> codes = codes("{" + keys + "}", STANDARD);
        assertEquals(201, codes.size());
        assertEquals("more-problems", codes.get(200));
    }

    /** Eighteen cases on two loci each leave 2^18 boxes uncovered. */
    @Test
    void a_model_whose_check_would_take_too_much_work_is_refused() {
        String loci = IntStream.range(0, 36)
                .mapToObj(i -> "\"L" + i + "\": {\"alleles\": [\"A\", \"a\"], \"dominance\": "
                        + "{\"order\": [\"A > a\"], \"shows\": {\"A\": \"yes\", \"a\": \"no\"}}}")
                .collect(Collectors.joining(", "));
        String cases = IntStream.range(0, 18)
                .mapToObj(i -> "\"c" + i + "\": {\"when\": {\"L" + 2 * i + "\": [\"yes\"], \"L" + (2 * i + 1)
                        + "\": [\"yes\"]}, \"state\": \"pink\"}")
                .collect(Collectors.joining(", "));
        String model = "{\"formatVersion\": 0, \"kind\": \"model\", \"id\": \"m\", \"version\": \"1\", \"catalogue\": "
                + "{\"id\": \"example.traits\", \"version\": \"1.0.0\"}, \"loci\": {" + loci
                + "}, \"traits\": {\"eye\": {\"cases\": {" + cases + "}, \"otherwise\": \"dark\"}}}";
        assertEquals(List.of("too-large-to-check"), codes(model, STANDARD));
    }

    @Test
    void a_limit_below_one_and_a_depth_above_five_hundred_are_refused() {
        assertThrows(IllegalArgumentException.class, () -> STANDARD.withBytes(0));
        assertThrows(IllegalArgumentException.class, () -> STANDARD.withDepth(501));
        assertEquals(500, STANDARD.withDepth(500).depth());
    }

    private static List<String> codes(String text, Limits limits) {
        try {
            Documents.reader(limits).readModel(Source.of("text", text), List.of(Samples.catalogue()));
            return List.of();
        } catch (ProblemsException e) {
            return e.problems().stream().map(problem -> problem.code()).toList();
        }
    }
}
