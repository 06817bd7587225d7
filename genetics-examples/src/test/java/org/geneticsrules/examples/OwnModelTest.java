package org.geneticsrules.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Models of invented loci, written while the test runs: right ones give their ratios, wrong ones exact errors. */
@Tag("default-jdk")
class OwnModelTest {

    private static final String TRAITS = """
            {"formatVersion": 0, "kind": "catalogue", "id": "invented.traits", "version": "1.0.0", "traits": {
              "glow": {"states": ["bright", "dull", "unlit"]}}}
            """;

    private static final String MODEL = """
            {"formatVersion": 0, "kind": "model", "id": "invented.glow", "version": "1.0.0",
              "catalogue": {"id": "invented.traits", "version": "1.0.0"},
              "loci": {
                "K": {"alleles": ["K", "k"], "expressions": ["on", "off"],
                  "dominance": {"order": ["K > k"], "shows": {"K": "on", "k": "off"}}},
                "M": {"alleles": ["M", "m"], "expressions": ["plain", "faint"],
                  "dominance": {"order": ["M > m"], "shows": {"M": "plain", "m": "faint"}}},
                "N": {"alleles": ["N", "n"], "expressions": ["lit", "dark"],
                  "dominance": {"order": ["N > n"], "shows": {"N": "lit", "n": "dark"}}}},
              "traits": {"glow": {"cases": {
                "bright": {"when": {"M": ["plain"]}, "state": "bright"},
                "dull": {"when": {"M": ["faint"]}, "state": "dull"}}}},
              "masks": {
                "no current": {"when": {"K": ["off"]}, "covers": {"glow": "unlit"}},
                "no lamp": {"when": {"N": ["dark"]}, "covers": {"glow": "unlit"}}}}
            """;

    private static final String CARRIER = "K/k M/m N/n";

    @TempDir
    private Path folder;

    private Path traits;

    @BeforeEach
    void write() throws IOException {
        traits = Files.writeString(folder.resolve("traits.json"), TRAITS);
    }

    private Run mating(String model, String parent) throws IOException {
        Path file = Files.writeString(folder.resolve("model.json"), model);
        return Run.of(
                "mating",
                "--file",
                file.toString(),
                "--catalogue",
                traits.toString(),
                "--sire",
                parent,
                "--dam",
                parent);
    }

    private Run check(String model) throws IOException {
        Path file = Files.writeString(folder.resolve("model.json"), model);
        return Run.of("check", file.toString(), traits.toString());
    }

    @Test
    void two_recessive_masks_give_27_9_28() throws IOException {
        Run run = mating(MODEL, CARRIER);
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        assertTrue(
                run.out().startsWith("Of 64 young on average: 27 glow bright; 9 glow dull; 28 glow unlit."), run.out());
    }

    @Test
    void a_dominant_mask_gives_12_3_1() throws IOException {
        String dominant = MODEL.replace("\"K\": [\"off\"]", "\"K\": [\"on\"]");
        Run run = mating(dominant, "K/k M/m N/N");
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        assertTrue(
                run.out().startsWith("Of 16 young on average: 3 glow bright; 1 glow dull; 12 glow unlit."), run.out());
    }

    @Test
    void parents_of_unknown_genotype_are_undecided_where_the_model_has_no_population() throws IOException {
        Run run = mating(MODEL, "K/k");
        assertEquals(ExitCodes.UNDECIDED, run.code(), run.err());
        assertTrue(run.out().contains("No population of the model has the frequencies"), run.out());
    }

    @Test
    void sound_files_have_no_problems() throws IOException {
        Run run = check(MODEL);
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        assertEquals(
                2,
                run.out().lines().filter(line -> line.endsWith(": no problems")).count(),
                run.out());
    }

    /** What is replaced in the sound model, by what, and what the report must contain. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "{\"M\": [\"faint\"]}|{\"Mm\": [\"faint\"]}|unknown-variable",
                "{\"M\": [\"faint\"]}|{\"M\": [\"fait\"]}|did you mean \"faint\"?",
                "{\"M\": [\"faint\"]}|{\"K\": [\"on\"]}|overlap",
                "\"no lamp\": {\"when\": {\"N\": [\"dark\"]}, \"covers\": {\"glow\": \"unlit\"}|\"no lamp\": {\"when\": {\"N\": [\"dark\"]}, \"covers\": {\"glow\": \"dull\"}|mask",
                "\"order\": [\"M > m\"], ||M/m",
            })
    void a_fault_is_reported_with_its_place(String sound, String fault, String expected) throws IOException {
        String broken = MODEL.replace(sound, fault == null ? "" : fault);
        assertFalse(broken.equals(MODEL), "nothing was replaced");
        Run run = check(broken);
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code());
        assertTrue(run.err().contains(expected), run.err());
        String place = folder.resolve("model.json").toString().replace("\\", "\\\\") + ":\\d+:\\d+: /.*";
        assertTrue(run.err().lines().allMatch(line -> line.matches(place)), run.err());
        Run asked = mating(broken, CARRIER);
        assertEquals(ExitCodes.NOT_UNDERSTOOD, asked.code());
        assertEquals("", asked.out());
        assertEquals(run.err(), asked.err());
    }

    /** Patches of the invented model, with the hash that the program itself tells. */
    private Path patch(String name, String set) throws IOException {
        Path model = Files.writeString(folder.resolve("model.json"), MODEL);
        String draft = """
                {"formatVersion": 0, "kind": "patch", "id": "invented.%s", "version": "0.1.0",
                  "base": {"id": "invented.glow", "version": "1.0.0", "sha256": "%s"},
                  "set": {%s}}
                """;
        Path file = folder.resolve(name + ".json");
        Files.writeString(file, draft.formatted(name, "0".repeat(64), set));
        Run asked = Run.of("check", file.toString(), model.toString(), traits.toString());
        Matcher hash = Pattern.compile("but was given invented.glow 1.0.0 with sha256 ([0-9a-f]{64})")
                .matcher(asked.err());
        assertTrue(hash.find(), asked.err());
        return Files.writeString(file, draft.formatted(name, hash.group(1), set));
    }

    private Run patched(String command, List<Path> patches, String... more) {
        List<String> line = new ArrayList<>(
                List.of(command, "--file", folder.resolve("model.json").toString(), "--catalogue", traits.toString()));
        patches.forEach(file -> line.addAll(List.of("--patch", file.toString())));
        line.addAll(List.of(more));
        return Run.of(line.toArray(String[]::new));
    }

    /** Of M/m N/n x M/m N/n: 9 : 3 : 4 as it stands; with M reversed 3 bright, 9 dull; with N reversed 12 of 16 unlit. */
    @Test
    void patches_change_what_is_foreseen_in_any_order() throws IOException {
        Path lamp = patch(
                "lamp",
                "\"/loci/N/dominance\": {\"order\": [\"n > N\"], \"shows\": {\"N\": \"lit\", \"n\": \"dark\"}}");
        Path faint = patch(
                "faint",
                "\"/loci/M/dominance\": {\"order\": [\"m > M\"], \"shows\": {\"M\": \"plain\", \"m\": \"faint\"}}");
        String[] cross = {"--sire", "K/K M/m N/n", "--dam", "K/K M/m N/n"};
        assertEquals(
                "9 glow bright; 3 glow dull; 4 glow unlit.",
                patched("mating", List.of(), cross).out().split("average: |\n", 3)[1]);
        assertEquals(
                "3 glow bright; 9 glow dull; 4 glow unlit.",
                patched("mating", List.of(faint), cross).out().split("average: |\n", 3)[1]);
        Run both = patched("mating", List.of(faint, lamp), cross);
        assertEquals(ExitCodes.ANSWERED, both.code(), both.err());
        assertEquals("1 glow bright; 3 glow dull; 12 glow unlit.", both.out().split("average: |\n", 3)[1]);
        assertEquals(both.out(), patched("mating", List.of(lamp, faint), cross).out());
        assertTrue(patched("coat", List.of(lamp), "--genotype", "K/K M/M N/n")
                .out()
                .contains("unlit"));
        Run shown = patched("model", List.of(lamp));
        assertTrue(shown.out().contains("Made from invented.glow 1.0.0 (sha256 "), shown.out());
        assertTrue(shown.out().contains("invented.lamp 0.1.0"), shown.out());
    }

    @Test
    void a_patch_that_makes_the_model_unsound_is_reported_with_its_place() throws IOException {
        Path file = patch(
                "wrong", "\n\"/loci/N/dominance\": {\"order\": [], \"shows\": {\"N\": \"lit\", \"n\": \"dark\"}}");
        Run checked =
                Run.of("check", file.toString(), folder.resolve("model.json").toString(), traits.toString());
        assertEquals(ExitCodes.NOT_UNDERSTOOD, checked.code());
        assertTrue(
                checked.err().startsWith(file + ":4:1: /set/~1loci~1N~1dominance: nothing decides what the pair N/n"),
                checked.err());
        Run asked = patched("model", List.of(file));
        assertEquals(ExitCodes.NOT_UNDERSTOOD, asked.code());
        assertEquals(checked.err(), asked.err());
        assertEquals("", asked.out());
    }

    @Test
    void patches_of_one_statement_are_refused_together() throws IOException {
        String set = "\"/masks/no lamp\": {\"when\": {\"N\": [\"dark\"]}, \"covers\": {\"glow\": \"unlit\"}}";
        Run run = patched("model", List.of(patch("one", set), patch("two", set)));
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code());
        assertTrue(
                run.err()
                        .contains(
                                "patch invented.one 0.1.0 changes /masks/no lamp, and patch invented.two 0.1.0 changes"
                                        + " /masks/no lamp"),
                run.err());
    }

    @Test
    void a_patch_that_is_not_there_is_named() throws IOException {
        Files.writeString(folder.resolve("model.json"), MODEL);
        assertTrue(patched("model", List.of(Path.of("nowhere.json"))).err().contains("nowhere.json cannot be read"));
        Run unknown = Run.of("model", "--patch", "invented.nothing");
        assertEquals(ExitCodes.NOT_UNDERSTOOD, unknown.code());
        assertTrue(unknown.err().contains("unknown patch \"invented.nothing\""), unknown.err());
    }

    @Test
    void a_truncated_file_is_reported_where_it_ends() throws IOException {
        Run run = check(MODEL.substring(0, MODEL.indexOf("\"masks\"")));
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code());
        assertTrue(run.err().matches("(?s).*model\\.json:1[0-9]:\\d+: .*"), run.err());
    }

    @Test
    void a_file_of_a_hundred_megabytes_is_refused_unread() throws IOException {
        Path file = folder.resolve("large.json");
        byte[] block = new byte[1 << 20];
        Arrays.fill(block, (byte) ' ');
        try (OutputStream out = Files.newOutputStream(file)) {
            out.write(MODEL.getBytes(StandardCharsets.UTF_8));
            for (int i = 0; i < 100; i++) {
                out.write(block);
            }
        }
        Run run = Run.of("check", file.toString());
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code());
        assertTrue(run.err().contains("bytes"), run.err());
        assertEquals("", run.out());
    }

    @Test
    void a_missing_file_is_named() {
        Run run = Run.of("check", folder.resolve("nowhere.json").toString());
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code());
        assertTrue(run.err().contains("nowhere.json cannot be read: there is no such file"), run.err());
    }

    @ParameterizedTest
    @CsvSource({"K/x M/m, 'unknown allele \"x\"'", "Kk:K/k, 'unknown locus \"Kk\"'", "K/k K/K, locus-twice"})
    void a_genotype_that_is_not_understood_is_shown_with_a_caret(String genotype, String expected) throws IOException {
        Run run = mating(MODEL, genotype);
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code());
        assertTrue(run.err().startsWith("problem: --sire, column "), run.err());
        assertTrue(run.err().contains(expected), run.err());
        assertTrue(run.err().lines().anyMatch(line -> line.strip().equals("^")), run.err());
        assertEquals("", run.out());
    }

    @Test
    void a_pedigree_is_checked_by_itself() throws IOException {
        String pedigree = """
                {"formatVersion": 0, "kind": "pedigree", "id": "invented.line", "version": "1",
                 "individuals": {"Moth": {"sex": "female"}, "Fern": {"sex": "%s"}, "kit": {}},
                 "litters": {"first": {"dam": "Moth", "sire": "Fern", "kits": ["kit"]}}}
                """;
        Path file = Files.writeString(folder.resolve("line.json"), pedigree.formatted("male"));
        assertEquals(ExitCodes.ANSWERED, Run.of("check", file.toString()).code());
        Files.writeString(file, pedigree.formatted("female"));
        Run wrong = Run.of("check", file.toString());
        assertEquals(ExitCodes.NOT_UNDERSTOOD, wrong.code());
        assertTrue(wrong.err().contains("/litters/first/sire: "), wrong.err());
        assertTrue(wrong.err().contains("[parent-sex]"), wrong.err());
    }
}
