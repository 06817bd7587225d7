package org.geneticsrules.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** How often litters would tell models of ferrets apart, from the command line. */
@Tag("once")
class PowerCommandTest {

    @TempDir
    private Path folder;

    /** A small model in which albino is dominant, of the same catalogue. */
    private String dominant() throws IOException {
        return Files.writeString(folder.resolve("dominant.json"), """
                {"formatVersion": 0, "kind": "model", "id": "invented.pink-dominant", "version": "1",
                 "title": "Pink is dominant",
                 "catalogue": {"id": "geneticsrules.ferret.traits", "version": "1.1.0"},
                 "loci": {"C": {"alleles": ["C", "c"], "expressions": ["full", "albino"],
                   "dominance": {"order": ["c > C"], "shows": {"C": "full", "c": "albino"}}}},
                 "traits": {"eye colour": {"cases": {"pink": {"when": {"C": ["albino"]}, "state": "pink"}}, "otherwise": "dark"}},
                 "populations": {"few carriers": {"frequencies": {"C": {"C": "9/10", "c": "1/10"}}}}}
                """).toString();
    }

    private static Run run(String... more) {
        List<String> all = new ArrayList<>(
                List.of("power", "--population", "few carriers", "--kits-seen", "eye colour @ week 8", "--sets", "40"));
        all.addAll(List.of(more));
        return Run.of(all.toArray(String[]::new));
    }

    /** Dark parents have pink-eyed kits by the model in use alone, and then the rival is excluded; so few parents carry that it is rare. */
    @Test
    void dark_parents_with_a_pink_eyed_kit_exclude_that_pink_is_dominant() throws IOException {
        String rival = dominant();
        Run run = run(
                "--sire-look",
                "eye colour: dark @ moult 2",
                "--dam-look",
                "eye colour: dark @ moult 2",
                "--couples",
                "30",
                "--rival",
                rival);
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        run.out().lines().forEach(line -> assertTrue(line.length() <= 100, line));
        String text = run.out().replaceAll("\\s+", " ");
        assertTrue(
                text.startsWith("If \"Ferret coats by common practice\" is true, 30 litters of 30 couples lift it"),
                text);
        assertTrue(text.contains("Of 40 sets of drawn litters"), text);
        assertTrue(text.contains("Pink is dominant: left behind in "), text);
        assertTrue(text.contains("none of them lives"), text);
        assertTrue(text.contains("A calculated mating is no approval of it."), text);
        Run json = run(
                "--sire-look",
                "eye colour: dark @ moult 2",
                "--dam-look",
                "eye colour: dark @ moult 2",
                "--couples",
                "30",
                "--rival",
                rival,
                "--format",
                "json");
        JsonNode power = JsonMapper.shared().readTree(json.out());
        assertEquals("power-answer", power.get("kind").asString());
        int reached = power.get("power").get("reached").get("sets").asInt();
        // two dark parents carry with few enough to miss, but not in thirty couples
        assertTrue(reached > 0 && reached <= 40, json.out());
        assertEquals(30, power.get("power").get("reachedAfter").size());
    }

    @Test
    void what_no_mating_tells_apart_is_undecided() {
        Run run = run(
                "--sire",
                "C/c",
                "--dam",
                "C/c",
                "--parents-tested",
                "C",
                "--rival",
                "geneticsrules.ferret.silver-recessive");
        assertEquals(ExitCodes.UNDECIDED, run.code(), run.err());
        assertTrue(
                run.out().replaceAll("\\s+", " ").startsWith("However many litters there are, no mating tells"),
                run.out());
    }

    @Test
    void what_is_mistyped_is_named_and_nothing_is_printed() {
        Run sets = run("--sire", "C/c", "--dam", "C/c", "--sets", "3");
        assertEquals(ExitCodes.NOT_UNDERSTOOD, sets.code());
        assertEquals("", sets.out());
        assertTrue(sets.err().contains("--sets"), sets.err());
        Run rival = run("--sire", "C/c", "--dam", "C/c", "--rival", "silver-recesive");
        assertTrue(rival.err().contains("silver-recesive"), rival.err());
        Run unseen = Run.of("power", "--sire", "C/c", "--dam", "C/c", "--population", "few carriers");
        assertTrue(unseen.err().contains("nothing is written down of the kits"), unseen.err());
    }
}
