package org.geneticsrules.ferret;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The table of expected matings, each row with its source and under the hypothesis it names, computed both ways round. Loci that a row
 * does not name carry the allele of the reference coat twice.
 */
class CheckValuesTest {

    static List<Map<String, String>> rows() {
        return Csv.rows(Ferret.CHECKS.resolve("check-values.csv"));
    }

    @Test
    void the_table_has_rows_and_no_two_of_one_name() {
        assertTrue(rows().size() >= 70, () -> rows().size() + " rows");
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
        String hypothesis = row.get("hypothesis");
        Model model = under(hypothesis);
        Genotype sire = parent(model, row.get("sire"));
        Genotype dam = parent(model, row.get("dam"));
        View view = View.of(Arrays.asList(row.get("traits").split("; ", -1))).at(LifeStage.parse(row.get("stage")));
        Map<Phenotype, Probability> expected = expected(row.get("expected"));
        assertEquals(expected, Cross.of(model, sire, dam).phenotypes(view).asMap(), row::toString);
        assertEquals(expected, Cross.of(model, dam, sire).phenotypes(view).asMap(), row::toString);
    }

    @Test
    void every_shipped_hypothesis_is_checked() {
        Set<String> checked = rows().stream()
                .map(row -> "geneticsrules.ferret." + row.get("hypothesis"))
                .collect(Collectors.toSet());
        Ferret.REGISTRY.patches().forEach(patch -> assertTrue(checked.contains(patch.id()), patch::toString));
        Ferret.REGISTRY.models().stream()
                .filter(model -> !model.equals(Ferret.common()))
                .forEach(model -> assertTrue(checked.contains(model.id()), model::toString));
    }

    @Test
    void a_quarter_of_the_kits_is_lost_where_a_double_dose_is_lethal() {
        Model model = Ferret.hypothesis("head-white-lethal-twice");
        Genotype marked = parent(model, "H/h");
        Cross cross = Cross.of(model, marked, marked);
        assertEquals(Probability.of(1, 4), cross.lostShare(Census.BORN));
        assertEquals(Probability.ZERO, cross.lostShare(Census.CONCEIVED));
    }

    /** The default, a model that is a document of its own, or the default under a patch. */
    private static Model under(String hypothesis) {
        if (hypothesis.equals("default")) {
            return Ferret.common();
        }
        return Ferret.DOCUMENTS.contains(hypothesis) ? Ferret.model(hypothesis) : Ferret.hypothesis(hypothesis);
    }

    private static Genotype parent(Model model, String text) {
        Map<String, List<AllelePair>> only =
                GenotypeSet.parse(model, text, OmittedLoci.WILD_TYPE).boxes().get(0);
        return Genotype.of(
                model, only.values().stream().map(pairs -> pairs.get(0)).toList());
    }

    /** As in {@code hue=black, eye colour=dark: 3/4; hue=none seen, eye colour=pink: 1/4}. */
    private static Map<Phenotype, Probability> expected(String text) {
        Map<Phenotype, Probability> expected = new LinkedHashMap<>();
        for (String entry : text.split("; ", -1)) {
            int colon = entry.lastIndexOf(": ");
            Phenotype look = Phenotype.parse(entry.substring(0, colon).replace('=', ':'));
            assertFalse(expected.containsKey(look), text);
            expected.put(look, Probability.parse(entry.substring(colon + 2)));
        }
        return expected;
    }
}
