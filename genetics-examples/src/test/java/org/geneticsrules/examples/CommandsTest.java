package org.geneticsrules.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;

/** The other commands, and what is said to those who mistype. */
@Tag("default-jdk")
class CommandsTest {

    private static final int WIDTH = 100;

    @Test
    void an_albino_is_explained_with_what_its_mask_hides() {
        Run run = Run.of(
                "coat",
                "--genotype",
                "c/c B/b",
                "--omitted",
                "wild-type",
                "--traits",
                "hue, coat length",
                "--moult",
                "1");
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        assertTrue(run.out().contains("hue none seen: mask albino covers what lies beneath, black"), run.out());
        assertTrue(run.out().contains("B (Dark or brown) may be B/B or B/b or b/b - hidden by mask albino"), run.out());
    }

    @Test
    void a_look_by_lamplight_is_kept_and_says_nothing_of_the_eyes() {
        Run run = Run.of("coat", "--look", "eye colour: pink @ week 60, in lamplight", "--traits", "eye colour");
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        String out = run.out().replaceAll("\\s+", " ");
        assertTrue(
                out.contains("look \"eye colour: pink\" was read in lamplight, in which it cannot be told; it is kept"
                        + " but is no evidence; look again in daylight"),
                out);
        Run wrong = Run.of("coat", "--look", "eye colour: pink @ in lamp light", "--traits", "eye colour");
        assertEquals(ExitCodes.NOT_UNDERSTOOD, wrong.code());
        assertTrue(wrong.err().contains("unknown light \"lamp light\""), wrong.err());
        assertTrue(wrong.err().contains("did you mean \"lamplight\"?"), wrong.err());
    }

    @Test
    void a_verdict_names_loci_in_words() {
        String verdict =
                "The animal shows eye colour dark; its look leaves the genotype open at \"Pigment series down to"
                        + " albino\".";
        Run run = Run.of("coat", "--look", "eye colour: dark", "--traits", "eye colour", "--words");
        assertTrue(run.out().replaceAll("\\s+", " ").startsWith(verdict), run.out());
        assertFalse(run.out().contains("C/C"), run.out());
    }

    @Test
    void a_model_is_shown_with_what_each_locus_hides() {
        Run run = Run.of("model");
        assertTrue(
                run.out()
                        .contains(
                                "C      C: albino                    hue                none seen     B, R                 albino"),
                run.out());
        assertTrue(run.out().contains("no claim is made where C: full or lightened or sandy or near-white"), run.out());
        assertTrue(run.out().contains("Not modelled\n------------\n"), run.out());
    }

    @Test
    void a_model_printed_as_its_document_can_be_used_as_a_file(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(
                folder.resolve("mouse.json"),
                Run.of("model", "--model", "geneticsrules.textbook.mouse", "--format", "json")
                        .out());
        Run own = Run.of("mating", "--file", file.toString(), "--sire", "A/a C/c", "--dam", "A/a C/c");
        Run shipped =
                Run.of("mating", "--model", "geneticsrules.textbook.mouse", "--sire", "A/a C/c", "--dam", "A/a C/c");
        assertEquals(ExitCodes.ANSWERED, own.code(), own.err());
        assertEquals(shipped.out(), own.out());
        assertTrue(own.out().startsWith("Of 16 young on average: 9 coat colour agouti"), own.out());
    }

    @Test
    void all_models_are_listed_with_their_plug_ins() {
        Run run = Run.of("models");
        assertEquals("", run.err());
        assertTrue(run.out().contains("from plug-in geneticsrules.ferret"), run.out());
        assertTrue(run.out().contains("from plug-in geneticsrules.textbook"), run.out());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "mating --sir C/c | Possible solutions: --sire, --sire-look",
                "matin | Did you mean",
                "mating --format xml | unknown word \"xml\"",
                "mating --relation sibling | did you mean \"siblings\"",
                "mating --population few | unknown population \"few\"",
                "mating --traits huee | unknown trait \"huee\"; did you mean \"hue\"?",
                "mating --traits chin | makes no claim about \"chin\"",
                "mating --look eyes | expected \"trait: state\"",
                "mating --kits 3 | a litter was asked about, but no look to count in it",
                "mating --kits many | Invalid value for option '--kits'",
                "coat --model geneticsrules.ferret.comon-practice | unknown model",
                "check | Missing required parameter"
            })
    void what_is_mistyped_is_named_and_nothing_is_printed(String line, String expected) {
        Run run = Run.of(line.split(" "));
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code());
        assertEquals("", run.out());
        assertTrue(run.err().contains(expected), run.err());
        assertFalse(run.err().contains("\tat "), run.err());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "demo",
                "mating",
                "coat",
                "hand-over",
                "test-mating",
                "models",
                "model",
                "review",
                "check",
                "estimate"
            })
    void every_command_has_help(String command) {
        Run run = Run.of(command, "--help");
        assertEquals(ExitCodes.ANSWERED, run.code());
        assertTrue(run.out().startsWith("Usage: genetics " + command), run.out());
    }

    /** A line broken by hand breaks once more where it is too long, and what can be copied is torn apart. */
    @Test
    void help_is_broken_by_its_width_alone() {
        List<String> wrong = new ArrayList<>();
        PrintWriter none = new PrintWriter(Writer.nullWriter());
        wrongHelp(Program.commandLine(none, none), wrong);
        assertEquals(List.of(), wrong);
    }

    private static void wrongHelp(CommandLine command, List<String> wrong) {
        CommandSpec spec = command.getCommandSpec();
        for (String line : spec.usageMessage().footer()) {
            if (line.length() > WIDTH) {
                wrong.add(spec.qualifiedName() + ": " + line);
            }
        }
        unfinished(spec.usageMessage().description(), wrong);
        spec.options().forEach(option -> unfinished(option.description(), wrong));
        spec.positionalParameters().forEach(parameter -> unfinished(parameter.description(), wrong));
        command.getSubcommands().values().forEach(each -> wrongHelp(each, wrong));
    }

    /** Finds lines of a description, apart from the last, that end within a sentence. */
    private static void unfinished(String[] lines, List<String> wrong) {
        for (int i = 0; i < lines.length - 1; i++) {
            if (!lines[i].endsWith(".") && !lines[i].endsWith(":")) {
                wrong.add(lines[i]);
            }
        }
    }

    @Test
    void help_names_every_exit_code() {
        String help = Run.of().out();
        for (int code = ExitCodes.ANSWERED; code <= ExitCodes.FAILED; code++) {
            assertTrue(help.contains("\n  " + code + "  "), help);
        }
    }
}
