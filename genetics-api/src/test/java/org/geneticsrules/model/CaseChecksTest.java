package org.geneticsrules.model;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Recombination;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.trait.Clock;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** Mistakes in what cases give, and in other parts that few models have. */
class CaseChecksTest {

    private static final Condition ALBINO = Condition.where("C", "albino");

    private static List<String> found(Consumer<ModelBuilder> spoil) {
        return Refusals.of(spoil).stream()
                .map(problem -> problem.code() + " " + problem.pointer())
                .toList();
    }

    private static void builds(Consumer<ModelBuilder> change) {
        ModelBuilder builder = Refusals.valid();
        change.accept(builder);
        builder.build();
    }

    private static Consumer<ModelBuilder> eye(CaseState gives) {
        return model ->
                model.trait("eye", rule -> rule.when("dim", ALBINO, gives).otherwise("dark"));
    }

    private static CaseState.Threshold threshold(int dose, int residual, int cut) {
        return new CaseState.Threshold(
                Map.of("B", Map.of("dark", dose)),
                Distribution.ofWeights(ImmutableMap.of(0, 1, residual, 1)),
                "dark",
                Map.of("pink", cut));
    }

    @Test
    void amounts_up_to_a_million_can_be_summed() {
        builds(eye(threshold(1_000_000, -1_000_000, 1_000_000)));
        String at = "dose-range /traits/eye/cases/dim/threshold";
        assertEquals(List.of(at + "/doses/B/dark"), found(eye(threshold(1_000_001, 1, 1))));
        assertEquals(List.of(at + "/residual/-1000001"), found(eye(threshold(1, -1_000_001, 1))));
        assertEquals(List.of(at + "/cuts/pink"), found(eye(threshold(1, 1, Integer.MIN_VALUE))));
        assertEquals(
                List.of("dose-range /traits/eye/otherwise/threshold/doses/B/dark"),
                found(model ->
                        model.trait("eye", rule -> rule.otherwise(threshold(2_000_000, 1, 1), Optional.empty()))));
    }

    private static Distribution<String> sure(String state) {
        return Distribution.certain(state);
    }

    @Test
    void states_are_known_wherever_they_are_named() {
        String at = "unknown-state /traits/eye/cases/dim";
        assertEquals(List.of(at + "/chance/red"), found(eye(new CaseState.Chance(sure("red")))));
        assertEquals(
                List.of(
                        at + "/progression/start/red",
                        at + "/progression/step/blue",
                        at + "/progression/step/pink/grey"),
                found(eye(new CaseState.Progression(
                        Clock.WEEK, sure("red"), ImmutableMap.of("blue", sure("dark"), "pink", sure("grey")), false))));
        assertEquals(
                List.of(at + "/threshold/below", at + "/threshold/cuts/red"),
                found(eye(new CaseState.Threshold(
                        Map.of("B", Map.of("dark", 1)), Distribution.certain(0), "blue", Map.of("red", 1)))));
    }

    @Test
    void doses_are_of_expressions_that_there_are() {
        assertEquals(
                List.of(
                        "unknown-expression /traits/eye/cases/dim/threshold/doses/B/darker",
                        "unknown-locus /traits/eye/cases/dim/threshold/doses/D"),
                found(eye(new CaseState.Threshold(
                        ImmutableMap.of("B", Map.of("darker", 1), "D", Map.of("dark", 1)),
                        Distribution.certain(0),
                        "dark",
                        Map.of("pink", 1)))));
    }

    @Test
    void a_monotone_progression_never_leads_back() {
        Map<String, Distribution<String>> back =
                Map.of("pink", Distribution.ofWeights(ImmutableMap.of("dark", 1, "pink", 3)));
        CaseState.Progression honest = new CaseState.Progression(Clock.WEEK, sure("pink"), back, false);
        builds(eye(honest));
        Problem problem = Refusals.of(eye(new CaseState.Progression(Clock.WEEK, sure("pink"), back, true)))
                .get(0);
        assertEquals("/traits/eye/cases/dim/progression/step/pink/dark", problem.pointer());
        assertEquals(
                "the step from pink back to dark has a chance of 1/4, although the progression is said to be monotone",
                problem.message());
    }

    @Test
    void cuts_ascend() {
        Map<String, Integer> equal = ImmutableMap.of("brown", 2, "white", 2);
        Consumer<ModelBuilder> inner = model -> model.trait(
                "depth",
                rule -> rule.inner("black", "brown", "white")
                        .otherwise(
                                new CaseState.Threshold(
                                        Map.of("B", Map.of("dark", 1)), Distribution.certain(0), "black", equal),
                                Optional.empty()));
        assertEquals(List.of("cuts-order /traits/depth/otherwise/threshold/cuts/white"), found(inner));
    }

    @Test
    void names_are_known_in_losses_and_mutations() {
        assertEquals(
                List.of(
                        "unknown-expression /viability/lost/expressions/1",
                        "unknown-evidence /viability/lost/evidence"),
                found(model -> model.viability(new Viability(
                        "lost",
                        "C",
                        ImmutableSet.of("albino", "gone"),
                        Optional.empty(),
                        Probability.ZERO,
                        Probability.ONE,
                        Optional.of("e1")))));
        assertEquals(
                List.of(
                        "unknown-allele /loci/D/mutation/E",
                        "unknown-allele /loci/D/mutation/D/F",
                        "unknown-evidence /loci/D/mutation/D/d/evidence"),
                found(model -> model.locus(
                        "D",
                        locus -> locus.alleles("D", "d")
                                .dominant("D", "d")
                                .shows("D", "x")
                                .shows("d", "y")
                                .mutation("E", "d", Probability.of(1, 100))
                                .mutation("D", "F", Probability.of(1, 100))
                                .mutation("D", "d", Probability.of(1, 100), Optional.of("e2")))));
    }

    @Test
    void alleles_are_known_on_either_side_of_dominance_and_in_either_sex() {
        assertEquals(
                List.of("unknown-allele /loci/D/dominance/order/0", "unknown-allele /loci/D/dominance/shows/E"),
                found(model -> model.locus(
                        "D",
                        locus -> locus.alleles("D")
                                .dominant("E", "D")
                                .shows("D", "x")
                                .shows("E", "x"))));
        assertEquals(
                List.of("unknown-allele /loci/D/dominance/male/order/0"),
                found(model -> model.locus(
                        "D",
                        locus -> locus.alleles("D")
                                .in(Sex.FEMALE, dominance -> dominance.shows("D", "x"))
                                .in(
                                        Sex.MALE,
                                        dominance -> dominance.shows("D", "x").dominant("E", "D")))));
    }

    @Test
    void a_locus_needs_a_name_and_a_symbol_of_its_own() {
        assertEquals(
                List.of("bad-name /loci/a:b"),
                found(model -> model.locus(
                        "a:b", locus -> locus.symbol("Q").alleles("D").shows("D", "x"))));
        assertEquals(
                List.of("ambiguous-symbol /loci/one/symbol"),
                found(model -> model.locus(
                        "one", locus -> locus.symbol("B").alleles("D").shows("D", "x"))));
        // "B:" would name either, although both have symbols of their own
        ModelBuilder later = Model.builder("test.model", "1", Refusals.CATALOGUE)
                .locus("one", locus -> locus.symbol("B").alleles("D").shows("D", "x"))
                .locus("B", locus -> locus.symbol("Q").alleles("E").shows("E", "x"));
        assertEquals(
                List.of("ambiguous-symbol /loci/one/symbol"),
                Refusals.of(later).stream()
                        .map(problem -> problem.code() + " " + problem.pointer())
                        .toList());
    }

    @Test
    void dominance_is_stated_for_both_sexes_or_for_each() {
        assertEquals(
                "the dominance of locus D is stated for males only",
                Refusals.of(model -> model.locus(
                                "D", locus -> locus.alleles("D").in(Sex.MALE, dominance -> dominance.shows("D", "x"))))
                        .get(0)
                        .message());
        assertEquals(
                "the dominance of locus D is stated for females and males, and for both sexes together",
                Refusals.of(model -> model.locus(
                                "D",
                                locus -> locus.alleles("D")
                                        .shows("D", "x")
                                        .in(Sex.FEMALE, dominance -> dominance.shows("D", "x"))
                                        .in(Sex.MALE, dominance -> dominance.shows("D", "x"))))
                        .get(0)
                        .message());
    }

    @Test
    void an_allele_that_shows_nothing_is_reported_once_on_an_x() {
        assertEquals(
                List.of("what O/O shows is not stated"),
                Refusals.of(model -> model.locus(
                                        "O", locus -> locus.alleles("O").expressions("x"))
                                .group(LinkageGroup.single(Transmission.X, "O")))
                        .stream()
                        .map(Problem::message)
                        .toList());
    }

    /** What is tabled for a hemizygote goes before what its allele shows alone. */
    @Test
    void a_hemizygote_may_show_what_no_homozygote_does() {
        ModelBuilder builder = Refusals.valid()
                .locus(
                        "O",
                        locus -> locus.alleles("O", "o")
                                .dominant("O", "o")
                                .shows("O", "ginger")
                                .shows("o", "black")
                                .shows("O/Y", "pale ginger"))
                .group(LinkageGroup.single(Transmission.X, "O"));
        Locus locus = builder.build().locus("O");
        assertEquals("pale ginger", locus.expression(locus.hemizygous("O"), Sex.MALE));
        assertEquals("black", locus.expression(locus.hemizygous("o"), Sex.MALE));
        assertEquals("ginger", locus.expression(locus.pair("O", "O"), Sex.FEMALE));
        assertEquals(List.of("/loci/O/dominance/shows/O~1Y"), locus.decidedBy(locus.hemizygous("O"), Sex.MALE));
    }

    @Test
    void crossovers_are_tabled_for_up_to_thirty_intervals() {
        chromosome(31).build();
        assertEquals(
                List.of("too-many-intervals"),
                Refusals.of(chromosome(32)).stream().map(Problem::code).toList());
    }

    private static ModelBuilder chromosome(int size) {
        ModelBuilder builder = Model.builder("test.model", "1", Refusals.CATALOGUE);
        List<String> loci = IntStream.range(0, size).mapToObj(i -> "L" + i).toList();
        loci.forEach(id -> builder.locus(id, locus -> locus.alleles(id).shows(id, "x")));
        return builder.group(LinkageGroup.of(
                "one", Transmission.AUTOSOMAL, loci, new Recombination.Crossovers(Map.of("none", Probability.ONE))));
    }

    @Test
    void groups_and_losses_are_stated_once() {
        LinkageGroup group = LinkageGroup.single(Transmission.X, "B");
        Viability loss = Viability.lethal("lost", "C", "albino");
        for (Consumer<ModelBuilder> twice : List.<Consumer<ModelBuilder>>of(
                model -> model.group(group).group(group),
                model -> model.viability(loss).viability(loss))) {
            assertEquals(
                    List.of("duplicate-id"),
                    Refusals.of(twice).stream().map(Problem::code).toList());
        }
    }
}
