package org.geneticsrules.expression;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** How one animal comes to show what it shows, told step by step. The model is invented. */
class InterpreterTest {

    /**
     * The hue is read off the depth of colour, which nobody sees; the spot off a trait for which the model makes a claim only for some
     * animals; a mask reads that trait too.
     */
    private static final Model MODEL = Model.builder(
                    "told",
                    "1",
                    Catalogue.builder("told.traits", "1")
                            .trait("hue", "dark", "pale", "none")
                            .trait("eye", "red", "brown")
                            .trait("spot", "spotted", "plain")
                            .trait("size", "small", "middling", "large")
                            .build())
            .locus(
                    "A",
                    locus -> locus.alleles("A", "a")
                            .dominant("A", "a")
                            .shows("A", "full")
                            .shows("a", "none"))
            .locus(
                    "B",
                    locus -> locus.alleles("B", "b")
                            .shows("B", "two")
                            .shows("B/b", "one")
                            .shows("b", "no"))
            .trait(
                    "depth",
                    rule -> rule.inner("deep", "shallow")
                            .when("strong", Condition.where("B", "two", "one"), new CaseState.Certain("deep"))
                            .otherwise("shallow"))
            .trait(
                    "hue",
                    rule -> rule.when("albino", Condition.where("A", "none"), new CaseState.Certain("none"))
                            .when(
                                    "deep",
                                    Condition.where("A", "full").and("depth", "deep"),
                                    new CaseState.Certain("dark"))
                            .otherwise("pale"))
            .trait("eye", rule -> rule.when("albino", Condition.where("A", "none"), new CaseState.Certain("red")))
            .trait(
                    "spot",
                    rule -> rule.when("red-eyed", Condition.where("eye", "red"), new CaseState.Certain("plain"))
                            .otherwise("spotted"))
            .trait(
                    "size",
                    rule -> rule.otherwise(
                            new CaseState.Threshold(
                                    ImmutableMap.of("A", Map.of("full", 1), "B", ImmutableMap.of("one", 1, "two", 2)),
                                    Distribution.certain(10),
                                    "small",
                                    ImmutableMap.of("middling", 11, "large", 13)),
                            Optional.empty()))
            .mask(Mask.of("veil", Condition.where("eye", "brown")).covering("hue", "none"))
            .build();

    private static final CompiledModel COMPILED = CompiledModel.of(MODEL);

    private static Expressed told(String genotype, String... traits) {
        return COMPILED.express(Genotype.parse(MODEL, genotype), List.of(traits));
    }

    private static TraitTrace trace(Expressed told, String trait) {
        return Objects.requireNonNull(told.traits().get(trait), trait);
    }

    @Test
    void a_trait_read_off_another_names_it() {
        Expressed told = told("A/A B/b", "hue");
        TraitTrace hue = trace(told, "hue");
        assertEquals(Optional.of("dark"), hue.own());
        assertEquals(Optional.of("/traits/hue/cases/deep"), hue.rule());
        assertEquals(List.of("depth"), hue.reads());
        TraitTrace depth = trace(told, "depth");
        assertEquals(Optional.of("deep"), depth.own());
        assertEquals(Optional.empty(), depth.shown());
        assertEquals(Optional.of("/traits/depth/cases/strong"), depth.rule());
        assertEquals(List.of(), depth.reads());
        assertEquals(Map.of("A", "full", "B", "one"), told.expressions());
    }

    @Test
    void where_no_case_holds_it_rests_on_all_that_the_cases_read() {
        TraitTrace hue = trace(told("A/A b/b", "hue"), "hue");
        assertEquals(Optional.of("pale"), hue.own());
        assertEquals(Optional.of("/traits/hue/otherwise"), hue.rule());
        assertEquals(List.of("depth"), hue.reads());
    }

    /** No case of the eye holds and nothing is left over, so it is not known; nor is the spot, which reads it, nor what is veiled. */
    @Test
    void what_reads_an_unknown_trait_is_unknown() {
        Expressed told = told("A/a B/B", "spot", "eye", "hue");
        assertEquals(Optional.empty(), trace(told, "eye").own());
        TraitTrace spot = trace(told, "spot");
        assertEquals(Optional.empty(), spot.own());
        assertEquals(Optional.empty(), spot.rule());
        assertEquals(List.of("eye"), spot.reads());
        assertEquals(Optional.of("dark"), trace(told, "hue").own());
        assertEquals(Optional.empty(), trace(told, "hue").shown());
        assertEquals("", told.phenotype().asMap().keySet().stream().reduce("", String::concat));
        Expressed albino = told("a/a B/B", "spot", "eye", "hue");
        assertEquals("spot: plain, eye: red, hue: none", albino.phenotype().toString());
        assertEquals(List.of(), albino.activeMasks());
    }

    /** Ten, and one for A, and one for each B: 11 and 13 are the cuts. */
    @Test
    void doses_are_added_up() {
        assertEquals(
                Optional.of("small"), trace(told("a/a b/b", "size"), "size").shown());
        assertEquals(
                Optional.of("middling"), trace(told("a/a B/b", "size"), "size").shown());
        assertEquals(
                Optional.of("middling"), trace(told("A/a B/b", "size"), "size").shown());
        assertEquals(
                Optional.of("large"), trace(told("A/a B/B", "size"), "size").shown());
    }

    @Test
    void a_draw_is_told_with_its_chances_and_only_where_it_is_needed() {
        CaseState residual = new CaseState.Threshold(
                Map.of("A", Map.of("full", 2)),
                Distribution.ofWeights(ImmutableMap.of(0, 3, 1, 1)),
                "small",
                ImmutableMap.of("middling", 2, "large", 3));
        Model model = Model.builder("drawn", "1", MODEL.catalogue())
                .locus(
                        "A",
                        locus -> locus.alleles("A", "a")
                                .dominant("A", "a")
                                .shows("A", "full")
                                .shows("a", "none"))
                .trait("size", rule -> rule.otherwise(residual, Optional.empty()))
                .trait(
                        "eye",
                        rule -> rule.when(Condition.where("A", "none").and("size", Allowed.only("large")), "red")
                                .otherwise("brown"))
                .build();
        CompiledModel compiled = CompiledModel.of(model);
        Distribution<String> sizes = compiled.express(
                        Genotype.parse(model, "A/a"), Sex.FEMALE, LifeStage.unstated(), List.of("size"))
                .map(told ->
                        told.phenotype() + " by " + trace(told, "size").draw().orElseThrow());
        assertEquals(Distribution.ofWeights(ImmutableMap.of("size: middling by 0", 3, "size: large by 1", 1)), sizes);
        Distribution<Expressed> eyes =
                compiled.express(Genotype.parse(model, "A/a"), Sex.FEMALE, LifeStage.unstated(), List.of("eye"));
        assertEquals(1, eyes.outcomes().size()); // the condition fails at locus A, whatever is drawn
        assertFalse(eyes.outcomes().iterator().next().traits().containsKey("size"));
        assertThrows(
                IllegalArgumentException.class, () -> compiled.express(Genotype.parse(model, "A/a"), List.of("size")));
    }

    @Test
    void the_sex_is_asked_for_where_it_decides() {
        Model model = Model.builder("sexed", "1", MODEL.catalogue())
                .locus("A", locus -> locus.alleles("A").shows("A", "full"))
                .trait(
                        "eye",
                        rule -> rule.when(Condition.where("sex", "male"), "red").otherwise("brown"))
                .build();
        CompiledModel compiled = CompiledModel.of(model);
        IllegalArgumentException refused = assertThrows(
                IllegalArgumentException.class, () -> compiled.express(Genotype.parse(model, "A/A"), List.of("eye")));
        assertTrue(refused.getMessage().contains("depends on the sex"), refused.getMessage());
        for (Sex sex : Sex.values()) {
            Expressed told = compiled.express(
                            Genotype.parse(model, "A/A"), sex, LifeStage.unstated(), List.of("eye", "sex"))
                    .outcomes()
                    .iterator()
                    .next();
            assertEquals(
                    sex == Sex.MALE ? "eye: red, sex: male" : "eye: brown, sex: female",
                    told.phenotype().toString());
        }
    }

    @Test
    void who_lacks_a_locus_shows_what_is_shown_without_it() {
        Model model = Model.builder("males", "1", MODEL.catalogue())
                .locus("H", locus -> locus.alleles("H").shows("H", "has").absent("has not"))
                .group(LinkageGroup.single(Transmission.Y, "H"))
                .trait(
                        "eye",
                        rule -> rule.when(Condition.where("H", "has"), "red").otherwise("brown"))
                .build();
        CompiledModel compiled = CompiledModel.of(model);
        Genotype nothing = Genotype.of(model, List.of());
        Genotype carrier = Genotype.parse(model, "H");
        List<String> eye = List.of("eye");
        LifeStage any = LifeStage.unstated();
        assertEquals(
                "{eye: brown=1}",
                compiled.express(nothing, Sex.FEMALE, any, eye)
                        .map(Expressed::phenotype)
                        .toString());
        assertEquals(
                "{eye: red=1}",
                compiled.express(carrier, Sex.MALE, any, eye)
                        .map(Expressed::phenotype)
                        .toString());
        assertThrows(IllegalArgumentException.class, () -> compiled.express(nothing, Sex.MALE, any, eye));
        assertThrows(IllegalArgumentException.class, () -> compiled.express(carrier, Sex.FEMALE, any, eye));
    }

    @Test
    void a_trait_is_masked_where_something_else_is_seen() {
        Model model = Model.builder("white", "1", MODEL.catalogue())
                .locus(
                        "A",
                        locus -> locus.alleles("A", "a")
                                .dominant("A", "a")
                                .shows("A", "full")
                                .shows("a", "none"))
                .trait("hue", rule -> rule.otherwise("dark"))
                .trait("spot", rule -> rule.otherwise("plain"))
                .mask(Mask.of("albinism", Condition.where("A", "none"))
                        .covering("hue", "none")
                        .covering("spot", "plain"))
                .build();
        CompiledModel compiled = CompiledModel.of(model);
        Expressed white = compiled.express(Genotype.parse(model, "a/a"), List.of("hue", "spot"));
        assertEquals(List.of("albinism"), white.activeMasks());
        assertTrue(trace(white, "hue").isMasked());
        assertFalse(trace(white, "spot").isMasked());
        assertEquals(List.of("albinism"), trace(white, "spot").masks());
        Expressed full = compiled.express(Genotype.parse(model, "A/a"), List.of("hue", "spot"));
        assertFalse(trace(full, "hue").isMasked());
        assertEquals("born", Census.BORN.word());
    }

    @Test
    void two_draws_are_independent() {
        CaseState spots = new CaseState.Chance(Distribution.ofWeights(ImmutableMap.of("spotted", 3, "plain", 1)));
        CaseState eyes = new CaseState.Chance(Distribution.ofWeights(ImmutableMap.of("red", 1, "brown", 1)));
        Model model = Model.builder("two", "1", MODEL.catalogue())
                .locus("A", locus -> locus.alleles("A").shows("A", "full"))
                .trait("spot", rule -> rule.otherwise(spots, Optional.empty()))
                .trait("eye", rule -> rule.otherwise(eyes, Optional.empty()))
                .build();
        assertEquals(
                Distribution.ofWeights(ImmutableMap.of(
                        "spot: spotted, eye: red", 3,
                        "spot: spotted, eye: brown", 3,
                        "spot: plain, eye: red", 1,
                        "spot: plain, eye: brown", 1)),
                CompiledModel.of(model)
                        .express(Genotype.parse(model, "A/A"), Sex.FEMALE, LifeStage.unstated(), List.of("spot", "eye"))
                        .map(told -> told.phenotype().toString()));
    }
}
