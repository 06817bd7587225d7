package org.geneticsrules.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.BoxSet;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Clock;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** Conflicts that depend on the sex, the season, a draw, an age or a sum of doses, and the examples by which they are shown. */
class RegionsTest {

    private static final Catalogue TRAITS = Catalogue.builder("test.traits", "1.0.0")
            .seasons("summer", "winter")
            .trait("hue", "black", "brown", "white")
            .trait("spots", "none", "few", "many")
            .trait("stripes", "none", "few", "many")
            .trait("size", "small", "large")
            .build();

    private static final Condition ALWAYS = Condition.always();

    /** Locus B, locus O on the X, and two loci with doses. */
    private static ModelBuilder model() {
        return Model.builder("test.model", "1.0.0", TRAITS)
                .locus(
                        "B",
                        locus -> locus.alleles("B", "b")
                                .dominant("B", "b")
                                .shows("B", "dark")
                                .shows("b", "brown"))
                .locus(
                        "O",
                        locus -> locus.alleles("O", "o")
                                .shows("O", "orange")
                                .shows("O/o", "patched")
                                .shows("o", "plain"))
                .locus(
                        "P",
                        locus -> locus.alleles("P", "p")
                                .dominant("P", "p")
                                .shows("P", "more")
                                .shows("p", "less"))
                .locus(
                        "Q",
                        locus -> locus.alleles("Q", "q")
                                .dominant("Q", "q")
                                .shows("Q", "more")
                                .shows("q", "less"))
                .group(LinkageGroup.single(Transmission.X, "O"));
    }

    private static Case named(String id, Condition when, String state) {
        return new Case(id, when, state, Optional.empty());
    }

    /** What stands between "both hold for" and the expectation. */
    private static String overlap(Consumer<ModelBuilder> spoil) {
        ModelBuilder builder = model();
        spoil.accept(builder);
        List<Problem> problems =
                assertThrows(ProblemsException.class, builder::build).problems();
        assertEquals(1, problems.size(), problems.toString());
        assertEquals("overlapping-cases", problems.get(0).code());
        return problems.get(0).message().replaceFirst(".* both hold for ", "");
    }

    private static String overlap(Condition one, Condition other) {
        return overlap(model -> overlapping(model, one, other));
    }

    private static void overlapping(ModelBuilder model, Condition one, Condition other) {
        model.trait("size", rule -> rule.when(named("one", one, "small")).when(named("two", other, "large")));
    }

    private static Distribution<String> sure(String state) {
        return Distribution.certain(state);
    }

    private static CaseState.Progression steps(Clock clock, String first, Map<String, String> next) {
        Map<String, Distribution<String>> step = new LinkedHashMap<>();
        next.forEach((from, to) -> step.put(from, sure(to)));
        return new CaseState.Progression(clock, sure(first), step, false);
    }

    private static CaseState.Threshold sum(int few, int many) {
        Map<String, Integer> cuts = new LinkedHashMap<>();
        cuts.put("few", few);
        cuts.put("many", many);
        return new CaseState.Threshold(
                Map.of("P", Map.of("more", 1), "Q", Map.of("more", 1)), Distribution.certain(0), "none", cuts);
    }

    @Test
    void cases_that_tell_the_sexes_apart_do_not_overlap() {
        ModelBuilder builder = model();
        overlapping(builder, Condition.where("sex", "male"), Condition.where("sex", "female"));
        builder.build();
    }

    @Test
    void the_sex_is_named_where_it_matters() {
        assertEquals("genotype B/B of a male", overlap(Condition.where("sex", "male"), Condition.where("B", "dark")));
        assertEquals("genotype O/o of a female", overlap(Condition.where("O", "patched"), ALWAYS));
        assertEquals("genotype O/Y of a male", overlap(Condition.where("O", "orange"), Condition.where("sex", "male")));
        assertEquals("genotype b/b", overlap(Condition.where("B", "brown"), ALWAYS));
    }

    @Test
    void what_no_animal_of_the_sex_shows_is_said_to_be_out_of_reach() {
        assertEquals(
                "the declared expressions O: patched, sex: male (which no genotype reaches under this dominance)",
                overlap(Condition.where("O", "patched"), Condition.where("sex", "male")));
    }

    @Test
    void dominance_by_sex_decides_which_genotype_is_the_example() {
        Consumer<ModelBuilder> horns = model -> model.locus(
                "H",
                locus -> locus.alleles("H", "h")
                        .in(
                                Sex.MALE,
                                in -> in.dominant("H", "h").shows("H", "horned").shows("h", "bare"))
                        .in(
                                Sex.FEMALE,
                                in -> in.dominant("h", "H").shows("H", "horned").shows("h", "bare")));
        Condition bare = Condition.where("H", "bare");
        assertEquals("genotype h/h of a male", overlap(model -> {
            horns.accept(model);
            overlapping(model, bare, Condition.where("sex", "male"));
        }));
        assertEquals("genotype H/h of a female", overlap(model -> {
            horns.accept(model);
            overlapping(model, bare, Condition.where("sex", "female"));
        }));
    }

    @Test
    void the_season_is_named_where_a_condition_reads_it() {
        assertEquals(
                "genotype b/b in winter", overlap(Condition.where("season", "winter"), Condition.where("B", "brown")));
        assertEquals(
                "any genotype of a female in summer",
                overlap(
                        Condition.where("season", "summer"),
                        ALWAYS.and("season", Allowed.allBut("winter")).and("sex", "female")));
        ModelBuilder builder = model();
        overlapping(builder, Condition.where("season", "winter"), Condition.where("season", "summer"));
        builder.build();
    }

    @Test
    void one_draw_serves_all_that_read_it() {
        Consumer<ModelBuilder> spots = model -> model.trait(
                "spots",
                rule -> rule.when(
                                "brown",
                                Condition.where("B", "brown"),
                                new CaseState.Chance(Distribution.ofWeights(Map.of("few", 1, "many", 1))))
                        .otherwise("none"));
        ModelBuilder apart = model();
        spots.accept(apart);
        overlapping(apart, Condition.where("spots", "few"), Condition.where("spots", "many", "none"));
        apart.build();
        assertEquals("genotype b/b, where /traits/spots/cases/brown gives many", overlap(model -> {
            spots.accept(model);
            overlapping(model, Condition.where("spots", "many"), Condition.where("B", "brown"));
        }));
        assertEquals("genotype B/B", overlap(model -> {
            spots.accept(model);
            overlapping(model, Condition.where("spots", "none"), Condition.where("B", "dark"));
        }));
    }

    @Test
    void draws_of_different_cases_are_independent() {
        CaseState even = new CaseState.Chance(Distribution.ofWeights(Map.of("few", 1, "many", 1)));
        assertEquals(
                "any genotype, where /traits/spots/otherwise gives few and /traits/stripes/otherwise gives many",
                overlap(model -> {
                    model.trait("spots", rule -> rule.otherwise(even, Optional.empty()));
                    model.trait("stripes", rule -> rule.otherwise(even, Optional.empty()));
                    overlapping(model, Condition.where("spots", "few"), Condition.where("stripes", "many"));
                }));
    }

    @Test
    void a_progression_is_shown_at_the_first_age_that_all_draws_allow() {
        Map<String, String> slowly = Map.of("none", "few", "few", "many");
        Consumer<ModelBuilder> spots = model ->
                model.trait("spots", rule -> rule.otherwise(steps(Clock.MOULT, "none", slowly), Optional.empty()));
        assertEquals("any genotype at moult 2, where /traits/spots/otherwise gives many", overlap(model -> {
            spots.accept(model);
            overlapping(model, Condition.where("spots", "many"), ALWAYS);
        }));
        assertEquals(
                "any genotype at moult 2, where /traits/spots/otherwise gives many and /traits/stripes/otherwise gives few",
                overlap(model -> {
                    spots.accept(model);
                    model.trait(
                            "stripes",
                            rule -> rule.otherwise(
                                    steps(Clock.MOULT, "few", Map.of("few", "none", "none", "few")), Optional.empty()));
                    overlapping(model, Condition.where("spots", "many"), Condition.where("stripes", "few"));
                }));
    }

    @Test
    void states_of_different_ages_are_refused_together_but_never_shown_as_an_example() {
        Consumer<ModelBuilder> both = model -> model.trait(
                        "spots",
                        rule -> rule.otherwise(steps(Clock.WEEK, "none", Map.of("none", "few")), Optional.empty()))
                .trait(
                        "stripes",
                        rule -> rule.otherwise(steps(Clock.WEEK, "none", Map.of("none", "many")), Optional.empty()));
        assertEquals(
                "the declared expressions /traits/spots/otherwise: few, /traits/stripes/otherwise: none (of which no animal"
                        + " was found as an example)",
                overlap(model -> {
                    both.accept(model);
                    overlapping(model, Condition.where("spots", "few"), Condition.where("stripes", "none"));
                }));
    }

    @Test
    void a_threshold_is_shown_with_doses_that_reach_the_state() {
        Consumer<ModelBuilder> spots =
                model -> model.trait("spots", rule -> rule.otherwise(sum(1, 2), Optional.empty()));
        assertEquals("genotype P/P Q/Q, where /traits/spots/otherwise gives many", overlap(model -> {
            spots.accept(model);
            overlapping(model, Condition.where("spots", "many"), ALWAYS);
        }));
        assertEquals("genotype p/p Q/Q, where /traits/spots/otherwise gives few", overlap(model -> {
            spots.accept(model);
            overlapping(model, Condition.where("spots", "few"), Condition.where("P", "less"));
        }));
        assertEquals(
                "the declared expressions P: less, /traits/spots/otherwise: many (of which no animal was found as an"
                        + " example)",
                overlap(model -> {
                    spots.accept(model);
                    overlapping(model, Condition.where("spots", "many"), Condition.where("P", "less"));
                }));
    }

    /** What is left over of the sum adds to the doses: two of it with two doses reach four, and nothing reaches five. */
    @Test
    void a_residual_adds_to_the_doses() {
        Consumer<ModelBuilder> spots = model -> model.trait(
                "spots",
                rule -> rule.otherwise(
                        new CaseState.Threshold(
                                Map.of("P", Map.of("more", 1), "Q", Map.of("more", 1)),
                                Distribution.certain(2),
                                "none",
                                Map.of("many", 4)),
                        Optional.empty()));
        assertEquals(
                "genotype P/P Q/Q",
                overlap(model -> {
                            spots.accept(model);
                            overlapping(model, Condition.where("spots", "many"), ALWAYS);
                        })
                        .replaceFirst(",.*", ""));
    }

    @Test
    void thresholds_that_share_loci_are_met_by_one_genotype_or_not_shown() {
        Consumer<ModelBuilder> both = model -> model.trait("spots", rule -> rule.otherwise(sum(1, 2), Optional.empty()))
                .trait("stripes", rule -> rule.otherwise(sum(1, 2), Optional.empty()));
        assertEquals(
                "genotype P/P Q/Q, where /traits/spots/otherwise gives many and /traits/stripes/otherwise gives many",
                overlap(model -> {
                    both.accept(model);
                    overlapping(model, Condition.where("spots", "many"), Condition.where("stripes", "many"));
                }));
        assertEquals(
                "the declared expressions /traits/spots/otherwise: few, /traits/stripes/otherwise: many (of which no animal"
                        + " was found as an example)",
                overlap(model -> {
                    both.accept(model);
                    overlapping(model, Condition.where("spots", "few"), Condition.where("stripes", "many"));
                }));
    }

    @Test
    void masks_that_meet_in_one_draw_only_conflict_there() {
        ModelBuilder builder = model().trait(
                        "spots",
                        rule -> rule.otherwise(
                                new CaseState.Chance(Distribution.ofWeights(Map.of("few", 1, "many", 1))),
                                Optional.empty()))
                .mask(Mask.of("first", Condition.where("spots", "many").and("sex", "male"))
                        .covering("hue", "white"))
                .mask(Mask.of("second", Condition.where("season", "winter")).covering("hue", "black"));
        assertEquals(
                "/masks/second/covers/hue: masks \"first\" and \"second\" show hue differently for any genotype of a male in"
                        + " winter, where /traits/spots/otherwise gives many: \"white\" and \"black\"; expected one of them"
                        + " stated \"over\" the other [mask-conflict]",
                assertThrows(ProblemsException.class, builder::build)
                        .problems()
                        .get(0)
                        .toString());
    }

    @Test
    void genotypes_of_a_region_are_those_that_some_draw_lets_lie_in_it() {
        Model built = model().trait(
                        "spots",
                        rule -> rule.when(
                                        "brown",
                                        Condition.where("B", "brown")
                                                .and("sex", "male")
                                                .and("season", "winter"),
                                        new CaseState.Chance(Distribution.ofWeights(Map.of("few", 1, "many", 1))))
                                .otherwise("none"))
                .build();
        BoxSet many = Regions.of(built).own("spots", Allowed.only("many"));
        GenotypeSet expected =
                GenotypeSet.all(built).showing(Condition.where("B", "brown").and("sex", "male"));
        assertEquals(expected, GenotypeSet.showing(built, many));
    }
}
