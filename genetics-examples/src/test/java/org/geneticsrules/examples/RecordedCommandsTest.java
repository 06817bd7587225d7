package org.geneticsrules.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.geneticsrules.json.RecordedDocument;
import org.geneticsrules.json.RegistryDocument;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The commands about recorded animals, asked about an invented kennel; the numbers are calculated (CarrierArithmeticTest). */
@Tag("default-jdk")
class RecordedCommandsTest {

    static final String KENNEL = """
            id,sex,litter,dam,sire,trait: eye colour
            Sorrel,female,,,,pink
            Wicket,female,,,,dark
            Tarn,male,,,,dark
            Fennick,male,A,Wicket,Tarn,dark
            Pip,male,A,Wicket,Tarn,pink
            Bramble,male,B,Sorrel,Fennick,dark
            """;

    @TempDir
    private Path folder = Path.of("");

    private String kennel = "";

    @BeforeEach
    void write() throws IOException {
        kennel = file("kennel.csv", KENNEL).toString();
    }

    private Path file(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    private Run ask(String command, String... more) {
        List<String> all = new ArrayList<>(List.of(command, "--alone", "--pedigree", kennel));
        all.addAll(Arrays.asList(more));
        return Run.of(all.toArray(String[]::new));
    }

    private static String answered(Run run) {
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        assertEquals("", run.err());
        return run.out();
    }

    /** The text of an answer, without its lines, which are no longer than they may be. */
    private static String unwrapped(String text) {
        text.lines().forEach(line -> assertTrue(line.length() <= 100, line));
        return text.replaceAll("\\s+", " ");
    }

    @Test
    void a_brother_of_an_albino_with_a_dark_kit_by_an_albino() {
        String hides = answered(ask("may-carry", "--animal", "Fennick", "--loci", "C", "--population", "few carriers"));
        assertTrue(unwrapped(hides).contains("albino: 1/2 (50 %)"), hides);
        assertTrue(hides.contains("dominant allele"), hides);
        String trail = answered(
                ask("carrier-trail", "--animal", "Fennick", "--carries", "albino", "--population", "few carriers"));
        assertTrue(
                unwrapped(trail).startsWith("By all records \"Fennick\" carries albino with a chance of 1/2 (50 %);"),
                trail);
        assertTrue(
                trail.lines()
                        .anyMatch(line ->
                                line.matches("the look of \"Bramble\" \\(eye colour: dark\\) +x 1/2 +1/2 \\(50 %\\)")),
                trail);
    }

    /** The eye of an albino is known to be pink, so it tells nothing; of the hair nothing is recorded. */
    @Test
    void what_is_known_already_tells_nothing() {
        String next = answered(ask(
                "look-next",
                "--animal",
                "Pip",
                "--traits",
                "eye colour, coat length, hue",
                "--weeks",
                "20",
                "--moult",
                "1",
                "--population",
                "few carriers"));
        assertTrue(unwrapped(next).startsWith("Look at coat length next:"), next);
        assertTrue(unwrapped(next).contains("Tells nothing more: hue, eye colour."), next);
    }

    @Test
    void a_single_animal_is_described_by_looks() {
        String[] line = {
            "look-next",
            "--look",
            "white guard hairs: all @ week 60, moult 1",
            "--sex",
            "male",
            "--traits",
            "eye colour, hue",
            "--weeks",
            "60",
            "--moult",
            "1"
        };
        String next = answered(Run.of(line));
        assertTrue(unwrapped(next).startsWith("Look at eye colour next:"), next);
        assertTrue(unwrapped(next).contains("a burgundy eye can look pink under a lamp"), next);
        assertTrue(
                next.lines().anyMatch(one -> one.matches("albino +no silver +44.71 % +512/1625 \\(31.51 %\\)")), next);
        List<String> json = new ArrayList<>(Arrays.asList(line));
        json.addAll(List.of("--format", "json"));
        assertValid("recorded-answer", RecordedDocument.schema(), answered(Run.of(json.toArray(String[]::new))));
    }

    @Test
    void a_single_animal_has_no_pedigree() {
        assertEquals(
                ExitCodes.NOT_UNDERSTOOD,
                ask("look-next", "--look", "eye colour: dark").code());
        Run both = ask("look-next", "--animal", "Pip", "--look", "eye colour: pink");
        assertEquals(ExitCodes.NOT_UNDERSTOOD, both.code());
        assertTrue(both.err().contains("--look, --called and --sex describe a single animal"), both.err());
        Run wrong = Run.of("look-next", "--look", "eye color: pink", "--moult", "-1", "--population", "fw carriers");
        assertEquals(ExitCodes.NOT_UNDERSTOOD, wrong.code());
        assertTrue(wrong.err().contains("did you mean \"eye colour\"?"), wrong.err());
        assertTrue(wrong.err().contains("--moult"), wrong.err());
        assertTrue(wrong.err().contains("did you mean \"few carriers\"?"), wrong.err());
    }

    /** The numbers are those of LaterTest, worked by hand there. */
    @Test
    void a_silver_will_keep_whitening() {
        String[] line = {
            "later",
            "--look",
            "white guard hairs: scattered @ moult 1",
            "--traits",
            "white guard hairs",
            "--moult",
            "3",
            "--population",
            "few carriers"
        };
        String later = answered(Run.of(line));
        assertTrue(
                unwrapped(later)
                        .startsWith(
                                "At moult 3, by all records, \"the animal\" may show white guard hairs from scattered to"
                                        + " about half, most likely mostly coloured."),
                later);
        assertTrue(
                later.lines().anyMatch(one -> one.matches(" +mostly coloured +possible +7/16 \\(43.75 %\\)")), later);
        assertTrue(
                unwrapped(later).contains("excluded then: white guard hairs none, mostly white, nearly all, all."),
                later);
        assertTrue(unwrapped(later).contains("the grade of that is conjecture"), later);
        List<String> json = new ArrayList<>(Arrays.asList(line));
        json.addAll(List.of("--format", "json"));
        assertValid("recorded-answer", RecordedDocument.schema(), answered(Run.of(json.toArray(String[]::new))));
    }

    /** Two coated parents of an albino each carry it; their dark son does with 2/3, and his dark kit by an albino makes that 1/2. */
    @Test
    void a_dna_test_is_told_with_its_error_and_its_cause() {
        String[] more = {
            "--animal", "Fennick", "--carries", "albino", "--population", "few carriers", "--error", "1/100"
        };
        String test = answered(ask("dna-test", more));
        assertTrue(
                unwrapped(test)
                        .startsWith(
                                "A DNA test of \"Fennick\" at C would tell whether it is likely to carry albino, but settle"
                                        + " nothing by itself, since it is wrong in 1/100 of cases. A cause of it in the DNA is on"
                                        + " record"),
                test);
        assertTrue(test.lines().anyMatch(one -> one.matches("without the test +1/2 \\(50 %\\)")), test);
        assertTrue(unwrapped(test).contains("OMIA:000202-9669"), test);
        assertTrue(unwrapped(test).contains("Whether any laboratory offers a test is not known here"), test);
        List<String> json = new ArrayList<>(Arrays.asList(more));
        json.addAll(List.of("--format", "json"));
        assertValid(
                "recorded-answer", RecordedDocument.schema(), answered(ask("dna-test", json.toArray(String[]::new))));
        String alone = answered(Run.of("dna-test", "--look", "eye colour: dark", "--locus", "M"));
        assertTrue(unwrapped(alone).contains("would settle which of 3 genotypes it has"), alone);
    }

    @Test
    void three_kinds_of_sure_stand_side_by_side() {
        String sure = answered(ask(
                "how-sure",
                "--animal",
                "Fennick",
                "--carries",
                "albino",
                "--mate",
                "Sorrel",
                "--kits",
                "2",
                "--population",
                "few carriers"));
        assertTrue(
                sure.lines().anyMatch(line -> line.matches(" +2 +3/4 \\(75 %\\) +1/5 \\(20 %\\) +3/8 \\(37.5 %\\)")),
                sure);
        assertTrue(unwrapped(sure).contains("check your local law"), sure);
        assertTrue(sure.contains("A calculated mating is no approval of it."), sure);
    }

    @Test
    void the_next_litter_is_counted_as_a_mixture() {
        String next = answered(ask(
                "next-litter",
                "--sire",
                "Fennick",
                "--dam",
                "Sorrel",
                "--traits",
                "eye colour",
                "--look",
                "eye colour: pink",
                "--kits",
                "2",
                "--population",
                "few carriers"));
        assertTrue(next.lines().anyMatch(line -> line.matches("eye colour pink +1/4 \\(25 %\\)")), next);
        assertTrue(next.lines().anyMatch(line -> line.matches(" +0 +5/8 \\(62.5 %\\)")), next);
        assertTrue(
                unwrapped(next).contains("if the kits were independent, none would show it with a chance of 9/16"),
                next);
    }

    @Test
    void an_excluded_sire_is_named_with_the_records_and_never_accused() throws IOException {
        kennel = file(
                        "other.csv",
                        KENNEL.replace("Tarn,male,,,,dark", "Tarn,male,,,,pink")
                                .replace("Wicket,female,,,,dark", "Wicket,female,,,,pink"))
                .toString();
        String sire = answered(ask("parentage", "--litter", "A"));
        assertTrue(unwrapped(sire).contains("\"Tarn\" is excluded. Colour proves no parentage."), sire);
        assertTrue(
                unwrapped(sire).contains("- If \"Tarn\" were the sire of the litter, not all of these could be true:"),
                sire);
        assertTrue(unwrapped(sire).contains("DNA parentage test through a veterinarian"), sire);
        assertTrue(
                unwrapped(sire).contains("Colour is no parentage test: it can exclude under a model, never accuse."),
                sire);
        Run contradicted = ask("may-carry", "--animal", "Fennick", "--loci", "C");
        assertEquals(ExitCodes.UNDECIDED, contradicted.code());
        assertTrue(
                contradicted.out().contains("  or the recorded sire \"Tarn\" of litter \"A\",\n"), contradicted.out());
        assertTrue(unwrapped(contradicted.out()).contains("it is no ground for doubting anybody"), contradicted.out());
        String registry =
                answered(ask("registry", "--out", folder.resolve("v.csv").toString()));
        assertTrue(unwrapped(registry).startsWith("Of 6 animals 3 have records that do not fit one another"), registry);
        assertTrue(Files.readString(folder.resolve("v.csv")).contains("Fennick,query,\"These records do not fit"));
    }

    @Test
    void two_hobs_and_a_stranger_are_weighed_by_their_shares() {
        String sires = answered(ask(
                "parentage",
                "--litter",
                "B",
                "--male",
                "Fennick=1/2",
                "--male",
                "Pip=1/4",
                "--unrecorded",
                "1/4",
                "--each-kit",
                "--population",
                "few carriers"));
        assertTrue(sires.lines().anyMatch(line -> line.matches("\"Bramble\" +\"Pip\" +excluded +0")), sires);
        assertTrue(sires.contains("a male who is not recorded"), sires);
    }

    @ParameterizedTest
    @CsvSource({
        "may-carry, --animal, Fennick, --loci, B",
        "look-next, --animal, Bramble, --traits, 'hue, coat length'",
        "carrier-trail, --animal, Fennick, --carries, albino",
        "later, --animal, Bramble, --moult, 2",
        "dna-test, --animal, Bramble, --locus, L",
        "parentage, --litter, A, --words, ''"
    })
    void documents_follow_their_schema(String command, String one, String two, String three, String four) {
        List<String> more = new ArrayList<>(List.of("--format", "json", one, two, three));
        if (!four.isEmpty()) {
            more.add(four);
        }
        assertValid("recorded-answer", RecordedDocument.schema(), answered(ask(command, more.toArray(String[]::new))));
    }

    private static void assertValid(String kind, String schema, String document) {
        String id = "urn:geneticsrules:schema:" + kind + ":0";
        assertEquals(
                List.of(),
                SchemaRegistry.withDefaultDialect(
                                SpecificationVersion.DRAFT_2020_12, builder -> builder.schemas(Map.of(id, schema)))
                        .getSchema(SchemaLocation.of(id))
                        .validate(document, InputFormat.JSON)
                        .stream()
                        .map(Object::toString)
                        .toList());
    }

    @Test
    void a_registry_is_written_whole_with_progress_where_it_is_wanted() throws IOException {
        Path out = folder.resolve("verdicts.json");
        Run run = ask("registry", "--out", out.toString(), "--carries", "albino", "--progress", "always");
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        assertTrue(run.err().contains("checking [" + "=".repeat(40) + "] 100 %"), run.err());
        assertValid("registry-report", RegistryDocument.schema(), Files.readString(out));
        assertEquals("", ask("registry", "--progress", "never").err());
        assertEquals("", ask("registry").err(), "quiet where nobody watches");
    }

    /** Neither the records nor a model is lost, however the file is spelt. */
    @Test
    void a_registry_never_takes_the_place_of_what_is_read() throws IOException {
        Path own = Files.writeString(folder.resolve("own.csv"), "id,sex\nTarn,male\n");
        Path link = Files.createSymbolicLink(folder.resolve("link.csv"), own);
        Path round = folder.resolve("./own.csv");
        for (Path out : List.of(own, link, round)) {
            Run run = Run.of("registry", "--pedigree", own.toString(), "--out", out.toString());
            assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code(), out::toString);
            assertTrue(run.err().contains("is named by the same command (--pedigree)"), run.err());
        }
        Path patch = folder.resolve("patch.json");
        Run patched = Run.of(
                "registry", "--pedigree", own.toString(), "--patch", patch.toString(), "--out", patch.toString());
        assertTrue(patched.err().contains("patch.json"), patched.err());
        assertFalse(Files.exists(patch));
        assertEquals("id,sex\nTarn,male\n", Files.readString(own));
        Run nowhere = ask("registry", "--out", folder.resolve("no/v.csv").toString());
        assertTrue(nowhere.err().contains("there is no folder for"), nowhere.err());
    }

    @Test
    void a_registry_without_time_says_what_it_did_not_come_to() throws IOException {
        Path out = folder.resolve("verdicts.csv");
        String[] asked = {"--out", out.toString(), "--carries", "albino", "--population", "few carriers", "--minutes"};
        String[] none = Arrays.copyOf(asked, asked.length + 1);
        none[asked.length] = "0";
        String told = answered(ask("registry", none));
        assertTrue(unwrapped(told).contains("not in time not come to within the time 6"), told);
        assertTrue(Files.readString(out).contains("Fennick,accept,,,0,"), "what takes no time is told");
        assertEquals(
                6,
                Files.readString(out)
                        .lines()
                        .filter(line -> line.endsWith(",,not in time,"))
                        .count());
        none[asked.length] = "10";
        assertFalse(answered(ask("registry", none)).contains("not in time"));
        assertTrue(Files.readString(out).lines().skip(1).allMatch(line -> line.endsWith(",exact,")));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "may-carry --animal Fenick | did you mean \"Fennick\"?",
                "may-carry --animal Tarn --loci Q | unknown locus \"Q\"",
                "carrier-trail --animal Tarn --carries albinos | did you mean \"albino\"?",
                "how-sure --animal Tarn --carries albino --mate Fennick | are both male",
                "how-sure --animal Tarn --carries albino --mate Sorrel --kits 99 | 1 to 30",
                "next-litter --sire Tarn --dam Sorrel --traits hues | did you mean \"hue\"?",
                "parentage --litter AA | unknown litter \"AA\"",
                "parentage --litter A --male Tarn=1/2 --male Pip | no share is stated",
                "parentage --litter A --male Tarn=1/2 | must sum to 1",
                "parentage --litter A --each-kit | needs the males",
                "later --animal Tarn | no stage is stated",
                "later --animal Tarn --moult 0 --traits mask | season",
                "later --animal Tarn --moult 0 --traits hues | did you mean \"hue\"?",
                "dna-test --animal Tarn --carries albinos | did you mean \"albino\"?",
                "dna-test --animal Tarn --locus C,B | a test is of one locus",
                "dna-test --animal Tarn --locus Q | unknown locus \"Q\"",
                "dna-test --animal Tarn | --carries",
                "dna-test --animal Tarn --locus C --error 1 | less than 1",
                "dna-test --animal Tarn --locus C --error 2 | --error",
                "registry --out verdicts.txt | ends in .csv or .json",
                "registry --carries albino | say which with --out",
                "registry --minutes -1 | expected a number from 0 to",
                "registry --minutes 5 | say of which alleles with --carries",
                "registry --progress sometimes | unknown word \"sometimes\""
            })
    void what_is_mistyped_is_named_and_nothing_is_printed(String line, String expected) {
        String[] words = line.split(" ", -1);
        Run run = ask(words[0], Arrays.copyOfRange(words, 1, words.length));
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code(), run.out());
        assertEquals("", run.out());
        assertTrue(run.err().contains(expected), run.err());
        assertFalse(run.err().contains("\tat "), run.err());
    }

    @Test
    void all_that_is_mistyped_on_one_line_is_named_at_once() {
        Run run = ask(
                "how-sure",
                "--animal",
                "Fenick",
                "--carries",
                "albinos",
                "--mate",
                "Sorel",
                "--kits",
                "99",
                "--population",
                "carriers",
                "--misnamed",
                "eye colur: dark as pink=1/50",
                "--misnamed",
                "eye colour: dark as pnk=1/50",
                "--format",
                "jsn");
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code());
        assertEquals("", run.out());
        assertEquals(
                List.of(
                        "--population",
                        "--misnamed",
                        "--misnamed",
                        "--format",
                        "--animal",
                        "--carries",
                        "--mate",
                        "--kits"),
                run.err()
                        .lines()
                        .map(line -> line.replaceFirst("problem: (--\\w+)[:,].*", "$1"))
                        .toList());
    }

    /** Two albinos with a dark kit: the kit may be misnamed. Of founders named pink, c/c : others named so are 1/25 ^ 2 : 624/625 x 1/50. */
    @Test
    void an_error_of_naming_explains_what_does_not_fit() throws IOException {
        kennel = file("two.csv", """
                        id,sex,litter,dam,sire,trait: eye colour
                        Frost,female,,,,pink
                        Rime,male,,,,pink
                        kit,male,A,Frost,Rime,dark
                        Stray,female,,,,pink
                        """).toString();
        assertEquals(
                ExitCodes.UNDECIDED,
                ask("may-carry", "--animal", "kit", "--loci", "C").code());
        String misnamed = "eye colour: dark as pink=2/100";
        String kit = answered(ask("may-carry", "--animal", "kit", "--loci", "C", "--misnamed", misnamed));
        assertTrue(
                unwrapped(kit)
                        .contains(
                                "save for errors of naming: eye colour dark is recorded as pink with a chance of 1/50"),
                kit);
        String stray = answered(ask(
                "may-carry",
                "--animal",
                "Stray",
                "--loci",
                "C",
                "--misnamed",
                misnamed,
                "--population",
                "few carriers"));
        assertTrue(stray.lines().anyMatch(line -> line.matches(".* c/c +possible +25/337 \\(7.42 %\\)")), stray);
        assertTrue(unwrapped(answered(ask("registry", "--misnamed", misnamed)))
                .startsWith("Of 4 animals no records were found that contradict one another"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "eye colour dark | a misnaming such as",
                "eye colour: dark=1/2 | no \"as\"",
                "eye colour: dark as pink=3/2 | between 0 and 1",
                "eye colour: dark as pink=0 | never happens",
                "eye colour: dark as dark=1/2 | takes one state for another",
                "eye colour: drak as pnk=1/2 | did you mean \"dark\"? [unknown-state]",
                "eye colour: dark as pink @ week x=1/2 | week"
            })
    void a_misnaming_that_is_not_understood_is_told(String misnamed, String expected) {
        Run run = ask("may-carry", "--animal", "Tarn", "--misnamed", misnamed);
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code(), run.out());
        assertTrue(run.err().startsWith("problem: --misnamed: "), run.err());
        assertTrue(run.err().contains(expected), run.err());
    }

    @Test
    void misnamings_share_one_and_are_stated_once() {
        Run more = ask(
                "may-carry",
                "--animal",
                "Tarn",
                "--misnamed",
                "hue: black as brown=2/3",
                "--misnamed",
                "hue: black as none seen=1/2");
        assertEquals(ExitCodes.NOT_UNDERSTOOD, more.code());
        assertTrue(more.err().contains("trait hue shown as \"black\""), more.err());
        assertTrue(more.err().contains("share 1"), more.err());
        Run twice = ask(
                "may-carry",
                "--animal",
                "Tarn",
                "--misnamed",
                "hue: black as brown=1/3",
                "--misnamed",
                "hue: black as brown=1/4");
        assertTrue(twice.err().contains("second chance"), twice.err());
    }

    @Test
    void shares_that_do_not_add_up_are_told_with_the_rest() {
        Run run = ask(
                "parentage", "--litter", "AA", "--male", "Tarn=1/2", "--male", "Pipp=1/3", "--population", "carriers");
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code());
        for (String told : List.of("\"AA\"", "did you mean \"Pip\"?", "but sum to 5/6", "--population")) {
            assertTrue(run.err().contains(told), run.err());
        }
        Run lacking = ask("parentage", "--litter", "A", "--male", "Tarn=1/2", "--male", "Pip", "--male", "Fennick=x");
        assertTrue(lacking.err().contains("no share is stated"), lacking.err());
        assertTrue(lacking.err().contains("but found \"x\""), lacking.err());
        assertFalse(lacking.err().contains("must sum"), "nobody knows the sum: " + lacking.err());
    }

    @Test
    void an_unreadable_table_is_the_only_problem_of_an_id_with_an_equals_sign() throws IOException {
        kennel = file("bad.csv", "id,sex\na=b,mael\n").toString();
        Run run = ask("parentage", "--litter", "A", "--male", "a=b", "--unrecorded", "1/2");
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code());
        assertEquals(
                1, run.err().lines().filter(line -> line.contains("expected")).count(), run.err());
        assertTrue(run.err().contains("did you mean \"male\"?"), run.err());
    }

    @Test
    void problems_of_a_table_are_named_with_line_and_column() throws IOException {
        kennel = file("bad.csv", KENNEL.replace("Tarn,male,,,,dark", "Tarn,male,,,,drak"))
                .toString();
        Run run = ask("registry", "--out", folder.resolve("v.csv").toString());
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code());
        assertTrue(run.err().contains("bad.csv:4:"), run.err());
        assertTrue(run.err().contains("did you mean \"dark\"?"), run.err());
        assertFalse(Files.exists(folder.resolve("v.csv")));
    }
}
