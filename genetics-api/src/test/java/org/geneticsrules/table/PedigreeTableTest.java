package org.geneticsrules.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.geneticsrules.document.Reference;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.CalledName;
import org.geneticsrules.pedigree.Hearing;
import org.geneticsrules.pedigree.HearingTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.NamedRecords;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.geneticsrules.vocabulary.Facet;
import org.geneticsrules.vocabulary.Name;
import org.geneticsrules.vocabulary.PartialDate;
import org.geneticsrules.vocabulary.Sense;
import org.geneticsrules.vocabulary.Vocabulary;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

@Tag("default-jdk")
class PedigreeTableTest {

    private static final PedigreeTable TABLE = PedigreeTable.of("table", "1");

    /** Codes of limits and of bytes, which have tests of their own. */
    private static final Set<String> OF_LIMITS =
            Set.of("not-utf-8", "too-long-cell", "too-many-bytes", "too-many-columns", "too-many-rows");

    /** One block of the table of mistakes. */
    record Row(String stage, String code, String pointer, String place, String message, String csv) {
        @Override
        public String toString() {
            return code + " at " + place;
        }
    }

    static List<Row> rows() throws IOException {
        List<Row> rows = new ArrayList<>();
        try (InputStream in = PedigreeTableTest.class.getResourceAsStream("bad-tables.txt")) {
            String text = new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
            for (String block : text.split("\n\n== ", -1)) {
                if (block.startsWith("#")) {
                    continue;
                }
                String[] lines = block.split("\n", 3);
                String[] head = lines[0].split(" *\\| *", -1);
                rows.add(new Row(head[0], head[1], head[2], head[3], lines[1], lines[2].strip() + "\n"));
            }
        }
        return rows;
    }

    @ParameterizedTest
    @MethodSource("rows")
    void the_mistake_is_found_in_its_cell(Row row) {
        ProblemsException thrown = assertThrows(ProblemsException.class, () -> TABLE.read(row.csv));
        Problem problem = thrown.problems().stream()
                .filter(one -> one.code().equals(row.code))
                .findFirst()
                .orElseThrow(() -> new AssertionError(thrown.getMessage()));
        assertTrue(problem.toString().contains(row.message), problem::toString);
        assertEquals(row.stage, problem.stage().word());
        assertEquals(row.pointer, problem.pointer());
        assertEquals(row.place, problem.position().orElseThrow().toString());
    }

    @Test
    void every_code_in_the_sources_is_reached() throws IOException {
        Set<String> expected = new TreeSet<>();
        Pattern code = Pattern.compile(
                "(?:add|unknown|report|of|syntax)\\(\\s*(?:Stage\\.\\w+,\\s*)?\"([a-z0-9]+(?:-[a-z0-9]+)+)\"");
        try (Stream<Path> files = Files.list(Path.of("src/main/java/org/geneticsrules/table"))) {
            for (Path file : files.toList()) {
                Matcher found = code.matcher(Files.readString(file));
                while (found.find()) {
                    expected.add(found.group(1));
                }
            }
        }
        assertTrue(expected.size() > 25, expected::toString);
        expected.removeAll(OF_LIMITS);
        rows().forEach(row -> expected.remove(row.code));
        assertEquals(Set.of(), expected, "codes without a table that reaches them");
    }

    @Test
    void a_plain_table_is_read() {
        Pedigree read = TABLE.read("""
                id,sex,born,dam,sire,x-note,trait: hue,trait: eye,weeks,locus: C,left ear
                jill,female,,,,of old,,,,,
                hob,male,,,,,,,,,
                kit 1,female,2020-05-01,jill,hob,,black | brown,pink,8,C/c,hears
                kit 2,,2020-05-01,jill,hob,,,,,,
                kit 3,,2021-05-01,jill,hob,,,,,,
                kit 4,,,jill,hob,,,,,,
                """);
        assertEquals(
                List.of("kit 1", "kit 3", "kit 4"), List.copyOf(read.litters().keySet()));
        assertEquals(List.of("kit 1", "kit 2"), read.litters().get("kit 1").kits());
        assertEquals(
                List.of(HearingTest.of(Hearing.HEARS, Hearing.NOT_JUDGED)),
                read.individual("kit 1").hearing());
        var seen = read.individual("kit 1").observations().get(0);
        assertEquals(LifeStage.atWeek(8), seen.stage());
        assertEquals(
                Set.of(Phenotype.parse("hue: black, eye: pink"), Phenotype.parse("hue: brown, eye: pink")),
                seen.looks());
        assertEquals(Set.of("C/c"), read.individual("kit 1").tests().get(0).result());
    }

    @Test
    void candidates_stand_in_rows_of_their_own() {
        Pedigree read = TABLE.read("""
                id,sex,litter,dam,sire,sire share,sire population,sire of
                f,female,,,,,,
                m,male,,,,,,
                a,,l,f,m,1 in 3,,each kit
                a,,,,,2/3,moor,
                b,,l,,,,,
                ,,lost,f,m,,,
                """);
        assertEquals(
                Paternity.perKit(
                        Paternity.Candidate.of("m", Probability.of(1, 3)),
                        Paternity.Candidate.unrecorded("moor", Probability.of(2, 3))),
                read.litters().get("l").sires());
        assertEquals(List.of("a", "b"), read.litters().get("l").kits());
        assertEquals(Litter.of("lost", "f", "m"), read.litters().get("lost"));
        assertEquals(read, TABLE.read(PedigreeTable.write(read)));
    }

    @ParameterizedTest
    @CsvSource({
        "=1+1, '''=1+1'",
        "+a, '''+a'",
        "-a, '''-a'",
        "@a, '''@a'",
        "'''a', '''''a'",
        "007, '''007'",
        "1/4, '''1/4'",
        "1e5, '''1e5'",
        "1234567890123456, '''1234567890123456'",
        "12, 12",
        "a/b, a/b",
        "i1, i1"
    })
    void a_text_is_guarded_where_a_spreadsheet_would_change_it(String text, String cell) {
        assertEquals(cell, Cells.guarded(text));
        assertEquals(text, Cells.unguarded(cell));
        assertEquals(text, Cells.unguarded(text), "without the guard");
    }

    @Test
    void chances_are_exact_and_no_dates() {
        assertEquals("0.25", Cells.chance(Probability.of(1, 4)));
        assertEquals("1", Cells.chance(Probability.ONE));
        assertEquals("1 in 3", Cells.chance(Probability.of(1, 3)));
        for (String text : List.of("0.25", "1/4", "25 %", "1 in 4")) {
            assertEquals(Probability.of(1, 4), Cells.chance(text));
        }
    }

    @Test
    void title_and_catalogue_are_those_of_the_caller() {
        Pedigree read =
                TABLE.title("Title").catalogue(Reference.of("traits", "1")).read("id\na\n");
        assertEquals(Optional.of("Title"), read.title());
        assertEquals("traits", read.catalogue().orElseThrow().id());
        assertThrows(IllegalArgumentException.class, () -> PedigreeTable.of(" ", "1"));
    }

    @Test
    void what_a_model_does_not_know_is_found_in_its_cell() {
        Catalogue catalogue =
                Catalogue.builder("traits", "1").trait("hue", "black").build();
        Model model = Model.builder("model", "1", catalogue)
                .locus("B", locus -> locus.alleles("B").expressions("full").shows("B", "full"))
                .build();
        ProblemsException thrown = assertThrows(
                ProblemsException.class,
                () -> TABLE.read("id,population,trait: hue,locus: C\na,moor,blak,C/c\n", model));
        assertEquals(
                List.of("2:3", "2:8", "2:13"),
                thrown.problems().stream()
                        .map(problem -> problem.position().orElseThrow().toString())
                        .toList(),
                thrown::getMessage);
    }

    @Test
    void words_are_told_apart() {
        ColumnNames names = ColumnNames.standard();
        assertEquals("foster dam", names.word(Column.FOSTER_DAM));
        assertThrows(IllegalArgumentException.class, () -> names.with(Column.DAM, "sire"));
        assertThrows(IllegalArgumentException.class, () -> names.with(Column.DAM, " dam"));
        assertThrows(IllegalArgumentException.class, () -> names.with(Column.DAM, "x-dam"));
        assertThrows(IllegalArgumentException.class, () -> names.with(Column.DAM, "trait: dam"));
        assertThrows(IllegalArgumentException.class, () -> names.withBeginnings("", "locus: "));
        assertThrows(IllegalArgumentException.class, () -> names.withBeginnings("is ", "is in "));
    }

    @Test
    void a_file_is_read_and_one_too_large_is_refused(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("kennel.csv");
        Files.writeString(file, "\uFEFFid,sex\r\na,male\r\n");
        assertEquals(Set.of("a"), TABLE.read(file).individuals().keySet());
        assertThrows(UncheckedIOException.class, () -> TABLE.read(folder.resolve("none.csv")));
        assertCode("not-utf-8", () -> TABLE.read(new byte[] {'i', 'd', '\n', (byte) 0xFF}));
        assertCode("too-many-bytes", () -> TABLE.read(new byte[Sheet.MOST_BYTES + 1]));
        assertCode("too-many-columns", () -> TABLE.read("id" + ",".repeat(1000) + "\n"));
        assertCode("too-long-cell", () -> TABLE.read("id\n" + "a".repeat(20_001) + "\n"));
        assertCode("too-many-rows", () -> TABLE.read("id\n" + "a\n".repeat(1_000_001)));
    }

    private static void assertCode(String code, Runnable read) {
        ProblemsException thrown = assertThrows(ProblemsException.class, read::run);
        assertEquals(code, thrown.problems().get(0).code());
    }

    @Test
    void names_stand_in_rows_of_their_own_or_with_what_was_seen() {
        Pedigree read = TABLE.read("""
                id,seen on,moult,light,seen by,trait: hue,called,called in,facet
                a,2020-01-01,2,daylight,A. Keeper,black,dove,The North,colour
                a,1998,,,,,frost,south,
                """);
        assertEquals(
                List.of(
                        CalledName.of("dove", "The North")
                                .ofFacet("colour")
                                .on(LocalDate.of(2020, 1, 1))
                                .at(LifeStage.atMoult(2))
                                .in("daylight")
                                .by("A. Keeper"),
                        CalledName.of("frost", "south").on(PartialDate.of(1998))),
                read.individual("a").names());
        assertEquals(1, read.individual("a").observations().size());
        assertEquals(read, TABLE.read(PedigreeTable.write(read)));
    }

    @Test
    void a_month_is_guarded_since_a_spreadsheet_would_make_a_day_of_it() {
        CalledName frost = CalledName.of("frost", "south");
        Individual called = Individual.of("a")
                .with(frost.on(PartialDate.parse("1998-11")))
                .with(frost.on(PartialDate.parse("1998")))
                .with(frost.on(PartialDate.parse("1998-11-02")));
        Pedigree names = Pedigree.builder("table", "1").add(called).build();
        String written = PedigreeTable.write(names);
        assertEquals(
                List.of(
                        "id,seen on,called,called in",
                        "a,'1998-11,frost,south",
                        "a,1998,frost,south",
                        "a,1998-11-02,frost,south"),
                written.lines().toList());
        assertEquals(called, TABLE.read(written).individual("a"));
        assertEquals(called, TABLE.read(written.replace("'", "")).individual("a"), "read without the guard too");
    }

    @Test
    void a_name_that_cannot_be_read_is_told_with_its_cell() {
        Catalogue traits =
                Catalogue.builder("traits", "1").trait("hue", "black", "grey").build();
        Model model = Model.builder("model", "1", traits)
                .locus("A", locus -> locus.alleles("A").shows("A", "a"))
                .notModelled("hue", "Not the subject.")
                .build();
        Vocabulary north = Vocabulary.builder("names.north", "1", traits)
                .facet(Facet.of("colour"))
                .name(Name.of("dove", "colour")
                        .withSense(Sense.of("only").withLook("grey", Condition.where("hue", "grey"))))
                .build();
        String table = """
                id,season,trait: hue,called,called in
                a,,blue,dov,north
                b,,,dove,nroth
                c,autumn,,dove,north
                """;
        ProblemsException refused =
                assertThrows(ProblemsException.class, () -> TABLE.read(table, model, List.of(north)));
        assertEquals(
                List.of(
                        "unknown-state /0/trait: hue 2:4",
                        "unknown-name /0/called 2:9",
                        "unknown-vocabulary /1/called in 3:10",
                        "unknown-season /2/season 4:3"),
                refused.problems().stream()
                        .map(one -> one.code() + " " + one.pointer() + " "
                                + one.position().orElseThrow())
                        .toList());
        NamedRecords read = TABLE.read("id,called,called in\na,Dove,names.north\n", model, List.of(north));
        assertEquals(
                Set.of(Phenotype.of("hue", "grey")),
                read.pedigree().individual("a").observations().get(0).looks());
    }

    @Test
    void a_row_counts_kits_that_are_alike() {
        Pedigree read = TABLE.read("""
                id,count,sex,litter,dam,sire,kits born,kits scored,ascertainment,ascertainment sign,weeks,trait: eye
                jill,,female,,,,,,,,,dark
                hob,,male,,,,,,,,,
                spring/2,,male,spring,jill,hob,7,6,at least one,eye: pink,,pink
                ,3,,spring,jill,hob,,,,,8,dark
                ,1,female,spring,,,,,,,,pink
                ,0,male,autumn,jill,,,,complete,,,pink
                """);
        assertEquals(
                List.of("spring/2", "spring/1", "spring/3", "spring/4", "spring/5"),
                read.litters().get("spring").kits());
        assertEquals(
                Ascertainment.atLeastOne(Phenotype.of("eye", "pink")),
                read.litters().get("spring").ascertainment());
        assertEquals(
                Litter.of("autumn", Optional.of("jill"), Paternity.unknown()).with(Ascertainment.complete()),
                read.litters().get("autumn"));
        Observation dark = Observation.of(LifeStage.atWeek(8), Phenotype.of("eye", "dark"));
        for (String kit : List.of("spring/1", "spring/3", "spring/4")) {
            assertEquals(Individual.of(kit).with(dark), read.individual(kit));
        }
        assertEquals(Optional.of(Sex.FEMALE), read.individual("spring/5").sex());
        assertEquals(
                List.of(
                        "id,count,sex,litter,dam,sire,kits born,kits scored,ascertainment,ascertainment sign,weeks,trait: eye",
                        "jill,,female,,,,,,,,,dark",
                        "hob,,male,,,,,,,,,",
                        "\"\",1,male,spring,jill,hob,7,6,at least one,eye: pink,,pink",
                        "\"\",3,,spring,jill,hob,,,,,8,dark",
                        "\"\",1,female,spring,jill,hob,,,,,,pink",
                        "\"\",,,autumn,jill,,,,complete,,,"),
                PedigreeTable.writeCounted(read).lines().toList());
    }

    @Test
    void a_table_of_counts_needs_no_column_of_ids() {
        Pedigree read = TABLE.read("count,litter,trait: eye\n2,l,pink\n");
        assertEquals(
                Litter.of("l", Optional.empty(), Paternity.unknown(), "l/1", "l/2"),
                read.litters().get("l"));
    }

    @Test
    void ids_of_counted_kits_are_ids_however_long_that_of_the_litter_is() {
        String longest = "\uD83D\uDC3E".repeat(79) + "a";
        Pedigree read = TABLE.read("count,litter\n11," + longest + "\n1," + longest.substring(0, 158) + "b\n");
        assertEquals(12, read.individuals().size());
        assertTrue(read.individuals().keySet().stream().allMatch(Individual::isId));
    }

    @Test
    void what_is_wrong_with_kits_that_are_alike_is_said_once() {
        ProblemsException thrown = assertThrows(ProblemsException.class, () -> TABLE.read("""
                count,litter,born,litter born,seen on,trait: eye
                5,l,2020-05-20,2020-05-01,2020-01-01,pink
                """));
        assertEquals(
                List.of("before-birth 2:27", "birth-dates-differ 2:1"),
                thrown.problems().stream()
                        .map(one -> one.code() + " " + one.position().orElseThrow())
                        .toList(),
                thrown::getMessage);
    }

    @Test
    void a_sign_has_a_stage_and_a_light() {
        Litter litter = Litter.of("l", Optional.empty(), Paternity.unknown(), "a", "b")
                .with(new Ascertainment.Probands(
                        new Sighting(LifeStage.atWeek(8).in("winter"), Phenotype.of("1", "2")).in("dusk"),
                        Probability.of(1, 3),
                        OptionalInt.of(2)));
        Pedigree pedigree = Pedigree.builder("table", "1")
                .add(Individual.of("a"))
                .add(Individual.of("b"))
                .add(litter)
                .build();
        String written = PedigreeTable.write(pedigree);
        assertEquals(
                List.of(
                        "id,litter,ascertainment,ascertainment sign,ascertainment weeks,ascertainment season,"
                                + "ascertainment light,ascertainment chance,probands",
                        "a,l,probands,'1: 2,8,winter,dusk,1 in 3,2",
                        "b,l,,,,,,,"),
                written.lines().toList());
        assertEquals(pedigree, TABLE.read(written));
    }

    @Test
    void a_sign_that_a_model_does_not_know_is_found_in_its_cell() {
        Catalogue catalogue =
                Catalogue.builder("traits", "1").trait("eye", "dark", "pink").build();
        Model model = Model.builder("model", "1", catalogue)
                .locus("C", locus -> locus.alleles("C").shows("C", "full"))
                .notModelled("eye", "Not the subject.")
                .build();
        ProblemsException thrown = assertThrows(ProblemsException.class, () -> TABLE.read("""
                        count,litter,ascertainment,ascertainment sign,ascertainment season,ascertainment light
                        2,l,at least one,"eye: pnik, light: on",autumn,dusk
                        """, model));
        assertEquals(
                List.of(
                        "unknown-season ascertainment season 2:41",
                        "unknown-light ascertainment light 2:48",
                        "unknown-state ascertainment sign 2:18",
                        "unknown-trait ascertainment sign 2:18"),
                thrown.problems().stream()
                        .map(one -> one.code() + " " + one.pointer().substring(3) + " "
                                + one.position().orElseThrow())
                        .toList());
    }
}
