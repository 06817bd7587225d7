package org.geneticsrules.ferret;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.explanation.CoatExplanation;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Expressed;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.render.HidingTable;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** What hides what: the committed table, the explanations and the rendered table against substitution. */
class HidingTableTest {

    private static final CompiledModel COMPILED = Ferret.compiled();
    private static final Model MODEL = COMPILED.model();
    private static final LifeStage STAGE = LifeStage.atMoult(1).in("winter");
    private static final Hiding HIDING = new Hiding(COMPILED, STAGE);

    @Test
    void the_committed_table_is_what_substitution_finds() throws IOException {
        assertEquals(Files.readString(Ferret.CHECKS.resolve("hiding-table.txt")), HIDING.table());
    }

    @Test
    void explanations_name_exactly_the_hidden_loci_of_a_coat() {
        explainsSome(60, List.of("C", "B", "R", "M"), "hue", "dilution", "eye colour", "white guard hairs");
    }

    @Test
    void explanations_name_exactly_the_hidden_loci_of_pattern_and_marks() {
        explainsSome(30, List.of("C", "M", "P", "D1", "D2"), "trunk suppression", "trunk depth");
        explainsSome(15, List.of("C", "M", "W"), "throat");
        explainsSome(15, List.of("C", "M", "P", "H"), "head white", "mask");
    }

    /** Genotypes drawn from all those of the loci that the traits depend on. */
    private static void explainsSome(int count, List<String> loci, String... traits) {
        Random random = new Random(20_261_126);
        List<Genotype> all =
                Hiding.genotypes(MODEL, loci.stream().map(MODEL::locus).toList());
        explainsAll(
                random.ints(count, 0, all.size()).mapToObj(all::get).toList(),
                View.of(List.of(traits)).at(STAGE));
    }

    private static void explainsAll(List<Genotype> genotypes, View view) {
        Map<Genotype, Set<Phenotype>> looks = new LinkedHashMap<>();
        for (Genotype genotype : genotypes) {
            for (Map.Entry<CoatExplanation, ?> way : CoatExplanation.of(COMPILED, genotype, Sex.FEMALE, view)
                    .asMap()
                    .entrySet()) {
                Map<String, List<AllelePair>> explained = new LinkedHashMap<>();
                way.getKey().hidden().forEach(hidden -> explained.put(hidden.locus(), hidden.alternatives()));
                Map<String, List<AllelePair>> expected = new LinkedHashMap<>();
                for (String locus : genotype.loci()) {
                    List<AllelePair> alike = MODEL.locus(locus).pairs().stream()
                            .filter(pair -> looks.computeIfAbsent(genotype.with(pair), other -> looks(other, view))
                                    .contains(way.getKey().phenotype()))
                            .toList();
                    if (alike.size() > 1) {
                        expected.put(locus, alike);
                    }
                }
                assertEquals(expected, explained, genotype::toString);
            }
        }
    }

    private static Set<Phenotype> looks(Genotype genotype, View view) {
        return COMPILED.express(genotype, Sex.FEMALE, view.stage(), view.traits())
                .map(Expressed::phenotype)
                .outcomes();
    }

    /**
     * Beside a pair that makes a mask active for certain, exactly the loci that the table names tell nothing, and those that bear on other
     * masks of the same trait.
     */
    @Test
    void the_table_made_from_masks_is_borne_out_by_substitution() {
        HidingTable table = HidingTable.of(MODEL);
        Set<String> locusMasks = new LinkedHashSet<>();
        for (HidingTable.Row row : table.rows()) {
            Locus locus = MODEL.locus(row.locus());
            Allowed covers = MODEL.masks().get(row.mask()).when().variables().get(locus.id());
            if (covers == null) {
                continue;
            }
            locusMasks.add(row.mask());
            Set<String> mayHide = new LinkedHashSet<>(row.loci());
            table.rows().stream()
                    .filter(other -> other.trait().equals(row.trait()))
                    .forEach(other -> mayHide.add(other.locus()));
            for (AllelePair pair : locus.pairs()) {
                List<String> hidden = HIDING.hiddenBy(locus, pair).getOrDefault(row.trait(), List.of());
                if (covers.allows(locus.expression(pair, Sex.FEMALE))) {
                    assertTrue(hidden.containsAll(row.loci()), () -> pair + " hides " + hidden + " by " + row);
                    assertTrue(mayHide.containsAll(hidden), () -> pair + " hides " + hidden + " by " + row);
                }
            }
        }
        assertEquals(Set.of("albino", "near-white", "point"), locusMasks);
        assertEquals(
                Set.of("whitened", "white head"),
                MODEL.masks().values().stream()
                        .map(Mask::id)
                        .filter(mask -> !locusMasks.contains(mask))
                        .collect(Collectors.toSet()));
        assertFalse(HIDING.hiddenBy(MODEL.locus("M"), MODEL.locus("M").pairs().get(2))
                .isEmpty());
    }
}
