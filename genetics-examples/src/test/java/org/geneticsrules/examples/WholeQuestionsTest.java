package org.geneticsrules.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Questions about sexes, losses, linkage, stages, counts and doubtful sires, asked of the program. */
@Tag("default-jdk")
class WholeQuestionsTest {

    private static final String CAT = "geneticsrules.textbook.cat-orange";
    private static final String YELLOW = "geneticsrules.textbook.mouse-yellow";
    private static final String MAIZE = "geneticsrules.textbook.maize-linkage";
    private static final String SILVERING = "geneticsrules.textbook.guinea-pig-silvering";

    /** From memory: Little 1912, Science 35:784; a black dam and an orange sire. */
    @Test
    void daughters_of_an_orange_tom_and_a_black_queen_are_tortoiseshell_and_sons_black() {
        Run run = Run.of("mating", "--model", CAT, "--sire", "O/Y", "--dam", "o/o", "--traits", "sex, coat");
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        assertTrue(
                run.out().startsWith("Of 2 young on average: 1 female, coat tortoiseshell; 1 male, coat black."),
                run.out());
        assertTrue(run.out().contains("Case 2 of 2, sons, with a chance of 1/2 (50 %):"), run.out());
        assertTrue(run.out().contains("Half of the young conceived are daughters, half are sons."), run.out());
    }

    /** Calculated from the cross above: one in two is a black son. */
    @Test
    void sons_of_a_look_are_counted_in_a_litter() {
        JsonNode answer = json(
                "mating",
                "--model",
                CAT,
                "--sire",
                "O/Y",
                "--dam",
                "o/o",
                "--look",
                "sex: male, coat: black",
                "--kits",
                "2");
        assertEquals("1/2", fraction(answer.get("probability")));
        assertEquals("3/4", fraction(answer.get("litter").get("atLeastOne")));
        assertEquals("1/4", fraction(answer.get("litter").get("all")));
    }

    @Test
    void a_tom_cannot_be_a_dam_and_daughters_are_hinted_at() {
        Run dam = Run.of("mating", "--model", CAT, "--sire", "O/Y", "--dam", "o/Y");
        assertEquals(ExitCodes.UNDECIDED, dam.code());
        assertTrue(
                dam.out().startsWith("What is stated of the dam contradicts itself under this model: no female has"));
        Run merged = Run.of("mating", "--model", CAT, "--sire", "O/Y", "--dam", "o/o");
        assertTrue(
                oneLine(merged).contains("Daughters and sons differ in what is asked; ask for sex too"), merged.out());
    }

    /** From memory: Castle and Little 1910, Science 32:868; two yellow to one of another colour, a quarter lost. */
    @Test
    void of_two_yellow_mice_a_quarter_of_the_young_is_lost_before_birth() {
        JsonNode born = yellow("born");
        assertEquals("2/3", fraction(born.get("probability")));
        assertEquals("1/4", fraction(born.get("lost")));
        JsonNode conceived = yellow("conceived");
        assertEquals("3/4", fraction(conceived.get("probability")));
        assertFalse(conceived.has("lost"));
        Run run = Run.of("mating", "--model", YELLOW, "--sire", "Ay/a", "--dam", "Ay/a", "--traits", "coat colour");
        assertTrue(oneLine(run).contains("Lost before they are born: 1/4 (25 %) of the young conceived"), run.out());
        assertTrue(run.out().contains("1/2 divided by 3/4 = 2/3"), run.out());
        Run never = Run.of("coat", "--model", YELLOW, "--genotype", "Ay/Ay");
        assertEquals(ExitCodes.UNDECIDED, never.code());
        assertTrue(never.out().startsWith("No animal of this genotype is ever born under this model."), never.out());
    }

    private static JsonNode yellow(String counted) {
        return json(
                "mating",
                "--model",
                YELLOW,
                "--sire",
                "Ay/a",
                "--dam",
                "Ay/a",
                "--look",
                "coat colour: yellow",
                "--counted",
                counted);
    }

    /** Calculated from r = 0.188977 (Fisher and Balmukand 1928, J. Genet. 20:79): a quarter each were the loci unlinked. */
    @Test
    void the_strands_of_a_parent_make_a_difference_and_are_shown() {
        assertEquals("811023/2000000", fraction(sugaryGreen("[Su g]/[su G]")));
        assertEquals("188977/2000000", fraction(sugaryGreen("[Su G]/[su g]")));
        assertEquals("1/4", fraction(sugaryGreen("Su/su G/g")));
        Run known = Run.of("mating", "--model", MAIZE, "--sire", "[Su G]/[su g]", "--dam", "su/su g/g");
        assertTrue(oneLine(known).contains("Linked loci of the sire: Su, G on one strand, su, g on the other."));
        Run unknown = Run.of("mating", "--model", MAIZE, "--sire", "Su/su G/g", "--dam", "su/su g/g");
        assertTrue(oneLine(unknown).contains("both ways in which they may lie on its strands are equally likely"));
    }

    private static JsonNode sugaryGreen(String sire) {
        return json(
                        "mating",
                        "--model",
                        MAIZE,
                        "--sire",
                        sire,
                        "--dam",
                        "su/su g/g",
                        "--look",
                        "kernel: sugary, base leaf: green")
                .get("probability");
    }

    /** Published as a kind (Wright 1947, Genetics 32:115): silvering that appears after birth and increases. */
    @Test
    void what_changes_with_the_moult_is_refused_until_the_moult_is_stated() {
        Run refused = Run.of(
                "mating",
                "--model",
                SILVERING,
                "--sire",
                "gr/gr",
                "--dam",
                "gr/gr",
                "--traits",
                "progressive silvering");
        assertEquals(ExitCodes.NOT_UNDERSTOOD, refused.code());
        assertTrue(refused.err().contains("[stage-needed]"), refused.err());
        assertTrue(refused.err().contains("a stage that states the moult"), refused.err());
        assertTrue(refused.err().contains("or look again when it is known"), refused.err());
        assertTrue(silvering("0").startsWith("Each of the young shows progressive silvering none."));
        assertTrue(silvering("2").startsWith("Each of the young shows progressive silvering many."));
        Run all = Run.of("coat", "--model", SILVERING, "--genotype", "gr/gr");
        assertTrue(oneLine(all).contains("\"progressive silvering\" is left out"), all.out());
    }

    private static String silvering(String moult) {
        Run run = Run.of(
                "mating",
                "--model",
                SILVERING,
                "--sire",
                "gr/gr",
                "--dam",
                "gr/gr",
                "--traits",
                "progressive silvering",
                "--moult",
                moult);
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        return run.out();
    }

    /** Calculated: only gr/gr ever shows it, so a sire seen with it at his second moult is gr/gr. */
    @Test
    void what_a_parent_looked_like_at_a_stage_tells_what_it_carries() {
        JsonNode answer = json(
                "mating",
                "--model",
                SILVERING,
                "--sire-look",
                "progressive silvering: many @ moult 2",
                "--dam",
                "Gr/gr",
                "--look",
                "progressive silvering: some",
                "--moult",
                "1");
        assertEquals("1/2", fraction(answer.get("probability")));
        Run early =
                Run.of("mating", "--model", SILVERING, "--sire-look", "progressive silvering: many", "--dam", "Gr/gr");
        assertEquals(ExitCodes.NOT_UNDERSTOOD, early.code());
        assertTrue(early.err().startsWith("problem: --sire-look"), early.err());
        assertTrue(early.err().contains("[stage-needed]"), early.err());
    }

    /**
     * Calculated: of a carrier's litter a quarter is albino, of the other male's none; 1/2 (1 - (3/4)^4) if one sired it all, and
     * 1 - (7/8)^4 if each kit may have either sire.
     */
    @Test
    void two_males_with_access_are_modelled_either_way() {
        assertEquals("175/512", fraction(twoMales().get("litter").get("atLeastOne")));
        JsonNode shared = twoMales("--shared-litter");
        assertEquals("1695/4096", fraction(shared.get("litter").get("atLeastOne")));
        assertEquals("1/8", fraction(shared.get("probability")));
        assertEquals("1/12", fraction(twoMales("--other-chance", "2/3").get("probability")));
    }

    private static JsonNode twoMales(String... more) {
        String[] asked = {
            "mating",
            "--sire",
            "C/c",
            "--other-sire",
            "C/C",
            "--dam",
            "C/c",
            "--look",
            "eye colour: pink",
            "--kits",
            "4"
        };
        String[] all = Arrays.copyOf(asked, asked.length + more.length);
        System.arraycopy(more, 0, all, asked.length, more.length);
        return json(all);
    }

    /** Calculated: no albino among one kit or two, as often, is 1/2 3/4 + 1/2 9/16. */
    @Test
    void sizes_of_litters_may_be_a_named_distribution() {
        String[] args = {
            "mating",
            "--sire",
            "C/c",
            "--dam",
            "C/c",
            "--look",
            "eye colour: pink",
            "--litter-sizes",
            "own records: 1 1/2, 2 1/2"
        };
        JsonNode litter = json(args).get("litter");
        assertEquals("21/32", fraction(litter.get("counts").get(0).get("probability")));
        assertEquals("own records", litter.get("size").asString());
        assertTrue(oneLine(Run.of(args)).contains("Sizes of litters are distributed as in \"own records\""));
    }

    @Test
    void words_in_place_of_letters_reach_into_the_causes() {
        Run letters = Run.of("coat", "--genotype", "C/c", "--traits", "eye colour");
        assertTrue(letters.out().contains("hidden by dominant allele C"), letters.out());
        Run words = Run.of("coat", "--genotype", "C/c", "--traits", "eye colour", "--words");
        assertTrue(words.out().contains("hidden by dominant allele full colour"), words.out());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "mating --season spring | unknown season \"spring\"",
                "mating --weeks -1 | problem: --weeks: -1 is no count",
                "mating --counted weaned | unknown word \"weaned\"",
                "mating --look sex:lady | unknown sex \"lady\"",
                "mating --look hew:pink --kits 2 | unknown trait \"hew\"",
                "mating --litter-sizes 6_1 | the sizes have no name",
                "mating --litter-sizes own:6_1_2 | is no new size with its chance",
                "mating --litter-sizes own:6_1/2 | sum to 1",
                "mating --kits 4 --litter-sizes own:6_1 | state one of them",
                "mating --other-sire C/c --other-chance 3/2 | problem: --other-chance",
                "mating --dam-look hue:black@week_one | unknown season \"week_one\"",
                "mating --dam-look hue:black@8 | is no stage",
                "coat --sex tom | unknown word \"tom\""
            })
    void what_is_mistyped_is_named(String line, String expected) {
        Run run = Run.of(Arrays.stream(line.split(" "))
                .map(word -> word.startsWith("--") ? word : word.replace('_', ' '))
                .toArray(String[]::new));
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code(), run.out());
        assertEquals("", run.out());
        assertTrue(run.err().contains(expected.replace('_', ' ')), run.err());
    }

    @Test
    void a_question_too_large_to_answer_has_an_exit_code_of_its_own(@TempDir Path folder) throws IOException {
        Path traits = Files.writeString(folder.resolve("traits.json"), """
                {"formatVersion": 0, "kind": "catalogue", "id": "invented.traits", "version": "1.0.0", "traits": {
                  "glow": {"states": ["bright", "unlit"]}}}
                """);
        String loci = IntStream.range(0, 7)
                .mapToObj(i -> """
                        "L%d": {"alleles": ["A%d", "a%d"], "expressions": ["on", "off"],
                          "dominance": {"order": ["A%d > a%d"], "shows": {"A%d": "on", "a%d": "off"}}}""".replace("%d", Integer.toString(i)))
                .collect(Collectors.joining(","));
        String all =
                IntStream.range(0, 7).mapToObj(i -> "\"L" + i + "\": [\"on\"]").collect(Collectors.joining(","));
        Path model = Files.writeString(folder.resolve("model.json"), """
                {"formatVersion": 0, "kind": "model", "id": "invented.seven", "version": "1.0.0",
                  "catalogue": {"id": "invented.traits", "version": "1.0.0"}, "loci": {%s},
                  "traits": {"glow": {"cases": {"bright": {"when": {%s}, "state": "bright"}}, "otherwise": "unlit"}}}
                """.formatted(loci, all));
        String carrier = IntStream.range(0, 7).mapToObj(i -> "A" + i + "/a" + i).collect(Collectors.joining(" "));
        Run run = Run.of(
                "mating",
                "--file",
                model.toString(),
                "--catalogue",
                traits.toString(),
                "--sire",
                carrier,
                "--dam",
                carrier,
                "--square");
        assertEquals(ExitCodes.TOO_LARGE, run.code(), run.out() + run.err());
        assertTrue(run.err().startsWith("refused: "), run.err());
        assertTrue(run.err().contains("fewer loci"), run.err());
        assertEquals("", run.out());
    }

    @Test
    void a_fault_of_the_program_has_an_exit_code_of_its_own() {
        Writer broken = new Writer() {
            @Override
            public void write(char[] text, int from, int count) {
                throw new IllegalStateException("the paper is out");
            }

            @Override
            public void flush() {
                // nothing is kept back
            }

            @Override
            public void close() {
                // nothing is open
            }
        };
        StringWriter err = new StringWriter();
        int code = Program.run(
                new String[] {"mating", "--sire", "C/c", "--dam", "C/c", "--traits", "eye colour"},
                new PrintWriter(broken),
                new PrintWriter(err));
        assertEquals(ExitCodes.FAILED, code);
        assertTrue(err.toString().startsWith("failed: java.lang.IllegalStateException: the paper is out."));
        assertTrue(err.toString().contains("This is a fault of the program"));
    }

    private static String oneLine(Run run) {
        return run.out().replaceAll("\\s+", " ");
    }

    private static JsonNode json(String... args) {
        String[] all = Arrays.copyOf(args, args.length + 2);
        all[args.length] = "--format";
        all[args.length + 1] = "json";
        Run run = Run.of(all);
        assertEquals("", run.err());
        return JsonMapper.builder().build().readTree(run.out());
    }

    private static String fraction(JsonNode chance) {
        return chance.get("numerator").asString() + "/"
                + chance.get("denominator").asString();
    }
}
