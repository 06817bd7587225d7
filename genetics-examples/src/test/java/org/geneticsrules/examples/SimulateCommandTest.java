package org.geneticsrules.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
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

/** Litters drawn from the command line, and read again by the commands that judge litters. */
@Tag("once")
class SimulateCommandTest {

    @TempDir
    private Path folder;

    private String file(String name) {
        return folder.resolve(name).toString();
    }

    /** Draws couples of tested carriers of albino. */
    private Run carriers(String out, String... more) {
        List<String> all = new ArrayList<>(List.of(
                "simulate",
                "--alone",
                "--sire",
                "C/c",
                "--dam",
                "C/c",
                "--population",
                "few carriers",
                "--parents-tested",
                "C",
                "--kits-seen",
                "eye colour @ week 8",
                "--out",
                out));
        all.addAll(List.of(more));
        if (!all.contains("--seed")) {
            all.addAll(List.of("--seed", "5"));
        }
        return Run.of(all.toArray(String[]::new));
    }

    private static String flowing(Run run) {
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        return run.out().replaceAll("\\s+", " ");
    }

    @Test
    void what_is_drawn_is_read_again_and_goes_with_its_model() throws IOException {
        for (String name : List.of("litters.csv", "litters.json")) {
            String summary = flowing(carriers(file(name), "--couples", "8"));
            assertTrue(summary.startsWith("Drawn: 16 founders, 8 litters, 48 kits."), summary);
            assertTrue(summary.contains("- model: geneticsrules.ferret.common-practice "), summary);
            assertTrue(summary.contains("L64X128MixRandom, seed 5"), summary);
            assertTrue(summary.contains("none of them lives"), summary);
            assertTrue(summary.contains("no advice to breed"), summary);
            String fit = flowing(Run.of("litter-fit", "--alone", "--pedigree", file(name)));
            assertTrue(fit.startsWith("These litters go with the model: "), fit);
            assertTrue(fit.contains("kits of C/c x C/c, 8 litters"), fit);
            String registry = flowing(Run.of("registry", "--alone", "--pedigree", file(name)));
            assertTrue(registry.contains("Of 64 animals no records were found that contradict"), registry);
        }
        Run which = Run.of(
                "which-model", "--pedigree", file("litters.csv"), "--rival", "geneticsrules.ferret.silver-recessive");
        assertTrue(which.out().startsWith("These records cannot tell the models apart"), which.out() + which.err());
    }

    @Test
    void a_seed_draws_the_same_and_another_one_others() throws IOException {
        carriers(file("a.csv"), "--couples", "5");
        carriers(file("b.csv"), "--couples", "5");
        carriers(file("c.csv"), "--couples", "5", "--seed", "6");
        assertEquals(Files.readString(Path.of(file("a.csv"))), Files.readString(Path.of(file("b.csv"))));
        assertNotEquals(Files.readString(Path.of(file("a.csv"))), Files.readString(Path.of(file("c.csv"))));
    }

    /** What a kit carries stands on the answer sheet alone. */
    @Test
    void the_truth_is_written_only_where_it_is_asked_for() throws IOException {
        carriers(file("litters.json"), "--couples", "2", "--truth", file("truth.json"));
        JsonNode truth = JsonMapper.shared().readTree(Files.readString(Path.of(file("truth.json"))));
        assertEquals("drawn-truth", truth.get("kind").asString());
        Run compared = Run.of("compare-answers", file("truth.json"), file("truth.json"));
        assertEquals(ExitCodes.NOT_UNDERSTOOD, compared.code());
        assertTrue(compared.err().contains("is no answer"), compared.err());
        JsonNode kit = truth.get("animals").get("kit 2.6");
        boolean albino = kit.get("genotype").asString().startsWith("c/c ");
        assertEquals(
                albino ? "pink" : "dark",
                kit.get("looks").get(0).get("shows").get("eye colour").asString());
        JsonNode records = JsonMapper.shared().readTree(Files.readString(Path.of(file("litters.json"))));
        assertFalse(records.get("individuals").get("kit 2.6").toString().contains("C/"));
        assertTrue(records.get("individuals").get("sire 1").toString().contains("C/c"));
        try (var files = Files.list(folder)) {
            assertEquals(2, files.count());
        }
    }

    @Test
    void litters_that_were_noticed_say_so_and_are_judged_as_such() {
        for (String how : List.of("at least one", "parents chosen")) {
            String summary = flowing(Run.of(
                    "simulate",
                    "--alone",
                    "--population",
                    "many carriers",
                    "--couples",
                    "6",
                    "--kits-seen",
                    "eye colour @ week 8",
                    "--ascertainment",
                    how,
                    "--sign",
                    "eye colour: pink",
                    "--out",
                    file("noticed.csv")));
            assertTrue(summary.contains("recorded: " + how + ": eye colour: pink (week 8)"), summary);
            String fit = flowing(Run.of(
                    "litter-fit", "--alone", "--population", "many carriers", "--pedigree", file("noticed.csv")));
            assertTrue(fit.startsWith("These litters go with the model: "), fit);
        }
        String probands = flowing(carriers(
                file("probands.csv"),
                "--couples",
                "3",
                "--ascertainment",
                "probands",
                "--sign",
                "eye colour: pink",
                "--noticed",
                "1/4"));
        assertTrue(probands.contains("recorded: probands 1/4, "), probands);
    }

    @Test
    void parents_may_be_known_by_their_looks() throws IOException {
        flowing(Run.of(
                "simulate",
                "--alone",
                "--population",
                "many carriers",
                "--couples",
                "4",
                "--sire-look",
                "eye colour: pink @ moult 2",
                "--dam-look",
                "eye colour: dark @ moult 2",
                "--kits-seen",
                "eye colour, sex @ week 8",
                "--litter-sizes",
                "own: 2 1/2, 3 1/2",
                "--out",
                file("seen.csv")));
        List<String> rows = Files.readAllLines(Path.of(file("seen.csv")));
        assertEquals(
                4,
                rows.stream()
                        .filter(row -> row.startsWith("sire ") && row.contains(",pink"))
                        .count());
        assertEquals(
                4,
                rows.stream()
                        .filter(row -> row.startsWith("dam ") && row.contains(",dark"))
                        .count());
        assertTrue(
                rows.stream().filter(row -> row.startsWith("kit ")).allMatch(row -> row.matches("[^,]+,(fe)?male,.*")));
    }

    @Test
    void kennels_and_pedigrees_are_drawn_too() throws IOException {
        String kennel = flowing(Run.of(
                "simulate",
                "--alone",
                "--population",
                "many carriers",
                "--generations",
                "2",
                "--litters",
                "3",
                "--kits",
                "4",
                "--kits-seen",
                "eye colour",
                "--parents-seen",
                "eye colour",
                "--out",
                file("kennel.json")));
        assertTrue(kennel.startsWith("Drawn: 4 founders, 6 litters, 24 kits."), kennel);
        String again = flowing(Run.of(
                "simulate",
                "--alone",
                "--population",
                "many carriers",
                "--plan",
                file("kennel.json"),
                "--founder",
                "founder 1=c/c",
                "--founder",
                "founder 2=c/c",
                "--kits-seen",
                "eye colour",
                "--parents-seen",
                "eye colour",
                "--out",
                file("again.csv"),
                "--truth",
                file("truth.json")));
        assertTrue(again.startsWith("Drawn: 4 founders, 6 litters, 24 kits."), again);
        JsonNode truth = JsonMapper.shared().readTree(Files.readString(Path.of(file("truth.json"))));
        assertTrue(
                truth.get("animals").get("founder 1").get("genotype").asString().startsWith("c/c "));
        assertTrue(Files.readAllLines(Path.of(file("again.csv"))).stream()
                .anyMatch(row -> row.startsWith("founder 1,male,") && row.contains("pink")));
    }

    @Test
    void all_that_is_mistyped_is_told_at_once_and_nothing_is_written() throws IOException {
        Run run = Run.of(
                "simulate",
                "--sire",
                "C/q",
                "--population",
                "few",
                "--kits-seen",
                "eye color",
                "--ascertainment",
                "probands",
                "--sign",
                "eye colour: pink",
                "--kits",
                "99",
                "--out",
                file("none.csv"));
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code());
        assertEquals("", run.out());
        for (String told : List.of(
                "--sire, column 1: unknown allele \"q\"",
                "unknown population \"few\"",
                "did you mean \"eye colour\"?",
                "--ascertainment probands goes with --sign and --noticed",
                "99 is no count")) {
            assertTrue(run.err().contains(told), run.err());
        }
        assertTrue(carriers(file("none.txt")).err().contains("ends in .csv or .json"));
        assertTrue(
                carriers(file("none.json"), "--truth", file("none.json")).err().contains("of its own"));
        assertTrue(carriers(file("no/x.csv")).err().contains("there is no folder for"));
        assertTrue(
                carriers(file("none.csv"), "--truth", file("no/x.json")).err().contains("there is no folder for"));
        assertTrue(carriers(file("none.csv"), "--males", "3").err().contains("--generations"));
        assertTrue(carriers(file("none.csv"), "--founder", "Tarn=c/c").err().contains("--plan"));
        Run open =
                Run.of("simulate", "--alone", "--sire", "C/c", "--kits-seen", "eye colour", "--out", file("none.csv"));
        assertTrue(open.err().contains("no population says how frequent they are"), open.err());
        Run never = Run.of(
                "simulate",
                "--alone",
                "--sire",
                "C/C",
                "--dam",
                "C/c",
                "--population",
                "few carriers",
                "--kits-seen",
                "eye colour",
                "--ascertainment",
                "at least one",
                "--sign",
                "eye colour: pink",
                "--out",
                file("none.csv"));
        assertEquals(ExitCodes.NOT_UNDERSTOOD, never.code());
        assertTrue(never.err().contains("no couple all of whose litters are to be kept came up"), never.err());
        try (var files = Files.list(folder)) {
            assertEquals(0, files.count());
        }
    }
}
