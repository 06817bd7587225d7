package org.geneticsrules.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Questions that are frozen, run again and compared, from the command line; models, litters and names are invented. */
@Tag("default-jdk")
class FrozenCommandsTest {

    private static final String TRAITS = """
            {"formatVersion": 0, "kind": "catalogue", "id": "own.traits", "version": "1",
             "traits": {"coat": {"states": ["coloured", "white"]}}}
            """;

    private static final String MODEL = """
            {"formatVersion": 0, "kind": "model", "id": "own.model", "version": "1",
             "catalogue": {"id": "own.traits", "version": "1"},
             "loci": {"C": {"alleles": ["C", "c"], "expressions": ["pigment", "albino"],
               "dominance": {"order": ["C > c"], "shows": {"C": "pigment", "c": "albino"}}}},
             "traits": {"coat": {"cases": {"white": {"when": {"C": ["albino"]}, "state": "white"}}, "otherwise": "coloured"}},
             "populations": {"any": {"frequencies": {"C": {"C": "9/10", "c": "1/10"}}}}}
            """;

    private static final String RIVAL = MODEL.replace("own.model", "own.rival")
            .replace("\"state\": \"white\"", "\"chance\": {\"white\": \"1/2\", \"coloured\": \"1/2\"}");

    private static final String LITTERS = """
            id,sex,litter,dam,sire,count,trait: coat,ascertainment
            hob,male,,,,,coloured,
            jill,female,,,,,coloured,
            ,,first,jill,hob,5,coloured,complete
            ,,first,jill,hob,2,white,complete
            ,,second,jill,hob,6,coloured,complete
            """;

    @TempDir
    private Path folder;

    @BeforeEach
    void write() throws IOException {
        write("traits.json", TRAITS);
        write("model.json", MODEL);
        write("rival.json", RIVAL);
        write("litters.csv", LITTERS);
    }

    private String write(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text).toString();
    }

    private String file(String name) {
        return folder.resolve(name).toString();
    }

    private Run asked(String command, String... more) {
        List<String> words = new ArrayList<>(List.of(
                command,
                "--file",
                file("model.json"),
                "--catalogue",
                file("traits.json"),
                "--pedigree",
                file("litters.csv"),
                "--draws",
                "999"));
        words.addAll(List.of(more));
        return Run.of(words.toArray(String[]::new));
    }

    private String frozen() {
        Run run = asked("which-model", "--rival", file("rival.json"), "--freeze", file("frozen.json"));
        assertEquals("", run.err());
        return file("frozen.json");
    }

    private static String flowing(String text) {
        return text.replaceAll("\\s+", " ");
    }

    @Test
    void freezing_changes_nothing_in_the_answer_and_the_file_needs_no_other() throws IOException {
        for (String[] question : new String[][] {{"litter-fit"}, {"which-model", "--rival", file("rival.json")}}) {
            String[] rest = Stream.of(question).skip(1).toArray(String[]::new);
            Run plain = asked(question[0], rest);
            String[] freezing = Stream.concat(Stream.of(rest), Stream.of("--freeze", file("frozen.json")))
                    .toArray(String[]::new);
            assertEquals(plain, asked(question[0], freezing));
            for (String gone : List.of("model.json", "traits.json", "rival.json", "litters.csv")) {
                Files.delete(folder.resolve(gone));
            }
            Run again = Run.of("rerun", file("frozen.json"));
            assertEquals(new Run(0, "The same: not a letter or a number of the answer is otherwise.\n", ""), again);
            Run check = Run.of("check", file("frozen.json"));
            assertEquals(ExitCodes.ANSWERED, check.code(), check.err());
            write();
        }
    }

    /** The litters that the guide asks about, of ferret models and their patches, by name and by all at hand; a fit is on its page. */
    @Test
    @Tag("once")
    void the_litters_of_the_guide_come_out_the_same() {
        Path litters = Stream.of(Path.of("guide"), Path.of("genetics-examples/guide"))
                .filter(Files::isDirectory)
                .findFirst()
                .orElseThrow()
                .resolve("jobs/litters.csv");
        for (List<String> question : List.of(
                List.of("which-model", "--traits", "eye colour", "--misnamed", "eye colour: dark as pink=1/1000"),
                List.of(
                        "which-model",
                        "--rival",
                        "geneticsrules.ferret.pale-apart",
                        "--population",
                        "many carriers"))) {
            List<String> words = new ArrayList<>(question);
            words.addAll(List.of(
                    "--pedigree", litters.toString(), "--draws", "99", "--freeze", file("frozen.json"), "--seed", "7"));
            Run asked = Run.of(words.toArray(String[]::new));
            assertEquals("", asked.err());
            Run run = Run.of("rerun", file("frozen.json"));
            assertEquals(new Run(0, "The same: not a letter or a number of the answer is otherwise.\n", ""), run);
        }
        Run now = Run.of("rerun", file("frozen.json"), "--at-hand");
        assertEquals(0, now.code(), now.out() + now.err());
    }

    @Test
    void what_was_tampered_with_is_named_with_its_line_and_nothing_is_run() throws IOException {
        String text = Files.readString(Path.of(frozen()));
        write(
                "frozen.json",
                text.replaceFirst("\"9/10\"", "\"8/10\"")
                        .replaceFirst("\"1/10\"", "\"2/10\"")
                        .replaceFirst("\"coat\": \"white\"}", "\"coat\": \"coloured\"}")
                        .replaceFirst("\"verdict\": \"", "\"verdict\": \"Surely: "));
        Run run = Run.of("rerun", file("frozen.json"));
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code());
        assertEquals("", run.out());
        assertEquals(3, run.err().lines().count(), run.err());
        assertTrue(run.err().lines().allMatch(line -> line.matches(".*frozen\\.json:\\d+:\\d+: /.*")), run.err());
        for (String what : List.of("the model own.model 1", "the pedigree litters.csv 1", "the answer")) {
            assertTrue(run.err().contains(what + " is not what was frozen"), run.err());
        }
        Run check = Run.of("check", file("frozen.json"));
        assertEquals(ExitCodes.NOT_UNDERSTOOD, check.code());
    }

    @Test
    void another_version_of_the_library_is_told() throws IOException {
        String text = Files.readString(Path.of(frozen()));
        write("frozen.json", text.replaceFirst("\"library\": \"[^\"]*\"", "\"library\": \"0.0.1\""));
        Run run = Run.of("rerun", file("frozen.json"));
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        assertTrue(run.out().contains("It was frozen by version 0.0.1 of the library"), run.out());
    }

    @Test
    void of_a_newer_model_what_moved_and_its_statement_are_told() throws IOException {
        write(
                "rival.json",
                RIVAL.replaceFirst("\"version\": \"1\"", "\"version\": \"2\"")
                        .replace(
                                "\"white\": \"1/2\", \"coloured\": \"1/2\"",
                                "\"white\": \"2/3\", \"coloured\": \"1/3\""));
        String old = frozen();
        write("rival.json", RIVAL);
        Run run = Run.of("rerun", old, "--model", file("rival.json"), "--freeze", file("newer.json"));
        assertEquals(ExitCodes.DIFFERENT, run.code(), run.err());
        String text = flowing(run.out());
        assertTrue(text.startsWith("The verdict is another one; "), text);
        assertTrue(text.contains("- model own.rival: was version 2, is now 1 (sha256 "), text);
        assertTrue(text.contains("traits, coat, cases, white, chance, white: was 2/3, is now 1/2"), text);
        assertTrue(text.contains("models, own.rival, log likelihood: was -"), text);
        run.out().lines().forEach(line -> assertTrue(line.length() <= 100, line));
        assertEquals(0, Run.of("rerun", file("newer.json")).code());
        Run compared = Run.of("compare-answers", old, file("newer.json"), "--format", "json");
        assertEquals(ExitCodes.DIFFERENT, compared.code());
        JsonNode found = JsonMapper.shared().readTree(compared.out());
        assertEquals("answer-changes", found.get("kind").asString());
        assertFalse(found.get("same").asBoolean());
        Run json = Run.of("rerun", old, "--model", file("rival.json"), "--format", "json");
        assertEquals(
                found.get("changes"), JsonMapper.shared().readTree(json.out()).get("changes"));
    }

    @Test
    void a_model_that_was_not_asked_cannot_take_the_place_of_one() throws IOException {
        write("other.json", MODEL.replace("own.model", "own.modle"));
        Run run = Run.of("rerun", frozen(), "--model", file("other.json"));
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code());
        assertTrue(run.err().contains("did you mean \"own.model\"?"), run.err());
        Run lacking = Run.of("rerun", frozen(), "--model", "own.modle");
        assertEquals(ExitCodes.NOT_UNDERSTOOD, lacking.code());
    }

    @Test
    void names_that_animals_were_called_by_are_frozen_with_what_reads_them() throws IOException {
        String own = write("names.json", """
                {"formatVersion": 0, "kind": "vocabulary", "id": "own.names", "version": "1", "licence": "Apache-2.0",
                 "region": "Nowhere", "catalogue": {"id": "own.traits", "version": "1"}, "facets": {"coat": {}},
                 "names": {"snow": {"facet": "coat", "senses": {"any": {"looks": {"pale": {"coat": ["white"]}}}}}}}
                """);
        write("litters.csv", """
                id,sex,litter,dam,sire,trait: coat,ascertainment,called,called in
                hob,male,,,,coloured,,,
                jill,female,,,,coloured,,,
                kit,,first,jill,hob,,complete,snow,Nowhere
                """);
        Run run = asked("litter-fit", "--own", own, "--freeze", file("frozen.json"));
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        Files.delete(Path.of(own));
        assertEquals(0, Run.of("rerun", file("frozen.json")).code());
        assertTrue(Files.readString(Path.of(file("frozen.json"))).contains("\"kind\": \"vocabulary\""));
    }

    @Test
    void nothing_is_ever_half_written() throws IOException {
        Run nowhere = asked(
                "litter-fit", "--freeze", folder.resolve("none/frozen.json").toString(), "--format", "xml");
        assertEquals(ExitCodes.NOT_UNDERSTOOD, nowhere.code());
        assertTrue(nowhere.err().contains("there is no folder for"), nowhere.err());
        String old = Files.readString(Path.of(frozen()));
        Run wrong = asked("litter-fit", "--traits", "cot", "--freeze", file("frozen.json"));
        assertEquals(ExitCodes.NOT_UNDERSTOOD, wrong.code());
        Thread.currentThread().interrupt();
        Run stopped = asked("litter-fit", "--freeze", file("frozen.json"));
        assertTrue(Thread.interrupted());
        assertEquals(ExitCodes.FAILED, stopped.code(), stopped.err());
        assertEquals("", stopped.out());
        assertEquals(old, Files.readString(folder.resolve("frozen.json")));
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(5, files.count(), "no other file is left");
        }
    }

    @Test
    void any_two_answers_can_be_compared() throws IOException {
        String first = write(
                "coat.json",
                Run.of("coat", "--look", "eye colour: pink", "--format", "json").out());
        String other = write(
                "other.json",
                Run.of("coat", "--look", "eye colour: dark", "--format", "json").out());
        Run same = Run.of("compare-answers", first, first);
        assertEquals(new Run(0, "The same: not a letter or a number of the answer is otherwise.\n", ""), same);
        Run run = Run.of("compare-answers", first, other);
        assertEquals(ExitCodes.DIFFERENT, run.code(), run.err());
        String text = flowing(run.out());
        assertTrue(text.startsWith("The verdict is the same, but not everything; "), text);
        assertTrue(
                text.contains("Cautions -------- - albino vision: gone: Albino ferrets see movement less well"), text);
        run.out().lines().forEach(line -> assertTrue(line.length() <= 100, line));
    }

    /** Each kind of document that the program writes in answer to a question, held against itself. */
    @Test
    void every_kind_of_answer_can_be_compared() throws IOException {
        String[] own = {"--file", file("model.json"), "--catalogue", file("traits.json"), "--format", "json"};
        String[] records = {
            "--file", file("model.json"), "--catalogue", file("traits.json"), "--pedigree", file("litters.csv")
        };
        List<String[]> commands = new ArrayList<>();
        commands.add(words(own, "mating", "--sire", "C/c", "--dam", "C/c"));
        commands.add(words(own, "describe", "--look", "coat: white"));
        commands.add(words(own, "review"));
        commands.add(words(own, "compare", "--with", file("rival.json")));
        commands.add(words(own, "may-carry", "--animal", "hob", "--pedigree", file("litters.csv")));
        commands.add(words(own, "litter-fit", "--draws", "99", "--pedigree", file("litters.csv")));
        commands.add(new String[] {"meaning", "sandy", "--in", "british-isles", "--format", "json"});
        List<String> kinds = new ArrayList<>();
        for (String[] command : commands) {
            Run run = Run.of(command);
            assertEquals("", run.err(), command[0]);
            String answer = write("answer.json", run.out());
            kinds.add(JsonMapper.shared().readTree(run.out()).get("kind").asString());
            assertEquals(0, Run.of("compare-answers", answer, answer).code(), command[0]);
            String asks = run.out().replaceFirst("\"question\": \"", "\"question\": \"Otherwise: ");
            boolean stated = !asks.equals(run.out());
            String told =
                    Run.of("compare-answers", answer, write("other.json", asks)).out();
            assertEquals(stated, told.startsWith("These answer two questions, or one that is worded otherwise:"), told);
            String reworded = run.out().replaceFirst("\"(\\w+ \\w+)", "\"other $1");
            Run other = Run.of("compare-answers", answer, write("other.json", reworded));
            assertEquals(ExitCodes.DIFFERENT, other.code(), command[0] + other.out());
        }
        Run registry = Run.of(words(records, "registry", "--out", file("answer.json")));
        assertEquals("", registry.err());
        kinds.add(JsonMapper.shared()
                .readTree(Files.readString(folder.resolve("answer.json")))
                .get("kind")
                .asString());
        assertEquals(
                0,
                Run.of("compare-answers", file("answer.json"), file("answer.json"))
                        .code());
        assertEquals(
                List.of(
                        "answer",
                        "described-answer",
                        "completeness",
                        "what-moves",
                        "recorded-answer",
                        "litter-answer",
                        "named-answer",
                        "registry-report"),
                kinds);
    }

    private static String[] words(String[] last, String... first) {
        return Stream.concat(Stream.of(first), Stream.of(last)).toArray(String[]::new);
    }

    @Test
    void what_is_no_answer_is_told_of_both_files_at_once() {
        Run run =
                Run.of("compare-answers", file("model.json"), file("none.json"), "--tolerance", "2", "--format", "xml");
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code());
        assertEquals("", run.out());
        assertTrue(run.err().contains("\"model\" is no kind of answer"), run.err());
        assertTrue(run.err().contains("there is no such file"), run.err());
        assertTrue(run.err().contains("--tolerance: 2.0 is out of range"), run.err());
        assertTrue(run.err().contains("unknown word \"xml\""), run.err());
    }

    @Test
    void what_is_frozen_never_takes_the_place_of_records() throws IOException {
        Run run = asked("litter-fit", "--freeze", file("litters.csv"));
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code());
        assertTrue(run.err().contains("is named by the same command (--pedigree)"), run.err());
        Files.writeString(folder.resolve("other.csv"), LITTERS);
        Run other = asked("litter-fit", "--freeze", file("other.csv"));
        assertTrue(other.err().contains("is there already and is no frozen analysis"), other.err());
        Run same = Run.of("rerun", frozen(), "--freeze", frozen());
        assertEquals(ExitCodes.NOT_UNDERSTOOD, same.code());
        assertTrue(same.err().contains("is named by the same command (FILE)"), same.err());
        Run again = Run.of("rerun", frozen(), "--freeze", file("model.json"));
        assertEquals(ExitCodes.NOT_UNDERSTOOD, again.code());
        assertEquals(LITTERS, Files.readString(folder.resolve("litters.csv")));
        assertEquals(MODEL, Files.readString(folder.resolve("model.json")));
        assertEquals(frozen(), frozen(), "a frozen analysis may be frozen anew");
    }

    @Test
    void what_is_drawn_never_takes_the_place_of_the_plan() throws IOException {
        Run run = Run.of(
                "simulate",
                "--file",
                file("model.json"),
                "--catalogue",
                file("traits.json"),
                "--population",
                "any",
                "--plan",
                file("litters.csv"),
                "--kits-seen",
                "coat",
                "--out",
                file("litters.csv"));
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code());
        assertTrue(run.err().contains("is named by the same command (--plan)"), run.err());
        assertEquals(LITTERS, Files.readString(folder.resolve("litters.csv")));
    }
}
