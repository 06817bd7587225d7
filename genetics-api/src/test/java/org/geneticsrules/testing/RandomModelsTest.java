package org.geneticsrules.testing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.document.Canonical;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelDocument;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.testing.RandomModels.Size;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;

/** Laws over random models say little if the models are all alike, so what the generator covers is measured. */
@Tag("default-jdk")
class RandomModelsTest {

    private static final int MODELS = 600;
    private static final int GENOTYPES = 10;

    /** How often each feature occurred, and out of how many. */
    private static final Map<String, int[]> SEEN = new LinkedHashMap<>();

    @BeforeAll
    static void measure() {
        for (long seed = 0; seed < MODELS; seed++) {
            Model model = RandomModels.model(seed, Size.FULL);
            Map<String, Object> document = DocumentMaps.of(model);
            dominance(model);
            rules(model);
            masks(model);
            List<String> traits = BruteForce.visibleTraits(document);
            for (long draw = 0; draw < GENOTYPES; draw++) {
                Map<String, String> genotype = RandomModels.plain(RandomModels.genotype(model, seed * 31 + draw));
                count(
                        "genotypes with an active mask",
                        !BruteForce.activeMasks(document, genotype).isEmpty());
                Map<String, String> seen = BruteForce.phenotype(document, genotype, traits);
                count("genotypes with a trait not modelled", seen.size() < traits.size());
                count("genotypes that show something", !seen.isEmpty());
                count(
                        "genotypes whose look differs from their own states",
                        traits.stream()
                                .anyMatch(trait -> !BruteForce.own(document, genotype, trait)
                                        .equals(BruteForce.shown(document, genotype, trait))));
                count(
                        "genotypes with a hidden locus",
                        !BruteForce.hiddenLoci(document, genotype, traits).isEmpty());
            }
        }
    }

    private static void dominance(Model model) {
        model.loci().values().forEach(locus -> {
            locus.pairs().stream().filter(pair -> !pair.isHomozygous()).forEach(pair -> {
                List<String> pointers = locus.decidedBy(pair, Sex.FEMALE);
                count("pairs decided by a pair table", pointers.size() == 1);
                count("pairs decided by a chain of two or more", pointers.size() > 2);
            });
            boolean tabled = locus.dominance(Sex.FEMALE).shows().stream()
                    .anyMatch(shown -> shown.second().isPresent());
            count(
                    "loci with order and table",
                    tabled && !locus.dominance(Sex.FEMALE).order().isEmpty());
            count("loci with four alleles", locus.alleles().size() == 4);
            count(
                    "loci with an unreached expression",
                    locus.expressions().stream()
                            .anyMatch(look -> locus.pairs().stream()
                                    .noneMatch(pair ->
                                            locus.expression(pair, Sex.FEMALE).equals(look))));
            count(
                    "loci printed with a prefix somewhere",
                    locus.pairs().stream().anyMatch(pair -> pair.toString().contains(":")));
        });
        count("models of four loci", model.loci().size() == 4);
    }

    private static void rules(Model model) {
        for (TraitRule rule : model.rules().values()) {
            count("rules without otherwise", rule.otherwise().isEmpty());
            count("rules that read a trait", rule.cases().stream().anyMatch(one -> readsTrait(model, one.when())));
        }
        count("models with an inner trait", model.rules().values().stream().anyMatch(rule -> !rule.visible()));
    }

    private static void masks(Model model) {
        List<Mask> masks = List.copyOf(model.masks().values());
        count(
                "models with a mask over a mask",
                masks.stream().anyMatch(mask -> !mask.over().isEmpty()));
        count(
                "models with a chain of masks",
                masks.stream()
                        .anyMatch(upper -> masks.stream()
                                .anyMatch(lower -> model.isOver(upper.id(), lower.id())
                                        && !upper.over().contains(lower.id()))));
        count(
                "models with masks in no order",
                masks.size() > 1 && masks.stream().allMatch(mask -> mask.over().isEmpty()));
        count("models with a mask that reads a trait", masks.stream().anyMatch(mask -> readsTrait(model, mask.when())));
        count(
                "models with a mask of changes",
                masks.stream()
                        .flatMap(mask -> mask.covers().values().stream())
                        .anyMatch(cover -> cover.constant().isEmpty()));
        count(
                "models with a mask over a trait without rule",
                masks.stream()
                        .anyMatch(mask -> !model.rules()
                                .keySet()
                                .containsAll(mask.covers().keySet())));
    }

    private static boolean readsTrait(Model model, Condition when) {
        return when.names().stream().anyMatch(model.rules()::containsKey);
    }

    private static void count(String feature, boolean present) {
        int[] counted = SEEN.computeIfAbsent(feature, name -> new int[2]);
        counted[0] += present ? 1 : 0;
        counted[1]++;
    }

    private static void atLeast(double share, String feature) {
        int[] counted = SEEN.get(feature);
        double seen = (double) counted[0] / counted[1];
        assertTrue(seen >= share, feature + ": " + counted[0] + " of " + counted[1]);
    }

    @Test
    void every_feature_is_common_enough(TestReporter reporter) {
        SEEN.forEach((feature, counted) -> reporter.publishEntry(feature, counted[0] + " of " + counted[1]));
        atLeast(0.30, "pairs decided by a pair table");
        atLeast(0.05, "pairs decided by a chain of two or more");
        atLeast(0.30, "genotypes with an active mask");
        atLeast(0.20, "models with a mask over a mask");
        atLeast(0.02, "models with a chain of masks");
        atLeast(0.05, "models with masks in no order");
        atLeast(0.20, "models with a mask that reads a trait");
        atLeast(0.20, "models with a mask of changes");
        atLeast(0.05, "models with a mask over a trait without rule");
        atLeast(0.10, "genotypes with a trait not modelled");
        atLeast(0.80, "genotypes that show something");
        atLeast(0.15, "genotypes whose look differs from their own states");
        atLeast(0.30, "genotypes with a hidden locus");
        atLeast(0.20, "loci with order and table");
        atLeast(0.15, "loci with four alleles");
        atLeast(0.20, "loci with an unreached expression");
        atLeast(0.05, "loci printed with a prefix somewhere");
        atLeast(0.15, "models of four loci");
        atLeast(0.20, "rules without otherwise");
        atLeast(0.20, "rules that read a trait");
        atLeast(0.40, "models with an inner trait");
    }

    @Test
    void the_same_seed_gives_the_same_model_and_another_another() {
        Model once = RandomModels.model(7, Size.FULL);
        Model again = RandomModels.model(7, Size.FULL);
        assertEquals(Canonical.text(ModelDocument.of(once)), Canonical.text(ModelDocument.of(again)));
        assertNotEquals(description(8), description(9));
    }

    private static String description(long seed) {
        Model model = RandomModels.model(seed, Size.FULL);
        return model.loci().toString() + model.rules();
    }

    @Test
    void a_genotype_and_its_plain_form_are_one() {
        for (long seed = 0; seed < 100; seed++) {
            Model model = RandomModels.model(seed, Size.FULL);
            Genotype genotype = RandomModels.genotype(model, seed);
            Map<String, String> plain = RandomModels.plain(genotype);
            assertEquals(genotype, RandomModels.genotype(model, plain));
            assertTrue(BruteForce.pairs(
                            DocumentMaps.of(model), plain.keySet().iterator().next())
                    .contains(plain.values().iterator().next()));
        }
    }
}
