package org.geneticsrules.examples.textbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Phenotype;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The table of expected matings, each row with its source, computed both ways round. */
class CheckValuesTest {

    static List<Map<String, String>> rows() {
        return Csv.rows(Textbook.CHECKS.resolve("check-values.csv"));
    }

    @Test
    void the_table_has_rows_and_no_two_of_one_name() {
        assertTrue(rows().size() >= 33, () -> rows().size() + " rows");
        assertEquals(
                rows().size(),
                rows().stream().map(row -> row.get("id")).distinct().count());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("rows")
    void every_row_names_its_source_and_how_it_was_come_by(Map<String, String> row) {
        assertTrue(row.get("source").length() > 10, row::toString);
        assertTrue(
                List.of("published", "common practice", "from memory", "calculated")
                        .contains(row.get("tag")),
                row::toString);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("rows")
    void the_kits_are_as_expected_whichever_parent_is_the_sire(Map<String, String> row) {
        Model model = Textbook.model(row.get("model"));
        Genotype sire = Genotype.parse(model, row.get("sire"));
        Genotype dam = Genotype.parse(model, row.get("dam"));
        List<String> traits = Arrays.asList(row.get("traits").split("; ", -1));
        Map<Phenotype, Probability> expected = expected(row.get("expected"));
        assertEquals(expected, Cross.of(model, sire, dam).phenotypes(traits).asMap(), row::toString);
        assertEquals(expected, Cross.of(model, dam, sire).phenotypes(traits).asMap(), row::toString);
    }

    /** As in {@code hue=black, eye colour=dark: 3/4; hue=none seen, eye colour=pink: 1/4}. */
    private static Map<Phenotype, Probability> expected(String text) {
        Map<Phenotype, Probability> expected = new LinkedHashMap<>();
        for (String entry : text.split("; ", -1)) {
            int colon = entry.lastIndexOf(": ");
            Phenotype look = Phenotype.parse(entry.substring(0, colon).replace('=', ':'));
            expected.put(look, Probability.parse(entry.substring(colon + 2)));
        }
        return expected;
    }
}
