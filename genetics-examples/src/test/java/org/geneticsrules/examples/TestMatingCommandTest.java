package org.geneticsrules.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.geneticsrules.json.AnswerDocument;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The command for test matings, asked about ferrets; the numbers are those of the table in the guide, calculated. */
@Tag("default-jdk")
class TestMatingCommandTest {

    private static final String[] FENNICK = {
        "test-mating", "--alone", "--sex", "male", "--look", "eye colour: dark", "--carries", "albino"
    };

    private static Run fennick(String... more) {
        String[] all = Arrays.copyOf(FENNICK, FENNICK.length + more.length);
        System.arraycopy(more, 0, all, FENNICK.length, more.length);
        return Run.of(all);
    }

    @Test
    void a_dark_eyed_hob_is_tested_for_albino_by_the_mates_that_tell_most() {
        Run run = fennick();
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        assertTrue(
                run.out().startsWith("If the animal carried albino, 5 kits by a mate with two doses of albino"),
                run.out());
        assertTrue(
                run.out()
                        .lines()
                        .anyMatch(line -> line.matches("a mate with two doses of albino +kits of one mate.* 5 +7 +0")),
                run.out());
        assertTrue(
                run.out()
                        .lines()
                        .anyMatch(line ->
                                line.matches("a mate with full colour and albino +kits of one mate.* 11 +17 +0")),
                run.out());
        assertTrue(run.out().contains("DNA test of the animal itself"), run.out());
        assertTrue(run.out().contains("tyrosinase"), "the evidence for a test of the DNA is named");
        assertTrue(run.out().contains("Nothing harmful is bred to learn something"), run.out());
        assertTrue(run.out().contains("check your local law"), run.out());
        run.out().lines().forEach(line -> assertTrue(line.length() <= 100, line));
    }

    @Test
    void own_daughters_are_left_out_until_they_are_asked_for_and_never_tell_one_by_one() {
        String[] daughters = {"--own-young", "--mate", "C/C", "--omitted", "wild-type", "--genotype", "C/-"};
        Run left = fennick(daughters);
        assertEquals(ExitCodes.ANSWERED, left.code(), left.err());
        assertTrue(left.out().contains("- Left out: own daughters.\n    \"close mating\" (the relation)"), left.out());
        String[] asked = Arrays.copyOf(daughters, daughters.length + 2);
        asked[daughters.length] = "--in-spite-of";
        asked[daughters.length + 1] = "close mating";
        Run run = fennick(asked);
        assertTrue(
                run.out().lines().anyMatch(line -> line.matches("own daughters +kits of one mate.* never +never +1/2")),
                run.out());
        assertTrue(
                run.out().lines().anyMatch(line -> line.matches("own daughters +mates in turn.* 23 +35 +0")),
                run.out());
        assertTrue(run.out().contains("These two are close relatives"), run.out());
    }

    @Test
    void white_on_the_head_is_not_bred_for_a_test() {
        Run run = Run.of(
                "test-mating",
                "--alone",
                "--sex",
                "female",
                "--genotype",
                "H/h C/-",
                "--omitted",
                "wild-type",
                "--carries",
                "albino",
                "--traits",
                "eye colour");
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        assertTrue(run.out().startsWith("No mating is proposed to show whether the animal carries albino"), run.out());
        assertTrue(run.out().contains("\"head white and hearing\" (the animal)"), run.out());
    }

    /** Everything is multiplied again from the document alone: after n steps a miss is the sum of w v^n. */
    @Test
    void the_document_follows_its_schema_and_can_be_reckoned_again() {
        Run run = fennick(
                "--likely",
                "2/3",
                "--litters-of",
                "6",
                "--sure",
                "90 %, 99.9 %",
                "--format",
                "json",
                "--own-young",
                "--mate",
                "C/C",
                "--in-spite-of",
                "close mating",
                "--omitted",
                "wild-type",
                "--genotype",
                "C/-");
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        String id = "urn:geneticsrules:schema:answer:0";
        assertEquals(
                List.of(),
                SchemaRegistry.withDefaultDialect(
                                SpecificationVersion.DRAFT_2020_12,
                                builder -> builder.schemas(Map.of(id, AnswerDocument.schema())))
                        .getSchema(SchemaLocation.of(id))
                        .validate(run.out(), InputFormat.JSON)
                        .stream()
                        .map(Object::toString)
                        .toList());
        JsonNode answer = JsonMapper.shared().readTree(run.out());
        JsonNode test = answer.get("tests").get(0);
        assertEquals(3, test.get("courses").size());
        int reckoned = 0;
        for (JsonNode course : test.get("courses")) {
            JsonNode miss = null;
            for (JsonNode reason : answer.get("because")) {
                if (reason.get("step").equals(course.get("step"))) {
                    miss = reason;
                }
            }
            for (JsonNode needed : course.get("needed")) {
                BigDecimal left = BigDecimal.ONE.subtract(decimal(needed.get("confidence")));
                JsonNode show = needed.get("toShow");
                if (show.has("steps")) {
                    int steps = show.get("steps").asInt();
                    assertTrue(missed(miss, steps).compareTo(left) <= 0, course.toString());
                    assertTrue(missed(miss, steps - 1).compareTo(left) > 0, course.toString());
                    assertEquals(
                            0,
                            missed(miss, steps)
                                    .round(new MathContext(20))
                                    .compareTo(decimal(show.get("missed")).round(new MathContext(20))));
                    // Bayes' rule from 2/3 before: 2 m / (2 m + 1)
                    BigDecimal twice = missed(
                                    miss, needed.get("toBelieve").get("steps").asInt())
                            .multiply(new BigDecimal(2));
                    assertTrue(twice.divide(twice.add(BigDecimal.ONE), MathContext.DECIMAL128)
                                    .compareTo(left)
                            <= 0);
                    reckoned++;
                } else {
                    assertTrue(missed(miss, 10_000).compareTo(left) > 0, course.toString());
                    assertTrue(decimal(course.get("neverMissedByLessThan")).compareTo(left) >= 0);
                }
            }
        }
        assertEquals(2, reckoned);
    }

    private static BigDecimal missed(JsonNode miss, int steps) {
        BigDecimal sum = BigDecimal.ZERO;
        for (JsonNode one : miss.get("chances")) {
            sum = sum.add(decimal(one.get("probability"))
                    .multiply(decimal(one.get("missed")).pow(steps, MathContext.DECIMAL128)));
        }
        return sum;
    }

    private static BigDecimal decimal(JsonNode chance) {
        return new BigDecimal(chance.get("numerator").asString())
                .divide(new BigDecimal(chance.get("denominator").asString()), MathContext.DECIMAL128);
    }

    @Test
    void by_words_no_letter_of_a_locus_is_shown_but_as_given() {
        Run run = fennick("--words");
        assertTrue(
                run.out().contains("Whether it carries albino, at locus Pigment series down to albino\n"), run.out());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "test-mating | Missing required option: '--sex=SEX'",
                "test-mating --sex hob | unknown word \"hob\"",
                "test-mating --sex male --carries albinos | did you mean \"albino\"?",
                "test-mating --sex male --carries standard | \"standard\" names alleles of 2 loci",
                "test-mating --sex male --sure 1 | no number of kits makes it certain",
                "test-mating --sex male --sure often | expected a probability",
                "test-mating --sex male --litters-of 99 | 1 to 30",
                "test-mating --sex male --carries albino --in-spite-of close | close mating, lost young"
            })
    void what_is_mistyped_is_named_and_nothing_is_printed(String line, String expected) {
        Run run = Run.of(line.split(" "));
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code());
        assertEquals("", run.out());
        assertTrue(run.err().contains(expected), run.err());
        assertFalse(run.err().contains("\tat "), run.err());
    }
}
