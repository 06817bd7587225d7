package org.geneticsrules.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The command for matings, asked about ferrets. */
@Tag("default-jdk")
class MatingCommandTest {

    @Test
    void two_carriers_of_albino_and_brown_give_9_3_4_with_the_hidden_loci_named() {
        Run run = carriers("hue, eye colour");
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        assertTrue(
                run.out()
                        .startsWith(
                                "Of 16 kits on average: 9 hue black, eye colour dark; 3 hue brown, eye colour dark; 4"
                                        + " hue none seen,\neye colour pink.\n"),
                run.out());
        assertTrue(run.out().contains("hue none seen, eye colour pink      4    1/4     25 %"), run.out());
        assertTrue(
                run.out().contains("B (Dark or brown) may be B/B 25 %; B/b 50 %; b/b 25 % - hidden by mask albino"),
                run.out());
        inOrder(run.out(), "Each kit\n", "Why\n", "What would change it\n", "Cautions\n", "Evidence\n");
    }

    @Test
    void no_line_of_an_answer_is_wider_than_a_hundred_characters() {
        carriers("hue, eye colour").out().lines().forEach(line -> assertTrue(line.length() <= 100, line));
    }

    @Test
    void without_letters_no_genotype_is_shown_but_as_given() {
        Run run = Run.of("mating", "--sire", "C/c", "--dam", "C/c", "--traits", "eye colour", "--words");
        assertTrue(run.out().contains("full colour / albino"), run.out());
        assertEquals(2, run.out().lines().filter(line -> line.contains("C/c")).count(), run.out());
    }

    @Test
    void the_albino_share_rests_on_the_albino_statements_alone_and_hue_lowers_the_grade() {
        JsonNode eye = json("mating", "--sire", "C/c", "--dam", "C/c", "--traits", "eye colour");
        eye.get("evidenceLevel")
                .get("statements")
                .forEach(statement -> assertTrue(
                        statement.get("pointer").asString().matches("/loci/C/.*|/traits/eye colour/.*"),
                        statement.get("pointer").asString()));
        JsonNode hue = json(
                "mating",
                "--sire",
                "C/c M/M b/b r/r",
                "--dam",
                "C/c M/M b/b r/r",
                "--traits",
                "eye colour, hue",
                "--moult",
                "0");
        assertEquals("practice", eye.get("evidenceLevel").get("grade").asString());
        assertEquals("conjecture", hue.get("evidenceLevel").get("grade").asString());
    }

    @Test
    void parents_known_by_look_leave_possible_and_probable_apart_with_the_populations_named() {
        Run run = Run.of(
                "mating",
                "--sire-look",
                "hue: black, dilution: full, eye colour: dark @ week 60, moult 2",
                "--dam-look",
                "hue: black, dilution: full, eye colour: dark @ week 60, moult 2",
                "--look",
                "eye colour: pink",
                "--kits",
                "8");
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        inOrder(
                run.out(),
                "It is possible that a kit shows eye colour pink",
                "0 or 1/4",
                "Possible, whatever the frequencies\n",
                "Probable, only if the frequencies of a population hold\n",
                "few carriers  many carriers",
                "\"few carriers\": Few carriers assumed. Grade: conjecture",
                "Among 8 kits: at least one such kit with a chance of 2359/541696",
                "Hardy-Weinberg");
    }

    @Test
    void a_kit_seen_proves_what_both_parents_carry() {
        JsonNode answer = json(
                "mating",
                "--sire-look",
                "eye colour: dark",
                "--dam-look",
                "eye colour: dark",
                "--look",
                "eye colour: pink",
                "--seen",
                "eye colour: pink");
        JsonNode pink = answer.get("outcomes").get(1);
        assertEquals("pink", pink.get("phenotype").get("eye colour").asString());
        assertEquals(1, pink.get("chances").size());
        assertEquals("4", pink.get("chances").get(0).get("denominator").asString());
        assertEquals("1/4", fraction(answer.get("weightings").get(0).get("probability")));
    }

    @Test
    void eight_kits_of_two_carriers_show_no_albino_one_time_in_ten() {
        Run run = Run.of("mating", "--sire", "C/c", "--dam", "C/c", "--look", "eye colour: pink", "--kits", "8");
        String text = run.out().replaceAll("\\s+", " ");
        assertTrue(
                text.contains(
                        "2.00 on average; none at all with a chance of 6561/65536 (10.01 %), about one time in 10."),
                run.out());
    }

    @Test
    void json_is_the_answer_and_nothing_else() {
        JsonNode answer = json("mating", "--sire", "C/c", "--dam", "C/c", "--look", "eye colour: pink", "--square");
        assertEquals("answer", answer.get("kind").asString());
        assertEquals("1/4", fraction(answer.get("probability")));
        assertEquals("0.250000", answer.get("probability").get("decimal").asString());
        assertEquals(
                "geneticsrules.ferret.common-practice",
                answer.get("model").get("id").asString());
    }

    @Test
    void a_contradiction_is_an_answer_with_an_exit_code_of_its_own() {
        Run run = Run.of("mating", "--sire", "c/c", "--sire-look", "eye colour: dark", "--dam", "C/c");
        assertEquals(ExitCodes.UNDECIDED, run.code());
        assertTrue(run.out().startsWith("What is stated of the sire contradicts itself"), run.out());
        assertEquals("", run.err());
    }

    @Test
    void kits_that_cannot_be_of_these_parents_are_a_contradiction() {
        Run run = Run.of(
                "mating", "--sire", "C/C", "--dam", "C/c", "--traits", "eye colour", "--seen", "eye colour: pink");
        assertEquals(ExitCodes.UNDECIDED, run.code());
        assertTrue(run.out().startsWith("The kits already seen cannot all be kits of these parents"), run.out());
    }

    @Test
    void the_demo_answers_its_questions() {
        Run run = Run.of("demo");
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        inOrder(
                run.out(),
                "Tarn",
                "$ genetics mating",
                "Of 16 kits",
                "sire \\ dam",
                "Fennick",
                "It is possible",
                "Birch",
                "No kit can show dilution full",
                "Otherwise if",
                "Bramble",
                "$ genetics hand-over",
                "White on the head goes with deafness",
                "Sedge",
                "$ genetics describe",
                "All 3 looks can be of one",
                "Otherwise if",
                "Dunlin",
                "$ genetics later",
                "from scattered to nearly all",
                "Otherwise if");
    }

    /** Where a shipped rival comes to another verdict, the text says so right after the verdict, and nowhere else. */
    @Test
    void in_every_demo_rivals_stand_right_after_the_verdict() {
        int disputed = 0;
        for (List<String> command : DemoCommand.commands()) {
            JsonNode answer = json(
                    command.stream().filter(word -> !word.equals("--square")).toArray(String[]::new));
            String text = Run.of(command.toArray(String[]::new)).out().replaceAll("\\s+", " ");
            boolean otherwise = !answer.get("rivalVerdicts").isEmpty();
            String verdict = answer.get("verdict").asString();
            assertEquals(otherwise, text.startsWith(verdict + " Otherwise if "), text);
            for (JsonNode rival : answer.get("rivalVerdicts")) {
                assertTrue(text.contains(rival.get("title").asString()), text);
                assertTrue(text.contains(rival.get("verdict").asString()), text);
                assertFalse(verdict.equals(rival.get("verdict").asString()));
            }
            disputed += otherwise ? 1 : 0;
        }
        assertTrue(disputed > 0 && disputed < DemoCommand.commands().size());
    }

    private static Run carriers(String traits) {
        return Run.of(
                "mating",
                "--sire",
                "C/c B/b",
                "--dam",
                "C/c B/b",
                "--omitted",
                "wild-type",
                "--traits",
                traits,
                "--moult",
                "0");
    }

    private static JsonNode json(String... args) {
        String[] all = Arrays.copyOf(args, args.length + 2);
        all[args.length] = "--format";
        all[args.length + 1] = "json";
        Run run = Run.of(all);
        assertEquals("", run.err());
        assertFalse(run.out().isEmpty());
        return JsonMapper.builder().build().readTree(run.out());
    }

    private static String fraction(JsonNode chance) {
        return chance.get("numerator").asString() + "/"
                + chance.get("denominator").asString();
    }

    private static void inOrder(String text, String... parts) {
        int from = 0;
        for (String part : parts) {
            int at = text.indexOf(part, from);
            assertTrue(at >= 0, "\"" + part + "\" is missing or too early in:\n" + text);
            from = at;
        }
    }
}
