package org.geneticsrules.expression;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Viability;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Outcomes;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Clock;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.junit.jupiter.api.Test;

/** Chance, stages, sums and several looks at one animal. Models are invented; every number is calculated by hand. */
class LifeStagesTest {

    private final CompiledModel whitening = CompiledModel.of(SketchOfLife.whitening());

    private static <T> Map<T, Probability> weighed(Diagram<T> diagram, Map<String, long[]> shares) {
        List<Chain> chains = new ArrayList<>();
        shares.forEach((locus, weights) -> {
            BigInteger[] whole = new BigInteger[weights.length];
            for (int i = 0; i < weights.length; i++) {
                whole[i] = BigInteger.valueOf(weights[i]);
            }
            chains.add(Chain.single(locus, whole));
        });
        Weights weights = diagram.weigh(KitLaw.of(Sex.FEMALE, chains));
        Map<T, Probability> chances = new LinkedHashMap<>();
        for (int i = 0; i < weights.shares().length; i++) {
            chances.put(diagram.outcomes().get(i), Probability.of(weights.shares()[i], weights.total()));
        }
        return chances;
    }

    private Probability whitened(int moult) {
        Diagram<Phenotype> diagram =
                whitening.diagram(View.of(Set.of("hue", "eye")).at(LifeStage.atMoult(moult)));
        // C/c M/m x the same, all B/B
        return weighed(diagram, Map.of("C", new long[] {3, 1}, "B", new long[] {1, 0}, "M", new long[] {1, 2, 1}))
                .entrySet()
                .stream()
                .filter(look -> look.getKey().shows(Phenotype.parse("hue: none, eye: black")))
                .map(Map.Entry::getValue)
                .reduce(Probability.ZERO, Probability::plus);
    }

    @Test
    void whitening_covers_the_hue_of_more_kits_with_each_moult() {
        assertEquals(Probability.parse("3/16"), whitened(0));
        assertEquals(Probability.parse("7/32"), whitened(1));
        assertEquals(Probability.parse("409/1152"), whitened(3));
    }

    @Test
    void one_animal_is_expressed_in_every_way_of_its_draw() {
        Genotype carrier = Genotype.parse(whitening.model(), "C/C B/b M/m");
        Distribution<Expressed> ways =
                whitening.express(carrier, Sex.MALE, LifeStage.atMoult(1), List.of("white hairs", "hue"));
        assertEquals(
                Map.of(
                        Phenotype.parse("white hairs: few, hue: black"), Probability.parse("3/8"),
                        Phenotype.parse("white hairs: half, hue: black"), Probability.parse("13/24"),
                        Phenotype.parse("white hairs: all, hue: none"), Probability.parse("1/12")),
                ways.map(Expressed::phenotype).asMap());
        Expressed white = ways.outcomes().stream()
                .filter(way -> way.activeMasks().contains("whitened"))
                .findFirst()
                .orElseThrow();
        TraitTrace hairs = white.traits().get("white hairs");
        assertEquals("all", hairs.draw().orElseThrow());
        assertEquals("/traits/white hairs/cases/one", hairs.rule().orElseThrow());
        assertEquals(List.of("whitened"), white.traits().get("hue").masks());
    }

    @Test
    void an_albino_needs_no_draw() {
        Expressed albino = whitening.express(Genotype.parse(whitening.model(), "c/c B/b M/M"), List.of("eye"));
        assertEquals(Phenotype.of("eye", "pink"), albino.phenotype());
        IllegalArgumentException refusal = assertThrows(
                IllegalArgumentException.class,
                () -> whitening.express(
                        Map.of("C", "pigment", "M", "one dose"),
                        Sex.FEMALE,
                        LifeStage.atMoult(1),
                        Map.of(),
                        List.of("white hairs")));
        assertTrue(refusal.getMessage().contains("/traits/white hairs/cases/one"), refusal.getMessage());
    }

    /** All kits are born without white hairs, so nothing is drawn before the first moult; then one in four has some. */
    @Test
    void where_one_state_is_certain_nothing_is_drawn() {
        Catalogue catalogue = Catalogue.builder("invented.traits", "1")
                .trait("white hairs", "none", "few")
                .build();
        CaseState greying = new CaseState.Progression(
                Clock.MOULT,
                Distribution.certain("none"),
                Map.of("none", SketchOfLife.chances("none", "3/4", "few", "1/4")),
                true);
        CompiledModel compiled = CompiledModel.of(Model.builder("invented.greying", "1", catalogue)
                .locus(
                        "A",
                        locus -> locus.alleles("A", "a")
                                .dominant("A", "a")
                                .shows("A", "on")
                                .shows("a", "off"))
                .trait("white hairs", rule -> rule.otherwise(greying, Optional.empty()))
                .build());
        Genotype any = Genotype.parse(compiled.model(), "A/a");
        Distribution<Expressed> young = compiled.express(any, Sex.FEMALE, LifeStage.atMoult(0), List.of("white hairs"));
        assertEquals(
                Map.of(Phenotype.of("white hairs", "none"), Probability.ONE),
                young.map(Expressed::phenotype).asMap());
        assertEquals(
                Optional.empty(),
                young.outcomes().iterator().next().traits().get("white hairs").draw());
        assertEquals(
                Map.of(
                        Phenotype.of("white hairs", "none"), Probability.parse("3/4"),
                        Phenotype.of("white hairs", "few"), Probability.parse("1/4")),
                compiled.express(any, Sex.FEMALE, LifeStage.atMoult(1), List.of("white hairs"))
                        .map(Expressed::phenotype)
                        .asMap());
    }

    /** The count of moults is needed in winter only; in summer the season rules the case out. */
    @Test
    void a_case_that_the_season_rules_out_needs_no_count() {
        Catalogue catalogue = Catalogue.builder("invented.traits", "1")
                .seasons("summer", "winter")
                .trait("white hairs", "none", "few", "half", "all")
                .build();
        CompiledModel compiled = CompiledModel.of(Model.builder("invented.winter", "1", catalogue)
                .locus(
                        "A",
                        locus -> locus.alleles("A", "a")
                                .dominant("A", "a")
                                .shows("A", "on")
                                .shows("a", "off"))
                .trait(
                        "white hairs",
                        rule -> rule.when("winter", Condition.where("season", "winter"), SketchOfLife.spreading())
                                .otherwise("none"))
                .build());
        View hairs = View.of(Set.of("white hairs"));
        LifeStage summer = LifeStage.unstated().in("summer");
        assertEquals(
                List.of(Phenotype.of("white hairs", "none")),
                compiled.diagram(hairs.at(summer)).outcomes());
        ProblemsException refusal = assertThrows(
                ProblemsException.class,
                () -> compiled.diagram(hairs.at(LifeStage.unstated().in("winter"))));
        assertEquals("stage-needed", refusal.problems().get(0).code());
    }

    @Test
    void a_question_that_needs_a_moult_is_refused_with_the_statement() {
        for (Runnable question : List.<Runnable>of(
                () -> whitening.diagram(View.of(List.of("hue")).at(LifeStage.atWeek(8))),
                () -> whitening.diagram(List.of("white hairs")),
                () -> whitening.showing(Phenotype.of("hue", "black")),
                () -> whitening.matching(List.of(Sighting.of(Phenotype.of("hue", "none"))), Census.BORN),
                () -> whitening.express(Genotype.parse(whitening.model(), "C/C B/B M/M"), List.of("hue")))) {
            ProblemsException refusal = assertThrows(ProblemsException.class, question::run);
            assertEquals(1, refusal.problems().size());
            assertEquals("stage-needed", refusal.problems().get(0).code());
            assertEquals(
                    "/traits/white hairs/cases/one", refusal.problems().get(0).pointer());
            assertTrue(refusal.getMessage().contains("moult"), refusal.getMessage());
        }
        assertEquals(2, whitening.diagram(List.of("eye")).outcomes().size());
    }

    @Test
    void two_looks_at_one_animal_follow_one_path() {
        Sighting first = new Sighting(LifeStage.atMoult(0), Phenotype.of("white hairs", "few"));
        Sighting second = new Sighting(LifeStage.atMoult(1), Phenotype.of("white hairs", "half"));
        Map<String, long[]> oneDose = Map.of("C", new long[] {1, 0}, "M", new long[] {0, 1, 0});
        // start times step, whichever look is named first
        for (List<Sighting> seen : List.of(List.of(first, second), List.of(second, first))) {
            Diagram<Boolean> both = whitening.matching(seen, Census.CONCEIVED);
            assertEquals(List.of(false, true), both.outcomes());
            assertEquals(Probability.parse("3/8"), weighed(both, oneDose).get(true));
            assertEquals(
                    List.of(new WeightedBox(
                            Condition.where("C", "pigment").and("M", "one dose"), Probability.parse("3/8"))),
                    whitening.evidence(seen));
        }
        // the same look twice says no more than once, not its square
        assertEquals(
                Probability.parse("3/4"),
                weighed(whitening.matching(List.of(first, first), Census.CONCEIVED), oneDose)
                        .get(true));
        // from half no step leads back to few
        Diagram<Boolean> never = whitening.matching(
                List.of(
                        new Sighting(LifeStage.atMoult(0), Phenotype.of("white hairs", "half")),
                        new Sighting(LifeStage.atMoult(4), Phenotype.of("white hairs", "few"))),
                Census.CONCEIVED);
        assertEquals(List.of(false), never.outcomes());
    }

    @Test
    void evidence_joins_the_ways_of_one_combination() {
        List<WeightedBox> boxes =
                whitening.evidence(List.of(new Sighting(LifeStage.atMoult(1), Phenotype.of("hue", "none"))));
        Map<Condition, Probability> weights = new LinkedHashMap<>();
        boxes.forEach(box -> weights.put(box.box(), box.weight()));
        assertEquals(
                Map.of(
                        Condition.where("C", "albino"), Probability.ONE,
                        Condition.where("C", "pigment").and("M", "one dose"), Probability.parse("1/12"),
                        Condition.where("C", "pigment").and("M", "two doses"), Probability.ONE),
                weights);
    }

    @Test
    void six_small_doses_are_distributed_as_binomial_coefficients() {
        CompiledModel counting = CompiledModel.of(SketchOfLife.counting(3, Distribution.certain(0)));
        Diagram<Phenotype> diagram = counting.diagram();
        LocusWeights[] sameCross = new LocusWeights[3];
        Arrays.fill(sameCross, LocusWeights.of(1, 2, 1));
        assertEquals(
                List.of(1, 6, 15, 20, 15, 6, 1).toString(),
                diagram.distribution(sameCross).ratio().toString());
    }

    @Test
    void a_residual_widens_a_sum() {
        Distribution<Integer> residual = Distribution.ofWeights(Outcomes.of(List.of(0, 1)), new long[] {3, 1});
        CompiledModel counting = CompiledModel.of(SketchOfLife.counting(1, residual));
        Map<Phenotype, Probability> chances = weighed(counting.diagram(), Map.of("L1", new long[] {1, 2, 1}));
        // (1 2 1) spread by 3 : 1
        assertEquals(
                List.of("3/16", "7/16", "5/16", "1/16"),
                chances.values().stream().map(Probability::toString).toList());
    }

    @Test
    void forty_loci_take_few_nodes() {
        CompiledModel counting = CompiledModel.of(SketchOfLife.counting(40, Distribution.certain(0)));
        // sums 0 .. 2i after i loci
        assertEquals(40 * 40, counting.diagram().size());
    }

    @Test
    void lost_kits_take_their_share_before_all_others() {
        Model model = SketchOfLife.counting(1, Distribution.certain(0));
        var builder = Model.builder("invented.lethal", "1", model.catalogue())
                .locus(
                        "L1",
                        locus -> locus.alleles("P1", "p1")
                                .shows("P1", "two")
                                .shows("P1/p1", "one")
                                .shows("p1", "no"))
                .trait(
                        "grade",
                        trait -> trait.when(Condition.where("L1", "two"), "grade ac")
                                .otherwise("grade aa"))
                .viability(Viability.lethal("double", "L1", "two"));
        CompiledModel lethal = CompiledModel.of(builder.build());
        Diagram<Phenotype> born = lethal.diagram();
        assertTrue(born.loses());
        assertEquals(List.of(Phenotype.of("grade", "grade aa")), born.outcomes());
        assertEquals(
                Probability.parse("3/4"),
                weighed(born, Map.of("L1", new long[] {1, 2, 1})).get(Phenotype.of("grade", "grade aa")));
        assertFalse(lethal.diagram(View.of(List.of("grade")).among(Census.CONCEIVED))
                .loses());
    }

    /** One, two, three, one and so on: at week 1 it is two and at week 2 three, and never two in both. */
    @Test
    void a_path_goes_on_from_where_it_was_seen() {
        CaseState round = new CaseState.Progression(
                Clock.WEEK,
                Distribution.certain("one"),
                Map.of(
                        "one", Distribution.certain("two"),
                        "two", Distribution.certain("three"),
                        "three", Distribution.certain("one")),
                false);
        Model model = Model.builder(
                        "round",
                        "1",
                        Catalogue.builder("round.traits", "1")
                                .trait("phase", "one", "two", "three")
                                .build())
                .locus("A", locus -> locus.alleles("A").shows("A", "x"))
                .trait("phase", rule -> rule.otherwise(round, Optional.empty()))
                .build();
        CompiledModel compiled = CompiledModel.of(model);
        assertEquals(
                1, compiled.evidence(List.of(seen(1, "two"), seen(2, "three"))).size());
        assertEquals(
                0, compiled.evidence(List.of(seen(1, "two"), seen(2, "two"))).size());
        assertEquals(
                1, compiled.evidence(List.of(seen(1, "two"), seen(4, "two"))).size());
    }

    private static Sighting seen(int week, String state) {
        return new Sighting(LifeStage.atWeek(week), Phenotype.of("phase", state));
    }
}
