package org.geneticsrules.ferret;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Expressed;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Population;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Judgeable;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What the default model rules, and what it leaves open for want of knowledge. */
@Tag("default-jdk")
class DefaultModelTest {

    /** Traits of which nothing is known about inheritance; what the language can state is no reason. */
    private static final Set<String> NOT_KNOWN = Set.of(
            "eye shade",
            "eyes alike",
            "nose distribution",
            "pigmented length trunk",
            "pigmented length extremities",
            "undercoat trunk",
            "undercoat extremities",
            "white guard hair spread",
            "history of white",
            "head stripe end",
            "throat tint",
            "chin",
            "muzzle",
            "pads",
            "staining",
            "hearing left ear",
            "hearing right ear");

    private static final Model MODEL = Ferret.common();
    private static final CompiledModel COMPILED = Ferret.compiled();
    private static final LifeStage WINTER = LifeStage.atMoult(2).in("winter");

    @Test
    void every_trait_of_the_catalogue_is_ruled_or_named_with_the_reason() {
        assertEquals(NOT_KNOWN, MODEL.notModelled().keySet());
        Set<String> accounted = new LinkedHashSet<>(MODEL.visibleTraits());
        accounted.addAll(NOT_KNOWN);
        assertEquals(Ferret.catalogue().traits().keySet(), accounted);
        assertTrue(MODEL.notModelled().values().stream().allMatch(reason -> reason.length() > 20));
    }

    @Test
    void only_the_noses_of_coloured_ferrets_are_left_open() {
        Set<String> open = new LinkedHashSet<>();
        for (String trait : MODEL.visibleTraits()) {
            for (LifeStage stage : stages()) {
                for (Map<String, String> expressions : combinations(COMPILED.lociRead(List.of(trait)))) {
                    if (shown(expressions, stage, trait).outcomes().contains("no claim")) {
                        open.add(trait + ": C " + expressions.get("C"));
                    }
                }
            }
        }
        assertEquals(
                Set.of(
                        "nose colour: C full",
                        "nose colour: C lightened",
                        "nose colour: C sandy",
                        "nose colour: C near-white"),
                open);
    }

    @Test
    void an_albino_shows_nothing_of_any_pigment_trait_and_its_coat_length_all_the_same() {
        Set<String> telling = new LinkedHashSet<>();
        for (String trait : MODEL.visibleTraits()) {
            Set<Distribution<String>> coloured = new LinkedHashSet<>();
            Set<Distribution<String>> albino = new LinkedHashSet<>();
            for (Map<String, String> expressions : combinations(COMPILED.lociRead(List.of(trait)))) {
                boolean white = "albino".equals(expressions.getOrDefault("C", "albino"));
                (white ? albino : coloured).add(shown(expressions, WINTER, trait));
            }
            if (albino.size() > 1) {
                telling.add(trait);
            } else {
                assertTrue(albino.iterator().next().outcomes().size() == 1, trait);
                assertFalse(coloured.isEmpty(), trait);
            }
        }
        assertEquals(Set.of("coat length"), telling);
    }

    @Test
    void no_mask_covers_what_has_no_colour() {
        Set<String> covered = new LinkedHashSet<>();
        MODEL.masks().values().stream().map(Mask::covers).forEach(covers -> covered.addAll(covers.keySet()));
        Set<String> uncovered = new LinkedHashSet<>(MODEL.visibleTraits());
        uncovered.removeAll(covered);
        assertEquals(Set.of("eye colour", "nose colour", "coat length"), uncovered);
    }

    @Test
    void a_silver_coat_hides_its_hue_as_it_whitens() {
        // Of one dose, nearly all or all white: 16/512 at moult 3 and (48 + 8)/512 at moult 4, reckoned by hand from
        // the stated chances.
        assertEquals(
                List.of(
                        Probability.ZERO,
                        Probability.ZERO,
                        Probability.ZERO,
                        Probability.of(1, 32),
                        Probability.of(7, 64)),
                IntStream.range(0, 5)
                        .mapToObj(moult -> ofKits("M/M", "m/m", LifeStage.atMoult(moult), "hue")
                                .probability(Phenotype.of("hue", "none seen")))
                        .toList());
        ProblemsException refusal =
                assertThrows(ProblemsException.class, () -> ofKits("M/M", "m/m", LifeStage.unstated(), "hue"));
        assertEquals("stage-needed", refusal.problems().get(0).code());
    }

    @Test
    void the_mask_of_the_face_is_another_in_summer_and_nothing_else_is() {
        for (String trait : MODEL.visibleTraits()) {
            boolean seasonal = combinations(COMPILED.lociRead(List.of(trait))).stream()
                    .anyMatch(expressions -> !shown(expressions, WINTER, trait)
                            .equals(shown(expressions, LifeStage.atMoult(2).in("summer"), trait)));
            assertEquals(trait.equals("mask"), seasonal, trait);
        }
    }

    @Test
    void white_feet_go_together_and_may_differ_all_the_same() {
        // 1/2 (3/5 (1/20)^2 + 2/5 (2/5)^2), by hand from the stated chances; apart it would be (19/200)^2.
        Phenotype both = Phenotype.parse("left front foot: above the ankle, right front foot: above the ankle");
        assertEquals(
                Probability.of(131, 4000),
                ofKits("W/w", "w/w", LifeStage.atMoult(1), "left front foot", "right front foot")
                        .probability(both));
        Phenotype odd =
                Phenotype.parse("left front foot: toes, right front foot: above the ankle, left hind foot: none,"
                        + " right hind foot: foot, throat: none, belly: most, tail tip: none, head white: none");
        assertFalse(COMPILED.showing(new org.geneticsrules.trait.Sighting(WINTER, odd))
                .isEmpty());
    }

    @Test
    void too_early_a_reading_is_not_judgeable() {
        assertEquals(Judgeable.NO, judged("hue", LifeStage.atWeek(2)));
        assertEquals(Judgeable.YES, judged("hue", LifeStage.atWeek(3)));
        assertEquals(Judgeable.NO, judged("white guard hairs", LifeStage.atMoult(0)));
        assertEquals(Judgeable.YES, judged("white guard hairs", LifeStage.atMoult(1)));
    }

    @Test
    void every_population_of_every_model_names_the_frequencies_of_all_loci() {
        for (Model model : Ferret.allModels()) {
            assertEquals(2, model.populations().size());
            for (Population population : model.populations().values()) {
                assertEquals(model.loci().keySet(), population.frequencies().keySet(), () -> model + " " + population);
            }
        }
    }

    private static Judgeable judged(String trait, LifeStage stage) {
        return Ferret.catalogue().traits().get(trait).judgeable(stage);
    }

    private static Distribution<Phenotype> ofKits(String sire, String dam, LifeStage stage, String... traits) {
        String rest = " C/C B/B R/R P/P d1/d1 d2/d2 h/h L/L";
        String silver = sire.startsWith("M") ? " w/w" : " M/M";
        return Cross.of(
                        COMPILED,
                        Genotype.parse(MODEL, sire + silver + rest),
                        Genotype.parse(MODEL, dam + silver + rest))
                .phenotypes(View.of(List.of(traits)).at(stage));
    }

    private static List<LifeStage> stages() {
        List<LifeStage> stages = new ArrayList<>();
        for (String season : Ferret.catalogue().seasons()) {
            for (int moult = 0; moult < 4; moult++) {
                stages.add(LifeStage.atMoult(moult).in(season));
            }
        }
        return stages;
    }

    private static Distribution<String> shown(Map<String, String> expressions, LifeStage stage, String trait) {
        return COMPILED.express(expressions, Sex.FEMALE, stage, Set.of(trait))
                .map(Expressed::phenotype)
                .map(look -> look.state(trait).orElse("no claim"));
    }

    /** Every combination of the declared expressions of some loci. */
    private static List<Map<String, String>> combinations(Set<String> loci) {
        List<Map<String, String>> all = List.of(Map.of());
        for (String locus : loci) {
            List<Map<String, String>> longer = new ArrayList<>();
            for (Map<String, String> before : all) {
                for (String expression : MODEL.locus(locus).expressions()) {
                    Map<String, String> more = new LinkedHashMap<>(before);
                    more.put(locus, expression);
                    longer.add(more);
                }
            }
            all = longer;
        }
        return all;
    }
}
