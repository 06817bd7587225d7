package org.geneticsrules.ferret;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.explanation.CoatExplanation;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.render.HidingTable;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** What hides what: the committed table, the explanations and the rendered table against substitution in all genotypes. */
class HidingTableTest {

    private static final CompiledModel COMPILED = Ferret.compiled();
    private static final Hiding HIDING = new Hiding(COMPILED);

    @Test
    void the_committed_table_is_what_substitution_finds() throws IOException {
        assertEquals(Files.readString(Ferret.CHECKS.resolve("hiding-table.txt")), HIDING.table());
    }

    @Test
    void explanations_name_exactly_the_hidden_loci_of_every_genotype() {
        Model model = COMPILED.model();
        assertEquals(15 * 3 * 3 * 3 * 3, HIDING.genotypes().size());
        for (Genotype genotype : HIDING.genotypes()) {
            Map<String, List<AllelePair>> expected = new LinkedHashMap<>();
            for (Locus locus : model.loci().values()) {
                List<AllelePair> alike = HIDING.alike(genotype, locus);
                if (alike.size() > 1) {
                    expected.put(locus.id(), alike);
                }
            }
            Map<String, List<AllelePair>> explained = new LinkedHashMap<>();
            CoatExplanation.of(COMPILED, genotype, Sex.FEMALE, View.of(model.visibleTraits()))
                    .outcomes()
                    .iterator()
                    .next()
                    .hidden()
                    .forEach(hidden -> explained.put(hidden.locus(), hidden.alternatives()));
            assertEquals(expected, explained, genotype::toString);
        }
    }

    @Test
    void the_table_made_from_masks_is_borne_out_by_substitution() {
        Model model = COMPILED.model();
        HidingTable table = HidingTable.of(model);
        assertFalse(table.rows().isEmpty());
        for (HidingTable.Row row : table.rows()) {
            Locus locus = model.locus(row.locus());
            for (AllelePair pair : locus.pairs()) {
                boolean covers = table.rows().stream()
                        .filter(other -> other.locus().equals(row.locus())
                                && other.trait().equals(row.trait()))
                        .map(other -> model.masks().get(other.mask()).when().variables())
                        .anyMatch(when -> when.get(locus.id()).allows(locus.expression(pair, Sex.FEMALE)));
                assertEquals(
                        covers ? row.loci() : List.of(),
                        HIDING.hiddenBy(locus, pair).getOrDefault(row.trait(), List.of()),
                        () -> pair + " and " + row);
            }
        }
    }
}
