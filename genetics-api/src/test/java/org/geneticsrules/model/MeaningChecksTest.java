package org.geneticsrules.model;

import static org.geneticsrules.model.Refusals.meaning;
import static org.geneticsrules.model.Refusals.valid;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Condition;
import org.junit.jupiter.api.Test;

class MeaningChecksTest {

    private static final Condition ALBINO = Condition.where("C", "albino");
    private static final Condition BROWN = Condition.where("B", "brown");

    private static Case named(String id, Condition when, String state) {
        return new Case(id, when, state, Optional.empty());
    }

    @Test
    void traits_that_read_one_another_in_a_circle() {
        meaning(
                "/traits/eye: traits read one another in a circle: eye reads throat reads eye [trait-circle]",
                model -> model.trait(
                                "eye",
                                rule -> rule.when(Condition.where("throat", "bib"), "pink")
                                        .otherwise("dark"))
                        .trait(
                                "throat",
                                rule -> rule.when(Condition.where("eye", "pink"), "bib")
                                        .otherwise("plain")));
        meaning(
                "/traits/eye: traits read one another in a circle: eye reads eye [trait-circle]",
                model -> model.trait("eye", rule -> rule.when(Condition.where("eye", "pink"), "dark")));
    }

    @Test
    void masks_over_one_another_in_a_circle() {
        meaning(
                "/masks/a/over: masks lie over one another in a circle: a over b over c over a [mask-circle]",
                model -> model.mask(Mask.of("a", ALBINO).over("b"))
                        .mask(Mask.of("b", ALBINO).over("c"))
                        .mask(Mask.of("c", ALBINO).over("a")));
        meaning(
                "/masks/a/over: masks lie over one another in a circle: a over a [mask-circle]",
                model -> model.mask(Mask.of("a", ALBINO).over("a")));
    }

    @Test
    void frequencies_that_do_not_sum_to_1() {
        meaning(
                "/populations/p/frequencies/B: the frequencies of locus B do not sum to 1: {B=1/2, b=1/3}; expected"
                        + " frequencies of all alleles that sum to exactly 1 [frequencies-sum]",
                model -> model.population(
                        "p",
                        p -> p.frequency("B", "B", Probability.of(1, 2)).frequency("B", "b", Probability.of(1, 3))));
    }

    @Test
    void cases_that_overlap_are_shown_with_a_genotype() {
        meaning(
                "/traits/eye/cases/two: cases \"one\" and \"two\" of eye both hold for genotype b/b c/c; expected cases"
                        + " that exclude each other [overlapping-cases]",
                model -> model.trait(
                        "eye", rule -> rule.when(named("one", ALBINO, "pink")).when(named("two", BROWN, "dark"))));
        // Even where they give the same state, because an answer names the case it rests on.
        meaning(
                "/traits/eye/cases/two: cases \"one\" and \"two\" of eye both hold for genotype B/B C/C; expected cases"
                        + " that exclude each other [overlapping-cases]",
                model -> model.trait(
                        "eye",
                        rule -> rule.when(named("one", Condition.always().and("C", Allowed.allBut("albino")), "dark"))
                                .when(named("two", Condition.where("B", "dark"), "dark"))));
    }

    @Test
    void an_overlap_through_another_trait_is_traced_to_the_loci() {
        meaning(
                "/traits/eye/cases/two: cases \"one\" and \"two\" of eye both hold for genotype b/b c/c; expected cases"
                        + " that exclude each other [overlapping-cases]",
                model -> model.trait(
                        "eye",
                        rule -> rule.when(named("one", Condition.where("hue", "brown"), "pink"))
                                .when(named("two", ALBINO, "dark"))));
        valid().trait(
                        "eye",
                        rule -> rule.when(named("one", Condition.where("hue", "brown"), "pink"))
                                .when(named("two", Condition.where("B", "dark"), "dark")))
                .build();
    }

    @Test
    void an_overlap_that_no_genotype_reaches_is_refused_all_the_same() {
        // So a rule stays sound when the dominance hypothesis is swapped.
        meaning(
                "/traits/eye/cases/two: cases \"one\" and \"two\" of eye both hold for the declared expressions M: some"
                        + " (which no genotype reaches under this dominance); expected cases that exclude each other"
                        + " [overlapping-cases]",
                model -> model.locus(
                                "M",
                                locus -> locus.alleles("M", "m")
                                        .expressions("none", "some", "much")
                                        .dominant("M", "m")
                                        .shows("M", "none")
                                        .shows("m", "much"))
                        .trait(
                                "eye",
                                rule -> rule.when(named("one", Condition.where("M", "none", "some"), "pink"))
                                        .when(named("two", Condition.where("M", "some", "much"), "dark"))));
    }

    private static ModelBuilder masked(Mask one, Mask other) {
        return valid().mask(one).mask(other);
    }

    @Test
    void masks_that_show_a_trait_differently_are_shown_with_a_genotype() {
        Mask white = Mask.of("white", ALBINO).covering("hue", "white");
        Mask black = Mask.of("black", BROWN).covering("hue", "black");
        assertEquals(
                "/masks/black/covers/hue: masks \"white\" and \"black\" show hue differently for genotype b/b c/c:"
                        + " \"white\" and \"black\"; expected one of them stated \"over\" the other [mask-conflict]",
                onlyText(masked(white, black)));
        masked(white.over("black"), black).build();
        masked(white, black.over("white")).build();
    }

    @Test
    void masks_are_compared_on_the_own_states_that_can_occur_together_with_both() {
        Mask white = Mask.of("white", ALBINO).covering("hue", "white");
        Mask dull = Mask.of("dull", BROWN).covering("hue", Mask.Cover.changing(Map.of("black", "brown")));
        assertEquals(
                "/masks/dull/covers/hue: masks \"white\" and \"dull\" show hue differently for genotype b/b c/c:"
                        + " \"white\" and \"brown\"; expected one of them stated \"over\" the other [mask-conflict]",
                onlyText(masked(white, dull)));
        Mask agreeing = Mask.of("dull", BROWN).covering("hue", Mask.Cover.changing(Map.of("brown", "white")));
        masked(white, agreeing).build();
    }

    @Test
    void masks_that_cannot_meet_or_agree_or_are_ordered_by_a_chain_need_no_order() {
        Mask white = Mask.of("white", ALBINO).covering("hue", "white");
        masked(white, Mask.of("full", Condition.where("C", "full")).covering("hue", "black"))
                .build();
        masked(white, Mask.of("same", BROWN).covering("hue", "white")).build();
        masked(white, Mask.of("eye", BROWN).covering("eye", "pink")).build();
        Model chain = valid().mask(white.over("between"))
                .mask(Mask.of("between", BROWN).over("black"))
                .mask(Mask.of("black", BROWN).covering("hue", "black"))
                .build();
        assertEquals(true, chain.isOver("white", "black"));
        assertEquals(false, chain.isOver("black", "white"));
        assertEquals(false, chain.isOver("white", "no such mask"));
    }

    @Test
    void masks_of_a_trait_without_rule_are_compared_on_all_its_states() {
        Mask one = Mask.of("one", ALBINO).covering("throat", Mask.Cover.changing(Map.of("bib", "plain")));
        Mask other = Mask.of("other", BROWN).covering("throat", Mask.Cover.changing(Map.of("plain", "bib")));
        assertEquals("mask-conflict", Refusals.of(masked(one, other)).get(0).code());
    }

    @Test
    void all_conflicts_are_reported_together() {
        List<Problem> problems = Refusals.of(model -> model.trait(
                        "eye",
                        rule -> rule.when(named("one", ALBINO, "pink"))
                                .when(named("two", BROWN, "dark"))
                                .when(named("three", Condition.always(), "dark")))
                .mask(Mask.of("a", ALBINO).covering("hue", "white").covering("eye", "pink"))
                .mask(Mask.of("b", BROWN).covering("hue", "black").covering("eye", "dark")));
        assertEquals(
                List.of(
                        "/traits/eye/cases/two",
                        "/traits/eye/cases/three",
                        "/traits/eye/cases/three",
                        "/masks/b/covers/hue",
                        "/masks/b/covers/eye"),
                problems.stream().map(Problem::pointer).toList());
    }

    private static String onlyText(ModelBuilder builder) {
        List<Problem> problems = Refusals.of(builder);
        assertEquals(1, problems.size(), problems.toString());
        return problems.get(0).toString();
    }
}
