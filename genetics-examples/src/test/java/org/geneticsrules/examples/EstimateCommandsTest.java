package org.geneticsrules.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.geneticsrules.json.Documents;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelDocument;
import org.geneticsrules.pedigree.PedigreeDocument;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.table.PedigreeTable;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.CatalogueDocument;
import org.geneticsrules.trait.Condition;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Numbers estimated from the command line, from counts and from recorded animals. */
@Tag("once")
class EstimateCommandsTest {

    private static final Path STOCK = Path.of("guide/jobs/stock.csv");

    @TempDir
    private Path folder;

    private static Run estimate(String... args) {
        String[] all = new String[args.length + 1];
        all[0] = "estimate";
        System.arraycopy(args, 0, all, 1, args.length);
        return Run.of(all);
    }

    private static JsonNode json(String... args) {
        String[] all = new String[args.length + 2];
        System.arraycopy(args, 0, all, 0, args.length);
        all[args.length] = "--format";
        all[args.length + 1] = "json";
        Run run = estimate(all);
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        JsonNode answer = JsonMapper.shared().readTree(run.out());
        assertEquals("estimate-answer", answer.get("kind").asString());
        return answer;
    }

    private static double value(JsonNode answer, int number) {
        return Double.parseDouble(answer.get("numbers").get(number).get("value").asString());
    }

    /** Published values, as in the tests of the engine: Fisher and Balmukand 1928; Griffiths et al.; Lange. */
    @Test
    void published_values_from_counts() {
        assertEquals(
                0.188977,
                value(json("recombination", "--intercross", "1997:906:904:32", "--phase", "repulsion"), 0),
                5e-7);
        assertEquals(191 / 1448.0, value(json("recombination", "--three-point", "1172:183:85:8"), 0), 1e-9);
        assertEquals(0.12, value(json("recombination", "--test-cross", "12 of 100"), 0), 1e-9);
        assertEquals(0.754808, value(json("frequency", "--genotypes", "119:76:13"), 0), 5e-7);
        assertEquals(
                0, value(json("viability", "--counts", "800:435", "--conceived", "3:1", "--concerned", "1/4:0"), 0), 0);
        assertEquals(0.7, value(json("penetrance", "--known", "7 of 10"), 0), 1e-9);
        assertEquals(1, value(json("penetrance", "--young", "4 of 4 at 1/2", "--young", "1 of 4 at 1/4"), 0), 1e-6);
    }

    /** Published: Crow's cystic fibrosis sibships (Lange, Table 2.3): p 0.267949 and pi 0.359382 together, 0.339646 truncated. */
    @Test
    void published_sibships() {
        String crow =
                "10:3:1, 9:3:1, 8:4:1, 7:3:2, 7:3:1, 7:2:1, 7:1:1, 6:2:1, 6:1:1, 5:3:3, 5:3:2, 5:2:1 x 5, 5:1:1 x 2,"
                        + " 4:3:2, 4:3:1 x 2, 4:2:1 x 4, 4:1:1 x 6, 3:2:2 x 3, 3:2:1 x 3, 3:1:1 x 10, 2:2:2 x 2, 2:2:1 x 4,"
                        + " 2:1:1 x 18, 1:1:1 x 9";
        JsonNode probands = json("segregation", "--families", crow, "--ascertainment", "probands");
        assertEquals(0.267949, value(probands, 0), 5e-7);
        assertEquals(0.359382, value(probands, 1), 5e-7);
        JsonNode one = json("segregation", "--families", crow, "--ascertainment", "at least one");
        assertEquals(0.339646, value(one, 0), 5e-7);
        assertEquals("0.346846846847", one.get("reckonings").get(0).get("value").asString());
    }

    /** Kits that are counted in rows of a table, and the same records as a document. */
    @Test
    void records_in_either_form_say_the_same() throws IOException {
        Run table = estimate("segregation", "--pedigree", STOCK.toString(), "--look", "eye colour: pink");
        assertEquals(ExitCodes.ANSWERED, table.code(), table.err());
        assertTrue(table.out().contains("about 0.237, and"), table.out());
        table.out().lines().forEach(line -> assertTrue(line.length() <= 100, line));
        Path document = folder.resolve("stock.json");
        Files.writeString(
                document,
                Documents.write(
                        PedigreeDocument.of(PedigreeTable.of("stock.csv", "1").read(Files.readString(STOCK)))));
        Run same = estimate("segregation", "--pedigree", document.toString(), "--look", "eye colour: pink");
        assertEquals(table.out(), same.out());
        Run carriers = estimate(
                "segregation",
                "--pedigree",
                STOCK.toString(),
                "--look",
                "eye colour: pink",
                "--carriers-known",
                "--litters",
                "K, L, M");
        assertTrue(carriers.out().contains("Clopper-Pearson"), carriers.out());
        assertTrue(carriers.out().contains("0 of 8 show it"), carriers.out());
        JsonNode albino = json("frequency", "--pedigree", STOCK.toString(), "--allele", "albino");
        assertEquals(Math.sqrt(2 / 24.0), value(albino, 0), 1e-6);
        assertTrue(albino.get("cautions").size() > 0);
        assertTrue(albino.get("evidenceLevel").get("statements").size() > 0);
    }

    /** A model of one's own: the dam got both dominant alleles from her dam, so 2 of 8 kits are recombinant for certain. */
    @Test
    void numbers_of_a_model_by_a_pedigree() throws IOException {
        Catalogue traits = Catalogue.builder("own.traits", "1")
                .trait("hue", "BB", "Bb", "bb")
                .trait("mark", "WW", "Ww", "ww")
                .trait("bib", "yes", "no")
                .build();
        Model model = Model.builder("own", "1", traits)
                .locus(
                        "B",
                        one -> one.alleles("B", "b")
                                .shows("B", "BB")
                                .shows("B/b", "Bb")
                                .shows("b", "bb"))
                .locus(
                        "W",
                        one -> one.alleles("W", "w")
                                .shows("W", "WW")
                                .shows("W/w", "Ww")
                                .shows("w", "ww"))
                .group(LinkageGroup.autosomal("g", List.of("B", "W"), List.of(Probability.of(1, 10))))
                .trait("hue", rule -> List.of("BB", "Bb", "bb").forEach(is -> rule.when(Condition.where("B", is), is)))
                .trait("mark", rule -> List.of("WW", "Ww", "ww").forEach(is -> rule.when(Condition.where("W", is), is)))
                .trait(
                        "bib",
                        rule -> rule.when(
                                        "bare",
                                        Condition.where("W", "ww"),
                                        new CaseState.Chance(Distribution.of(
                                                Map.of("yes", Probability.of(1, 2), "no", Probability.of(1, 2)))))
                                .otherwise("no"))
                .population(
                        "even",
                        one -> one.frequency("B", "B", Probability.of(1, 2))
                                .frequency("B", "b", Probability.of(1, 2))
                                .frequency("W", "W", Probability.of(1, 2))
                                .frequency("W", "w", Probability.of(1, 2)))
                .build();
        String file = Files.writeString(folder.resolve("own.json"), Documents.write(ModelDocument.of(model)))
                .toString();
        String catalogue = Files.writeString(
                        folder.resolve("traits.json"), Documents.write(CatalogueDocument.of(traits)))
                .toString();
        String records = Files.writeString(folder.resolve("own.csv"), """
                        id,count,sex,litter,dam,sire,ascertainment,trait: hue,trait: mark,trait: bib
                        grandam,,female,,,,,BB,WW,
                        grandsire,,male,,,,,bb,ww,
                        dam,,female,old,grandam,grandsire,complete,Bb,Ww,
                        sire,,male,,,,,bb,ww,
                        ,6,,young,dam,sire,complete,Bb,Ww,
                        ,1,,young,,,,bb,Ww,
                        ,1,,young,,,,Bb,ww,yes
                        """).toString();
        JsonNode fraction = json(
                "recombination", "--file", file, "--catalogue", catalogue, "--pedigree", records, "--interval", "B-W");
        assertEquals(0.25, value(fraction, 0), 1e-6);
        assertTrue(
                fraction.get("linkage").get("families").get(0).get("phaseKnown").asBoolean());
        JsonNode bib = json(
                "penetrance",
                "--file",
                file,
                "--catalogue",
                catalogue,
                "--pedigree",
                records,
                "--trait",
                "bib",
                "--state",
                "yes");
        assertEquals(1, value(bib, 0), 1e-6);
        assertTrue(bib.get("numbers").get(0).get("atEnd").asBoolean());
    }

    @Test
    void records_that_say_nothing_are_undecided() {
        Run run = estimate("recombination", "--test-cross", "1 of 1", "--phase", "unknown");
        assertEquals(ExitCodes.UNDECIDED, run.code(), run.err());
        assertTrue(run.out().startsWith("These records say nothing about the recombination fraction"), run.out());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "recombination | state one of --test-cross, --intercross, --three-point, --pedigree",
                "recombination --intercross 1:2:3:4 --three-point 1:2:3:4 | not --intercross and --three-point",
                "recombination --intercross 1:2:3 --phase coupling | expected 4 counts, but found 3",
                "recombination --intercross 1:2:3:4 | state --phase: coupling or repulsion",
                "recombination --intercross 1:2:3:4 --phase coupled | expected one of coupling, repulsion",
                "recombination --intercross 1:2:3:x --phase coupling | \"x\" is no count",
                "recombination --test-cross 12 | for example \"12 of 100\"",
                "recombination --pedigree guide/jobs/stock.csv | state --interval",
                "recombination --pedigree guide/jobs/stock.csv --interval B-W | has no interval \"B-W\"",
                "segregation --families 5:2 | state --ascertainment: complete, \"at least one\" or probands",
                "segregation --families 5:2 --ascertainment probands | 7:3:2, 5:2:1 x 5",
                "segregation --families 5:0 --ascertainment at_least_one | have an affected sibling",
                "segregation --families 5:2 --ascertainment complete --share 1 | more than 0 and less than 1",
                "segregation --pedigree guide/jobs/stock.csv | state --look",
                "frequency --genotypes 0:0:0 | nothing was counted",
                "frequency --pedigree guide/jobs/stock.csv | state either --allele or --locus",
                "frequency --pedigree guide/jobs/stock.csv --locus c --animals Astre | did you mean \"Aster\"?",
                "frequency --pedigree guide/jobs/stock.csv --locus c --animals Astre | unknown locus \"c\"",
                "frequency --locus C --shown pigment | no expression with its count",
                "penetrance --known 7 | for example \"12 of 100\"",
                "penetrance --young 7 | states no chance",
                "penetrance --pedigree guide/jobs/stock.csv --trait hue | state --state",
                "viability --counts 8:4 --conceived 3:1 | state --concerned",
                "viability --counts 8:4 --conceived 3:1 --concerned 1/4 | as many counts, shares and parts",
                "viability --pedigree guide/jobs/stock.csv --statement frail | no statement of viability \"frail\"",
                "penetrance --known 7 --level 2 | --level",
                "penetrance --known 7_of_10 --level 95% | expected a number above 0 and below 1, such as 0.95",
                "segregation --families 5:6 --ascertainment complete | but found 6 affected of 5",
                "frequency --allele albino --genotypes 119:76:13 | --allele says nothing to --genotypes; leave it out",
                "frequency --locus C --shown pigment=96,albino=4 --animals Aster | may stand --allele, --locus",
                "frequency --model own --patch x --genotypes 1:2:3 | --model and --patch say nothing to --genotypes",
                "recombination --three-point 1:2:3:4 --phase known | --phase says nothing to --three-point",
                "recombination --intercross 1:2:3:4 --phase coupling --interval B-W | --interval says nothing",
                "recombination --pedigree guide/jobs/stock.csv --interval B-W --phase known | --interval, --gametes-of",
                "segregation --families 5:2 --ascertainment complete --litters K | --litters says nothing",
                "segregation --families 5:2 --ascertainment complete --proband-chance 1/2 | --proband-chance says",
                "segregation --pedigree guide/jobs/stock.csv --look x --ascertainment complete | --ascertainment says",
                "penetrance --known 7_of_10 --trait hue | --trait says nothing to --known",
                "viability --counts 8:4 --conceived 3:1 --concerned 1/4:0 --statement x --population y | --statement and"
            })
    void what_is_mistyped_is_named_and_nothing_is_printed(String line, String expected) {
        Run run = estimate(
                Stream.of(line.split(" ")).map(word -> word.replace('_', ' ')).toArray(String[]::new));
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code(), run.err());
        assertEquals("", run.out());
        assertTrue(run.err().contains(expected), run.err());
        assertFalse(run.err().contains("\tat "), run.err());
    }

    @ParameterizedTest
    @ValueSource(strings = {"recombination", "segregation", "frequency", "penetrance", "viability"})
    void every_number_has_help_with_examples(String number) {
        Run run = estimate(number, "--help");
        assertEquals(ExitCodes.ANSWERED, run.code());
        assertTrue(run.out().startsWith("Usage: genetics estimate " + number), run.out());
        assertTrue(run.out().contains("  genetics estimate " + number + " "), run.out());
        run.out().lines().forEach(line -> assertTrue(line.length() <= 100, line));
        assertTrue(estimate().out().contains("\n  " + number), estimate().out());
    }
}
