package org.geneticsrules.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.geneticsrules.spi.Registry;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What moves, from the command line; and patches wherever a model is chosen. */
@Tag("default-jdk")
class CompareCommandTest {

    private static final String MICE = "geneticsrules.textbook.mouse";

    @TempDir
    private Path folder;

    /** Albino is dominant in these mice, which no one holds. */
    private String patch() throws IOException {
        String hash = Registry.discover().model(MICE).reference().sha256().orElseThrow();
        return patch("""
                {"formatVersion": 0, "kind": "patch", "id": "invented.albino-dominant", "version": "0.1.0",
                  "base": {"id": "%s", "version": "%s", "sha256": "%s"},
                  "set": {"/loci/C/dominance": {"order": ["c > C"], "shows": {"C": "coloured", "c": "albino"}}}}
                """.formatted(MICE, Registry.discover().model(MICE).version(), hash));
    }

    private String patch(String text) throws IOException {
        return Files.writeString(folder.resolve("patch.json"), text).toString();
    }

    @Test
    void a_model_is_compared_with_what_a_patch_makes_of_it() throws IOException {
        Run run = Run.of("compare", "--model", MICE, "--patch", patch());
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        assertTrue(run.out().startsWith("The smallest genotype that moves is C/c, in coat colour"), run.out());
        assertTrue(run.out().contains("/loci/C/dominance is replaced by patch invented.albino-dominant"), run.out());
    }

    @Test
    void the_document_is_printed_for_programs() throws IOException {
        Run run = Run.of("compare", "--model", MICE, "--patch", patch(), "--format", "json", "--examples", "2");
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        assertTrue(run.out().startsWith("{"), run.out());
        assertTrue(run.out().contains("\"kind\": \"what-moves\""), run.out());
    }

    /** Linkage is all that the patch of the plug-in changes. */
    @Test
    void a_model_is_compared_under_a_patch_of_a_plug_in() {
        String flies = "geneticsrules.textbook.fruit-fly-three-point";
        Run run = Run.of("compare", "--model", flies, "--patch", flies + "-independent");
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        assertTrue(run.out().startsWith("No genotype moves, but matings do; the smallest is "), run.out());
    }

    @Test
    void a_model_is_compared_with_another_of_its_catalogue() throws IOException {
        String mice = Run.of("model", "--model", MICE, "--format", "json").out();
        Path other = Files.writeString(
                folder.resolve("other.json"),
                mice.replace("\"id\": \"" + MICE + "\"", "\"id\": \"invented.mice\"")
                        .replace("C > c", "c > C"));
        Run run = Run.of("compare", "--model", MICE, "--with", other.toString(), "--examples", "1");
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        assertTrue(run.out().startsWith("The smallest genotype that moves is C/c, in coat colour"), run.out());
        Run same = Run.of("compare", "--model", MICE, "--with", MICE);
        assertTrue(same.out().startsWith("Nothing moves: "), same.out());
    }

    @Test
    void a_mating_is_foreseen_under_a_patch() throws IOException {
        String[] mating = {"mating", "--model", MICE, "--sire", "A/A C/c", "--dam", "A/A C/C", "--patch", patch()};
        Run run = Run.of(mating);
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        assertTrue(run.out().contains("albino"), run.out());
        assertTrue(run.out().contains("invented.albino-dominant 0.1.0"), run.out());
    }

    @Test
    void a_patch_for_another_version_is_refused_with_its_place() throws IOException {
        String text = Files.readString(Path.of(patch())).replaceFirst("\"sha256\": \"....", "\"sha256\": \"0000");
        Run run = Run.of("compare", "--model", MICE, "--patch", patch(text));
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code());
        assertEquals("", run.out());
        assertTrue(run.err().contains("patch.json:2:"), run.err());
        assertTrue(run.err().contains("/base"), run.err());
        assertTrue(run.err().contains("the model that the patch was written for"), run.err());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "compare | state either --patch or --with",
                "compare --with geneticsrules.textbook.moose | did you mean \"geneticsrules.textbook.mouse\"",
                "compare --with geneticsrules.textbook.mouse | two models of one catalogue",
                "compare --with nowhere.json | there is no such file",
                "compare --with geneticsrules.ferret.common-practice --traits hew | unknown trait",
                "compare --with geneticsrules.ferret.common-practice --stage soon3 | is no stage of life",
                "compare --with geneticsrules.ferret.common-practice --from M | is no locus with its allele",
                "compare --with geneticsrules.ferret.common-practice --from Q=q | unknown locus",
                "compare --with geneticsrules.ferret.common-practice --examples 0 | is out of range"
            })
    void what_cannot_be_compared_is_told(String line, String expected) {
        Run run = Run.of(line.split(" "));
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code(), run.out());
        assertEquals("", run.out());
        assertTrue(run.err().contains(expected), run.err());
    }

    @Test
    void the_command_has_help_and_is_listed() {
        assertTrue(Run.of("compare", "--help").out().startsWith("Usage: genetics compare"));
        assertTrue(Run.of().out().contains("  compare "));
    }
}
