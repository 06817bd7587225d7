package org.geneticsrules.examples.textbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The tables of expected matings, each row with its source. */
class CheckValuesTest {

    static List<Map<String, String>> reciprocal() {
        return Textbook.rows("check-values");
    }

    static List<Map<String, String>> wholeLanguage() {
        return Textbook.rows("whole-language");
    }

    @ParameterizedTest
    @CsvSource({
        "check-values, 33",
        "whole-language, 50",
        "segregation-counts, 18",
        "linkage, 3",
        "carriers, 26",
        "litters, 4",
        "test-matings, 8"
    })
    void a_table_has_rows_and_no_two_of_one_name(String table, int least) {
        List<Map<String, String>> rows = Textbook.rows(table);
        assertTrue(rows.size() >= least, () -> rows.size() + " rows");
        assertEquals(
                rows.size(), rows.stream().map(row -> row.get("id")).distinct().count());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "check-values",
                "whole-language",
                "segregation-counts",
                "linkage",
                "carriers",
                "litters",
                "test-matings"
            })
    void every_row_names_its_source_and_how_it_was_come_by(String table) {
        for (Map<String, String> row : Textbook.rows(table)) {
            assertTrue(row.get("source").length() > 10, row::toString);
            assertTrue(
                    List.of("published", "common practice", "from memory", "calculated")
                            .contains(row.get("tag")),
                    row::toString);
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("reciprocal")
    void the_kits_are_as_expected_whichever_parent_is_the_sire(Map<String, String> row) {
        Model model = Textbook.model(row.get("model"));
        Genotype sire = Genotype.parse(model, row.get("sire"));
        Genotype dam = Genotype.parse(model, row.get("dam"));
        List<String> traits = Arrays.asList(row.get("traits").split("; ", -1));
        Map<Phenotype, Probability> expected = Textbook.shares(row.get("expected"));
        assertEquals(expected, Cross.of(model, sire, dam).phenotypes(traits).asMap(), row::toString);
        assertEquals(expected, Cross.of(model, dam, sire).phenotypes(traits).asMap(), row::toString);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("wholeLanguage")
    void the_kits_are_as_expected_by_sex_and_stage(Map<String, String> row) {
        View view = View.of(Arrays.asList(row.get("traits").split("; ", -1)));
        if (!row.get("stage").isEmpty()) {
            view = view.at(LifeStage.parse(row.get("stage")));
        }
        assertEquals(
                Textbook.shares(row.get("expected")),
                cross(row).phenotypes(view).asMap(),
                row::toString);
    }

    private static Cross cross(Map<String, String> row) {
        Model model = Textbook.model(row.get("model"));
        return Cross.of(model, genotype(model, row.get("sire")), genotype(model, row.get("dam")));
    }

    /** Females have nothing at a locus of the Y. */
    private static Genotype genotype(Model model, String text) {
        return text.isEmpty() ? Genotype.of(model, List.of()) : Genotype.parse(model, text);
    }

    /** Calculated: a quarter has two doses of yellow; of the flies the weights of males lose (2459 - 2022 + 2459 - 1564) / 4 of 2459. */
    @ParameterizedTest
    @CsvSource({
        "geneticsrules.textbook.mouse-yellow, Ay/A P/P, Ay/A P/P, 1/4",
        "geneticsrules.textbook.mouse-yellow, Ay/A P/P, A/a P/P, 0/1",
        "geneticsrules.textbook.fruit-fly-white-eyes-viability, W/Y, W/w, 333/2459"
    })
    void a_share_is_lost_before_birth(String model, String sire, String dam, String lost) {
        Cross cross = cross(Map.of("model", model, "sire", sire, "dam", dam));
        assertEquals(Probability.parse(lost), cross.lostShare(Census.BORN));
        assertEquals(Probability.ZERO, cross.lostShare(Census.CONCEIVED));
    }

    /** Calculated: for penetrance K an unaffected child of a heterozygous parent is a carrier with (1-K)/(2-K). */
    @ParameterizedTest
    @CsvSource({"affected at 4 in 5, 1/6", "affected at 9 in 10, 1/11"})
    void an_unaffected_child_may_carry(String trait, String carrier) {
        Distribution<Phenotype> children = cross(
                        Map.of("model", "geneticsrules.textbook.penetrance", "sire", "D/d", "dam", "d/d"))
                .phenotypes(List.of(trait, "status"));
        Distribution<Phenotype> unaffected = children.given(
                        child -> child.state(trait).orElseThrow().equals("unaffected"))
                .orElseThrow();
        assertEquals(
                Probability.parse(carrier),
                unaffected.probabilityOf(
                        child -> child.state("status").orElseThrow().equals("carrier")));
    }

    /** Calculated: two models of one claim, one by cases and one by sums of doses, agree on every pair of parents. */
    @Test
    void wheat_by_cases_and_wheat_by_doses_are_one_claim() {
        List<String> traits = List.of("kernel shade", "kernel colour");
        for (String sire : List.of("A/a B/b C/c", "A/A b/b C/c", "a/a B/b c/c")) {
            for (String dam : List.of("A/a B/b C/c", "A/a B/B c/c")) {
                assertEquals(
                        cross(Map.of("model", "geneticsrules.textbook.wheat", "sire", sire, "dam", dam))
                                .phenotypes(traits),
                        cross(Map.of("model", "geneticsrules.textbook.wheat-doses", "sire", sire, "dam", dam))
                                .phenotypes(traits));
            }
        }
    }

    /** Published counts, Griffiths and others; printed 8/12, where the expected number is rounded. */
    @Test
    void the_coincidence_of_the_three_point_test_cross() {
        String double1 = "eye colour=vermilion, wing edge=cut, crossveins=present";
        String double2 = "eye colour=red, wing edge=whole, crossveins=absent";
        Probability counted = Probability.ZERO;
        Probability independent = Probability.ZERO;
        for (Map<String, String> row : wholeLanguage()) {
            Distribution<Phenotype> kits = row.get("id").startsWith("three-point")
                    ? cross(row).phenotypes(Arrays.asList(row.get("traits").split("; ", -1)))
                    : Distribution.certain(Phenotype.unspecified());
            Probability both = kits.probabilityOf(kit ->
                    List.of(Textbook.look(double1), Textbook.look(double2)).contains(kit));
            counted = row.get("id").equals("three-point test cross") ? both : counted;
            independent = row.get("id").endsWith("without interference") ? both : independent;
        }
        assertEquals(Probability.of(8, 1448), counted);
        assertEquals(Probability.of(191 * 93, 1448L * 1448), independent);
        assertEquals("0.652142", Textbook.rounded(counted.toDouble() / independent.toDouble(), "0.652142"));
    }
}
