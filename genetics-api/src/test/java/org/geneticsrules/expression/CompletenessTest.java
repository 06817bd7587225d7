package org.geneticsrules.expression;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.collect.ImmutableMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.geneticsrules.evidence.Evidence;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.LocusBuilder;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.model.Statement;
import org.geneticsrules.model.Viability;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Clock;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** Findings that can be seen with the naked eye, in invented models of lamps. */
class CompletenessTest {

    private static final LifeStage ANY = LifeStage.unstated();

    private static final Catalogue LAMPS = Catalogue.builder("invented.lamps", "1")
            .seasons("summer", "winter")
            .trait("glow", "bright", "dull", "unlit")
            .trait("hum", "loud", "soft", "silent")
            .build();

    /** Loci K and M with two alleles each; the dominant one shows on. */
    private static ModelBuilder lamps() {
        return Model.builder("invented.lamp", "1", LAMPS)
                .locus("K", locus -> switching(locus, "K", "k"))
                .locus("M", locus -> switching(locus, "M", "m"));
    }

    private static void switching(LocusBuilder locus, String on, String off) {
        locus.alleles(on, off).dominant(on, off).shows(on, "on").shows(off, "off");
    }

    private static Completeness report(UnaryOperator<ModelBuilder> more) {
        return Completeness.of(more.apply(lamps()).build());
    }

    private static Distribution<String> even(String... states) {
        Map<String, Integer> weights = new LinkedHashMap<>();
        List.of(states).forEach(state -> weights.put(state, 1));
        return Distribution.ofWeights(weights);
    }

    private static Completeness.Unreached never(Completeness.Part part, String pointer, String name, boolean other) {
        return new Completeness.Unreached(part, pointer, name, other);
    }

    @Test
    void a_trait_without_rule_is_named_with_the_reason_if_one_is_stated() {
        Completeness report = report(
                model -> model.trait("glow", rule -> rule.otherwise("dull")).notModelled("hum", "Nobody listened."));
        assertEquals(
                List.of(new Completeness.WithoutRule("hum", Optional.of("Nobody listened."))), report.withoutRule());
        assertEquals(
                List.of(new Completeness.WithoutRule("hum", Optional.empty())),
                report(model -> model.trait("glow", rule -> rule.otherwise("dull")))
                        .withoutRule());
    }

    @Test
    void combinations_that_no_case_covers_are_listed_as_disjoint_boxes() {
        Completeness report = report(model -> model.trait(
                "glow",
                rule -> rule.when(Condition.where("K", "on").and("M", "on"), "bright")
                        .when(Condition.where("K", "off").and("M", "off"), "dull")));
        List<Condition> open = List.of(
                Condition.where("K", "on").and("M", "off"),
                Condition.where("K", "off").and("M", "on"));
        assertEquals(List.of(new Completeness.Gap("glow", Completeness.Gap.About.EITHER, open, true)), report.gaps());
    }

    @Test
    void a_mask_may_mend_a_gap_and_a_gap_may_leave_a_mask_unknown() {
        Completeness mended =
                report(model -> model.trait("glow", rule -> rule.when(Condition.where("K", "on"), "bright"))
                        .mask(Mask.of("dark", Condition.where("K", "off")).covering("glow", "unlit")));
        assertEquals(
                List.of(new Completeness.Gap(
                        "glow", Completeness.Gap.About.OWN_STATE, List.of(Condition.where("K", "off")), true)),
                mended.gaps());
        Completeness spread = report(model -> model.trait(
                        "glow", rule -> rule.when(Condition.where("K", "on"), "bright"))
                .trait("hum", rule -> rule.otherwise("soft"))
                .mask(Mask.of("drowned", Condition.where("glow", "bright")).covering("hum", "silent")));
        assertEquals(
                List.of(
                        new Completeness.Gap(
                                "glow", Completeness.Gap.About.EITHER, List.of(Condition.where("K", "off")), true),
                        new Completeness.Gap(
                                "hum", Completeness.Gap.About.SEEN, List.of(Condition.where("K", "off")), true)),
                spread.gaps());
    }

    @Test
    void a_gap_that_depends_on_chance_sex_and_season_names_them() {
        Completeness report = report(model -> model.trait(
                        "warmth",
                        rule -> rule.inner("cold", "warm")
                                .otherwise(new CaseState.Chance(even("cold", "warm")), Optional.empty()))
                .trait(
                        "glow",
                        rule -> rule.when(Condition.where("warmth", "warm").and("sex", "female"), "bright")
                                .when(Condition.where("sex", "male").and("season", "summer"), "dull")));
        assertEquals(
                List.of(
                        Condition.where("sex", "female").and("/traits/warmth/otherwise", "cold"),
                        Condition.where("sex", "male").and("season", "winter")),
                report.gaps().get(0).where());
    }

    @Test
    void what_no_genotype_shows_is_named_with_all_that_hangs_on_it() {
        Completeness report = report(model -> model.locus(
                        "N",
                        locus -> locus.alleles("N", "n")
                                .expressions("on", "half", "off")
                                .dominant("N", "n")
                                .shows("N", "on")
                                .shows("n", "off"))
                .trait(
                        "glow",
                        rule -> rule.when(Condition.where("N", "half"), "dull")
                                .when(Condition.where("N", "on", "off"), "bright")
                                .otherwise("bright"))
                .mask(Mask.of("soft", Condition.where("N", "half")).covering("hum", "soft"))
                .viability(Viability.lethal("frail", "N", "half")));
        assertEquals(
                List.of(
                        never(Completeness.Part.EXPRESSION, "/loci/N/expressions/1", "half", true),
                        never(Completeness.Part.VIABILITY, "/viability/frail", "frail", true),
                        never(Completeness.Part.CASE, "/traits/glow/cases/dull", "dull", true),
                        never(Completeness.Part.OTHERWISE, "/traits/glow/otherwise", "otherwise", false),
                        never(Completeness.Part.STATE, "/traits/glow", "dull", true),
                        never(Completeness.Part.STATE, "/traits/glow", "unlit", false),
                        never(Completeness.Part.MASK, "/masks/soft", "soft", true)),
                report.unreached());
    }

    @Test
    void a_state_that_is_always_covered_is_never_seen() {
        Completeness report = report(model -> model.trait(
                        "glow",
                        rule -> rule.when(Condition.where("K", "on"), "bright").otherwise("dull"))
                .mask(Mask.of("shade", Condition.where("K", "on")).covering("glow", "unlit")));
        assertEquals(List.of(never(Completeness.Part.STATE, "/traits/glow", "bright", false)), report.unreached());
    }

    @Test
    void a_state_of_those_that_are_never_born_is_told_apart_from_one_of_nobody() {
        Completeness report = report(model -> model.trait(
                        "glow",
                        rule -> rule.when(Condition.where("K", "on"), "bright").otherwise("dull"))
                .viability(Viability.lethal("dark", "K", "off")));
        assertEquals(
                List.of(
                        never(Completeness.Part.UNBORN_STATE, "/traits/glow", "dull", false),
                        never(Completeness.Part.STATE, "/traits/glow", "unlit", false)),
                report.unreached());
    }

    @Test
    void who_is_seldom_born_is_seen_all_the_same() {
        UnaryOperator<ModelBuilder> rules = model -> model.trait(
                "glow", rule -> rule.when(Condition.where("K", "on"), "bright").otherwise("dull"));
        Viability weak = new Viability(
                "weak", "K", Set.of("off"), Optional.empty(), Probability.of(1, 2), Probability.ZERO, Optional.empty());
        assertEquals(
                report(rules).unreached(),
                report(model -> rules.apply(model.viability(weak))).unreached());
    }

    @Test
    void an_order_on_a_chromosome_without_partner_decides_nothing() {
        Completeness report = report(model -> model.locus("Y", locus -> {
                    switching(locus, "Y1", "Y2");
                    locus.absent("off");
                })
                .group(LinkageGroup.single(Transmission.Y, "Y"))
                .trait(
                        "glow",
                        rule -> rule.when(Condition.where("Y", "on"), "bright").otherwise("dull")));
        assertEquals(
                List.of(
                        never(
                                Completeness.Part.DOMINANCE,
                                "/loci/Y/dominance/order/0",
                                "at locus Y, Y1 is dominant over Y2",
                                false),
                        never(Completeness.Part.STATE, "/traits/glow", "unlit", false)),
                report.unreached());
        assertEquals(
                List.of(new Completeness.Limited("glow", "bright", Optional.of(Sex.MALE), List.of(), ANY, ANY)),
                report.limited());
    }

    @Test
    void classes_that_no_sum_of_doses_reaches_and_steps_from_nowhere_are_named() {
        CaseState sum = new CaseState.Threshold(
                Map.of("K", Map.of("on", 2), "M", Map.of("on", 2)),
                Distribution.certain(0),
                "unlit",
                orderedCuts("dull", 3, "bright", 5));
        CaseState fading = new CaseState.Progression(
                Clock.MOULT,
                Distribution.certain("loud"),
                Map.of("loud", even("loud", "silent"), "soft", even("silent")),
                true);
        Completeness report = report(model -> model.trait("glow", rule -> rule.otherwise(sum, Optional.empty()))
                .trait("hum", rule -> rule.otherwise(fading, Optional.empty())));
        assertEquals(
                List.of(
                        never(
                                Completeness.Part.THRESHOLD_STATE,
                                "/traits/glow/otherwise/threshold/cuts/bright",
                                "bright",
                                false),
                        never(Completeness.Part.STATE, "/traits/glow", "bright", false),
                        never(
                                Completeness.Part.PROGRESSION_STATE,
                                "/traits/hum/otherwise/progression/step/soft",
                                "soft",
                                false),
                        never(Completeness.Part.STATE, "/traits/hum", "soft", false)),
                report.unreached());
    }

    private static Map<String, Integer> orderedCuts(String low, int from, String high, int above) {
        Map<String, Integer> cuts = new LinkedHashMap<>();
        cuts.put(low, from);
        cuts.put(high, above);
        return cuts;
    }

    @Test
    void a_state_between_others_is_seen_for_a_while() {
        CaseState burning = new CaseState.Progression(
                Clock.WEEK,
                Distribution.certain("bright"),
                Map.of("bright", Distribution.certain("dull"), "dull", Distribution.certain("unlit")),
                true);
        Completeness report = report(model -> model.trait("glow", rule -> rule.otherwise(burning, Optional.empty()))
                .trait(
                        "hum",
                        rule -> rule.when(Condition.where("season", "summer"), "loud")
                                .otherwise("soft")));
        assertEquals(
                List.of(
                        new Completeness.Limited(
                                "glow", "bright", Optional.empty(), List.of(), ANY, LifeStage.atWeek(0)),
                        new Completeness.Limited(
                                "glow", "dull", Optional.empty(), List.of(), LifeStage.atWeek(1), LifeStage.atWeek(1)),
                        new Completeness.Limited(
                                "glow", "unlit", Optional.empty(), List.of(), LifeStage.atWeek(2), ANY),
                        new Completeness.Limited("hum", "loud", Optional.empty(), List.of("summer"), ANY, ANY),
                        new Completeness.Limited("hum", "soft", Optional.empty(), List.of("winter"), ANY, ANY)),
                report.limited());
    }

    /** Both burn down in step, so one is never bright while the other is dull. */
    @Test
    void states_of_different_ages_do_not_meet() {
        CaseState burning = new CaseState.Progression(
                Clock.WEEK, Distribution.certain("on"), Map.of("on", Distribution.certain("off")), true);
        Completeness report = report(model -> model.trait(
                        "left", rule -> rule.inner("on", "off").otherwise(burning, Optional.empty()))
                .trait("right", rule -> rule.inner("on", "off").otherwise(burning, Optional.empty()))
                .trait(
                        "glow",
                        rule -> rule.when(Condition.where("left", "on").and("right", "off"), "dull")
                                .when(Condition.where("left", "on").and("right", "on"), "bright")
                                .when(Condition.where("left", "off"), "unlit")));
        assertEquals(
                List.of(
                        never(Completeness.Part.CASE, "/traits/glow/cases/dull", "dull", false),
                        never(Completeness.Part.STATE, "/traits/glow", "dull", false)),
                report.unreached());
        assertEquals(List.of(), report.gaps());
        Completeness without = report(model -> model.trait(
                        "left", rule -> rule.inner("on", "off").otherwise(burning, Optional.empty()))
                .trait("right", rule -> rule.inner("on", "off").otherwise(burning, Optional.empty()))
                .trait(
                        "glow",
                        rule -> rule.when(Condition.where("left", "on").and("right", "on"), "bright")
                                .when(Condition.where("left", "off").and("right", "off"), "unlit")));
        assertEquals(List.of(), without.gaps());
    }

    @Test
    void a_gap_that_some_age_reaches_is_a_gap() {
        CaseState burning = new CaseState.Progression(
                Clock.WEEK, Distribution.certain("on"), Map.of("on", Distribution.certain("off")), true);
        Completeness report = report(model -> model.trait(
                        "left", rule -> rule.inner("on", "off").otherwise(burning, Optional.empty()))
                .trait("right", rule -> rule.inner("on", "off").otherwise(burning, Optional.empty()))
                .trait("glow", rule -> rule.when(Condition.where("left", "on").and("right", "on"), "bright")));
        Condition out = Condition.where("/traits/left/otherwise", "off"); // then the right one is out as well
        assertEquals(
                List.of(new Completeness.Gap("glow", Completeness.Gap.About.EITHER, List.of(out), true)),
                report.gaps());
    }

    @Test
    void alleles_of_males_alone_are_told_apart_in_males() {
        UnaryOperator<ModelBuilder> locus = model -> model.locus(
                        "H",
                        one -> one.alleles("H", "h")
                                .shows("H", "has")
                                .shows("h", "odd")
                                .absent("not"))
                .group(LinkageGroup.single(Transmission.Y, "H"));
        Completeness told = report(model -> locus.apply(model)
                .trait(
                        "glow",
                        rule -> rule.when(Condition.where("H", "odd"), "dull").otherwise("bright")));
        assertEquals(
                List.of("K", "M"),
                told.alikeAlleles().stream().map(Completeness.Alike::locus).toList());
        Completeness blind = report(model -> locus.apply(model).trait("glow", rule -> rule.otherwise("bright")));
        assertEquals(
                List.of("K", "M", "H"),
                blind.alikeAlleles().stream().map(Completeness.Alike::locus).toList());
    }

    /** An expression of heterozygotes at an X-linked locus is none of males, though the rule would give them no state for it either. */
    @Test
    void a_gap_of_one_sex_names_what_that_sex_can_be() {
        Completeness report = report(model -> model.locus(
                        "H",
                        one -> one.alleles("H", "h")
                                .shows("H", "whole")
                                .shows("h", "split")
                                .shows("H/h", "mosaic"))
                .group(LinkageGroup.single(Transmission.X, "H"))
                .trait("glow", rule -> rule.when(Condition.where("H", "split"), "bright")));
        assertEquals(
                List.of(
                        Condition.where("sex", "female").and("H", Allowed.only("whole", "mosaic")),
                        Condition.where("sex", "male").and("H", "whole")),
                report.gaps().get(0).where());
    }

    /** Where K is on the sum is 0, and where K is off the case does not hold; so no animal reaches the upper class. */
    @Test
    void a_class_that_only_those_reach_of_whom_the_case_is_not() {
        CaseState sum = new CaseState.Threshold(
                Map.of("K", Map.of("off", 2)), Distribution.certain(0), "unlit", Map.of("dull", 2));
        Completeness report = report(model -> model.trait(
                "glow",
                rule -> rule.when("sum", Condition.where("K", "on"), sum).otherwise("bright")));
        assertTrue(report.unreached()
                .contains(never(
                        Completeness.Part.THRESHOLD_STATE,
                        "/traits/glow/cases/sum/threshold/cuts/dull",
                        "dull",
                        false)));
        assertTrue(report.unreached().stream().noneMatch(one -> one.name().equals("unlit")));
    }

    /** All genotypes have one sum, so that nothing is tested at all. */
    @Test
    void a_sum_that_is_always_the_same() {
        CaseState sum = new CaseState.Threshold(
                Map.of("K", ImmutableMap.of("on", 2, "off", 2)), Distribution.certain(0), "unlit", Map.of("dull", 2));
        Completeness report = report(model -> model.trait("glow", rule -> rule.otherwise(sum, Optional.empty())));
        assertEquals(
                List.of("unlit"),
                report.unreached().stream()
                        .filter(one -> one.part() == Completeness.Part.THRESHOLD_STATE)
                        .map(Completeness.Unreached::name)
                        .toList());
    }

    @Test
    void a_case_that_always_holds_is_reached() {
        Completeness report = report(model ->
                model.trait("glow", rule -> rule.when("ever", Condition.always(), new CaseState.Certain("dull"))));
        assertEquals(List.of(), report.gaps());
        assertEquals(
                List.of("bright", "unlit"),
                report.unreached().stream().map(Completeness.Unreached::name).toList());
    }

    @Test
    void what_makes_no_difference_may_be_read_all_the_same() {
        Completeness report = report(model -> model.trait("glow", rule -> rule.otherwise("dull"))
                .mask(Mask.of("shade", Condition.where("K", "off")).covering("glow", "dull"))
                .viability(new Viability(
                        "sound",
                        "M",
                        Set.of("off"),
                        Optional.empty(),
                        Probability.ONE,
                        Probability.ONE,
                        Optional.empty())));
        assertEquals(
                List.of(new Completeness.Idle("/loci/K", "K", true), new Completeness.Idle("/loci/M", "M", true)),
                report.idle());
    }

    /** Every male carries what kills it, so that what only males would show is never seen. */
    @Test
    void a_sex_that_is_never_born_shows_nothing() {
        Completeness report = report(model -> model.locus(
                        "H", locus -> locus.alleles("H").shows("H", "has").absent("not"))
                .group(LinkageGroup.single(Transmission.Y, "H"))
                .viability(Viability.lethal("males", "H", "has"))
                .trait(
                        "glow",
                        rule -> rule.when(Condition.where("sex", "male"), "bright")
                                .otherwise("dull")));
        assertEquals(
                List.of("bright"),
                report.unreached().stream()
                        .filter(one -> one.part() == Completeness.Part.UNBORN_STATE)
                        .map(Completeness.Unreached::name)
                        .toList());
    }

    /** Five is added to every sum, so that nobody stays below three. */
    @Test
    void a_state_below_the_least_sum_is_never_reached() {
        CaseState sum = new CaseState.Threshold(
                Map.of("K", Map.of("on", 1)), Distribution.certain(5), "unlit", Map.of("dull", 3));
        Completeness report = report(model -> model.trait("glow", rule -> rule.otherwise(sum, Optional.empty())));
        assertTrue(
                report.unreached()
                        .contains(never(
                                Completeness.Part.THRESHOLD_STATE,
                                "/traits/glow/otherwise/threshold/below",
                                "unlit",
                                false)),
                () -> report.unreached().toString());
    }

    @Test
    void alleles_and_genotypes_that_nothing_tells_apart_are_grouped() {
        Completeness report = report(model -> model.locus(
                        "N",
                        locus -> locus.alleles("N", "N2", "n")
                                .dominant("N", "n")
                                .dominant("N2", "n")
                                .shows("N", "on")
                                .shows("N2", "on too")
                                .shows("N/N2", "on")
                                .shows("n", "off"))
                .trait(
                        "glow",
                        rule -> rule.when(Condition.where("N", "off"), "dull")
                                .when(Condition.where("N", "on", "on too").and("K", "on"), "bright")
                                .when(Condition.where("N", "on", "on too").and("K", "off"), "unlit")));
        assertEquals(
                List.of(
                        new Completeness.Alike("M", Optional.empty(), List.of(List.of("M", "m"))),
                        new Completeness.Alike("N", Optional.empty(), List.of(List.of("N", "N2")))),
                report.alikeAlleles());
        assertEquals(
                List.of(
                        new Completeness.Alike("K", Optional.empty(), List.of(List.of("K/K", "K/k"))),
                        new Completeness.Alike("M", Optional.empty(), List.of(List.of("M/M", "M/m", "m/m"))),
                        new Completeness.Alike(
                                "N", Optional.empty(), List.of(List.of("N/N", "N/N2", "N/n", "N2/N2", "N2/n")))),
                report.alikeGenotypes());
        assertEquals(List.of(new Completeness.Idle("/loci/M", "M", false)), report.idle());
    }

    @Test
    void what_only_a_chance_to_live_tells_apart_is_told_apart() {
        Completeness report = report(model -> model.trait("glow", rule -> rule.otherwise("dull"))
                .viability(new Viability(
                        "weak",
                        "M",
                        Set.of("off"),
                        Optional.of(Sex.MALE),
                        Probability.of(1, 2),
                        Probability.ONE,
                        Optional.empty())));
        assertEquals(
                List.of(
                        new Completeness.Alike("K", Optional.empty(), List.of(List.of("K/K", "K/k", "k/k"))),
                        new Completeness.Alike("M", Optional.of(Sex.FEMALE), List.of(List.of("M/M", "M/m", "m/m"))),
                        new Completeness.Alike("M", Optional.of(Sex.MALE), List.of(List.of("M/M", "M/m")))),
                report.alikeGenotypes());
    }

    @Test
    void a_locus_that_only_an_unread_inner_trait_reads_makes_no_difference() {
        Completeness report = report(model -> model.trait(
                        "glow",
                        rule -> rule.when(Condition.where("K", "on"), "bright").otherwise("dull"))
                .trait(
                        "warmth",
                        rule -> rule.inner("cold", "warm")
                                .when(Condition.where("M", "on"), "warm")
                                .otherwise("cold")));
        assertEquals(
                List.of(
                        new Completeness.Idle("/loci/M", "M", true),
                        new Completeness.Idle("/traits/warmth", "warmth", false)),
                report.idle());
    }

    @Test
    void statements_are_sorted_by_the_evidence_for_them() {
        Completeness report =
                report(model -> model.evidence(Evidence.of("study", Grade.ONE_STUDY, "Seen once.", "A. Author 1999"))
                        .trait(
                                "glow",
                                rule -> rule.when(Condition.where("K", "on"), "bright")
                                        .otherwise("dull", Optional.of("study"))));
        assertEquals(List.of("/traits/glow/otherwise"), pointers(report.graded().get(Grade.ONE_STUDY)));
        assertEquals(Set.of(Grade.ONE_STUDY), report.graded().keySet());
        assertEquals(
                List.of(
                        "/loci/K/dominance/order/0",
                        "/loci/K/dominance/shows/K",
                        "/loci/K/dominance/shows/k",
                        "/loci/M/dominance/order/0",
                        "/loci/M/dominance/shows/M",
                        "/loci/M/dominance/shows/m",
                        "/traits/glow/cases/bright"),
                pointers(report.withoutEvidence()));
    }

    private static List<String> pointers(List<Statement> statements) {
        return statements.stream().map(Statement::pointer).toList();
    }

    @Test
    void a_draft_is_reported_on_with_its_conflicts() {
        ModelBuilder builder = lamps().trait(
                        "glow",
                        rule -> rule.when(Condition.where("K", "on"), "bright")
                                .when(Condition.where("M", "on"), "dull"))
                .mask(Mask.of("one", Condition.where("K", "off")).covering("glow", "unlit"))
                .mask(Mask.of("two", Condition.where("M", "off")).covering("glow", "dull"));
        Completeness report = Completeness.of(builder.draft());
        assertEquals(
                List.of("overlapping-cases", "mask-conflict"),
                report.conflicts().stream().map(Problem::code).toList());
        assertEquals(
                List.of(new Completeness.Gap(
                        "glow",
                        Completeness.Gap.About.OWN_STATE,
                        List.of(Condition.where("K", "off").and("M", "off")),
                        true)),
                report.gaps());
        assertEquals(
                report.conflicts(),
                assertThrows(ProblemsException.class, builder::build).problems());
    }
}
