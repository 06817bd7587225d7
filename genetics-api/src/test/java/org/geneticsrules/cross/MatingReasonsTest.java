package org.geneticsrules.cross;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.explanation.Hidden;
import org.geneticsrules.explanation.MatingExplanation;
import org.geneticsrules.explanation.Segregation;
import org.geneticsrules.explanation.Way;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.View;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.model.Viability;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** What the reasons of a mating say, by hand: which chances were multiplied, what a look hides, and on which statements it rests. */
class MatingReasonsTest {

    private static final Catalogue CATALOGUE = Catalogue.builder("reasons.traits", "1")
            .trait("hue", "black", "brown", "none")
            .trait("spot", "spotted", "plain")
            .build();

    /** Locus A hides locus B where it is a/a. */
    private static ModelBuilder model() {
        return Model.builder("reasons", "1", CATALOGUE)
                .locus(
                        "A",
                        locus -> locus.alleles("A", "a")
                                .dominant("A", "a")
                                .shows("A", "full")
                                .shows("a", "none"))
                .locus(
                        "B",
                        locus -> locus.alleles("B", "b")
                                .dominant("B", "b")
                                .shows("B", "black")
                                .shows("b", "brown"))
                .trait(
                        "hue",
                        rule -> rule.when(Condition.where("A", "none"), "none")
                                .when(Condition.where("A", "full").and("B", "black"), "black")
                                .when(Condition.where("A", "full").and("B", "brown"), "brown"));
    }

    private static MatingExplanation explained(Model model, String sire, String dam, String... traits) {
        return Cross.of(model, Genotype.parse(model, sire), Genotype.parse(model, dam))
                .explain(List.of(traits));
    }

    private static Way way(MatingExplanation reasons, String look) {
        List<Way> ways = reasons.ways().stream()
                .filter(way -> way.phenotype().equals(Phenotype.parse(look)))
                .toList();
        assertEquals(1, ways.size(), ways::toString);
        return ways.get(0);
    }

    /** What kits of a look may carry, by locus. */
    private static Map<String, Distribution<String>> hidden(MatingExplanation reasons, String look) {
        Map<String, Distribution<String>> found = new LinkedHashMap<>();
        for (Hidden one : reasons.hidden()) {
            if (one.phenotype().equals(Phenotype.parse(look))) {
                found.put(one.locus(), one.chances().orElseThrow().map(Object::toString));
            }
        }
        return found;
    }

    private static Distribution<String> carriers(String free, int clear, String carries, int carrying) {
        return Distribution.ofWeights(ImmutableMap.of(free, clear, carries, carrying));
    }

    /** 9 : 3 : 4; two of three black kits carry at either locus; an albino may carry anything at B. */
    @Test
    void two_hybrids_with_an_albino_locus() {
        MatingExplanation reasons = explained(model().build(), "A/a B/b", "A/a B/b", "hue");
        Way black = way(reasons, "hue: black");
        assertEquals(Map.of("A", Probability.of(3, 4), "B", Probability.of(3, 4)), black.factors());
        assertEquals(Probability.of(9, 16), black.probability());
        assertEquals(
                Map.of("A", Probability.of(1, 4)), way(reasons, "hue: none").factors());
        assertEquals(List.of(), black.masks());
        assertEquals(
                Map.of("A", carriers("A/A", 1, "A/a", 2), "B", carriers("B/B", 1, "B/b", 2)),
                hidden(reasons, "hue: black"));
        assertEquals(Map.of("A", carriers("A/A", 1, "A/a", 2)), hidden(reasons, "hue: brown"));
        assertEquals(
                Map.of("B", Distribution.ofWeights(ImmutableMap.of("B/B", 1, "B/b", 2, "b/b", 1))),
                hidden(reasons, "hue: none"));
        assertEquals(1, reasons.cases().size());
        assertEquals(Optional.empty(), reasons.cases().get(0).kit());
        assertEquals(
                Set.of("/loci/A/dominance/order/0", "/loci/B/dominance/order/0"),
                Set.copyOf(reasons.statements().stream()
                        .filter(pointer -> pointer.contains("order"))
                        .toList()));
        assertTrue(reasons.statements().contains("/traits/hue/cases/none"), reasons.statements()::toString);
    }

    @Test
    void a_homozygous_parent_leaves_less_to_hide() {
        MatingExplanation reasons = explained(model().build(), "A/A B/B", "A/A b/b", "hue");
        assertEquals(Probability.ONE, way(reasons, "hue: black").probability());
        assertEquals(Map.of(), hidden(reasons, "hue: black"));
        assertFalse(reasons.statements().contains("/loci/A/dominance/order/0"), reasons.statements()::toString);
        assertTrue(reasons.statements().contains("/loci/B/dominance/order/0"), reasons.statements()::toString);
    }

    /** In coupling, 10 % apart: a kit of the test cross has A with B in 9 of 20; what is needed together is told by the group. */
    @Test
    void linked_loci_are_weighed_by_their_group() {
        Model linked = model().group(LinkageGroup.autosomal("one", List.of("A", "B"), List.of(Probability.of(1, 10))))
                .build();
        MatingExplanation reasons = explained(linked, "[A B]/[a b]", "a/a b/b", "hue");
        assertEquals(
                Map.of("/groups/one", Probability.of(9, 20)),
                way(reasons, "hue: black").factors());
        assertEquals(
                Map.of("A", Probability.of(1, 2)), way(reasons, "hue: none").factors());
        assertTrue(reasons.statements().contains("/groups/one"), reasons.statements()::toString);
        Segregation atA = reasons.cases().get(0).loci().get("A");
        assertEquals(Optional.of("A/a"), atA.sireStrands().map(both -> both.one() + "/" + both.other()));
        assertEquals(Optional.empty(), atA.damStrands());
        assertEquals(carriers("A/a", 1, "a/a", 1), atA.kits().map(Object::toString));
        assertEquals(carriers("full", 1, "none", 1), atA.expressions());
        // of the albino kits 1 in 10 has B from its sire
        assertEquals(Map.of("B", carriers("b/b", 9, "B/b", 1)), hidden(reasons, "hue: none"));
        Model free =
                model().group(LinkageGroup.single(Transmission.MATERNAL, "B")).build();
        MatingExplanation others = explained(free, "A/a b", "A/a B", "hue");
        assertFalse(others.statements().contains("/groups/B"), others.statements()::toString);
    }

    @Test
    void daughters_and_sons_are_cases_of_their_own_where_they_differ() {
        Model linked = model().group(LinkageGroup.single(Transmission.X, "B")).build();
        MatingExplanation reasons = explained(linked, "A/A B/Y", "A/A b/b", "hue");
        assertEquals(2, reasons.cases().size());
        assertEquals(Optional.of(Sex.FEMALE), reasons.cases().get(0).kit());
        assertEquals(Optional.of(Sex.MALE), reasons.cases().get(1).kit());
        for (int number = 0; number < 2; number++) {
            assertEquals(number, reasons.cases().get(number).number());
            assertEquals(Probability.of(1, 2), reasons.cases().get(number).probability());
        }
        assertEquals(0, way(reasons, "hue: black").parents());
        assertEquals(1, way(reasons, "hue: brown").parents());
        assertEquals(Probability.of(1, 2), way(reasons, "hue: brown").probability());
        assertTrue(reasons.statements().contains("/groups/B"), reasons.statements()::toString);
    }

    /** Of two yellows a quarter is lost and two thirds of the rest are yellow (Castle and Little 1910, Science 32:868). */
    @Test
    void who_is_lost_is_part_of_the_reasons() {
        Model lethal = model().locus(
                        "Y",
                        locus -> locus.alleles("Y", "y")
                                .shows("Y", "dies")
                                .shows("Y/y", "yellow")
                                .shows("y", "wild"))
                .trait(
                        "spot",
                        rule -> rule.when(Condition.where("Y", "yellow", "dies"), "spotted")
                                .when(Condition.where("Y", "wild"), "plain"))
                .viability(Viability.lethal("pure", "Y", "dies"))
                .viability(Viability.lethal("albino", "A", "none"))
                .build();
        MatingExplanation reasons = explained(lethal, "A/A Y/y", "A/a Y/y", "spot");
        assertEquals(Probability.of(3, 4), reasons.cases().get(0).counted());
        assertEquals(Probability.of(2, 3), way(reasons, "spot: spotted").probability());
        assertEquals(Map.of(), hidden(reasons, "spot: spotted"));
        assertTrue(reasons.statements().contains("/viability/pure"), reasons.statements()::toString);
        assertTrue(reasons.statements().contains("/loci/Y/dominance/shows/Y"), reasons.statements()::toString);
        assertFalse(reasons.statements().contains("/viability/albino"), reasons.statements()::toString);
        MatingExplanation conceived = Cross.of(
                        lethal, Genotype.parse(lethal, "A/A Y/y"), Genotype.parse(lethal, "A/A Y/y"))
                .explain(View.of(List.of("spot")).among(Census.CONCEIVED));
        assertEquals(Probability.ONE, conceived.cases().get(0).counted());
        assertFalse(conceived.statements().contains("/viability/pure"), conceived.statements()::toString);
        assertEquals(Map.of("Y", carriers("Y/Y", 1, "Y/y", 2)), hidden(conceived, "spot: spotted"));
    }

    @Test
    void a_mutation_that_may_have_happened_is_cited() {
        Model mutating = model().locus(
                        "M",
                        locus -> locus.alleles("M", "m")
                                .dominant("M", "m")
                                .shows("M", "spots")
                                .shows("m", "no spots")
                                .mutation("M", "m", Probability.of(1, 10))
                                .mutation("m", "M", Probability.of(1, 1000)))
                .trait(
                        "spot",
                        rule -> rule.when(Condition.where("M", "spots"), "spotted")
                                .when(Condition.where("M", "no spots"), "plain"))
                .build();
        MatingExplanation pure = explained(mutating, "M/M", "M/M", "spot");
        assertEquals(Probability.of(1, 100), way(pure, "spot: plain").probability());
        assertTrue(pure.statements().contains("/loci/M/mutation/M/m"), pure.statements()::toString);
        assertFalse(pure.statements().contains("/loci/M/mutation/m/M"), pure.statements()::toString);
    }

    /** Three quarters of the animals with the allele show it: 3/4 of 3/4 of the kits; a plain kit may have it all the same. */
    @Test
    void chance_is_one_of_the_factors() {
        CaseState often = new CaseState.Chance(Distribution.ofWeights(ImmutableMap.of("spotted", 3, "plain", 1)));
        Model penetrance = model().trait(
                        "spot",
                        rule -> rule.when("has it", Condition.where("B", "black"), often)
                                .otherwise("plain"))
                .build();
        MatingExplanation reasons = explained(penetrance, "A/A B/b", "A/A B/b", "spot");
        Way spotted = way(reasons, "spot: spotted");
        assertEquals(
                Map.of("B", Probability.of(3, 4), "/traits/spot/cases/has it", Probability.of(3, 4)),
                spotted.factors());
        assertEquals(Probability.of(9, 16), spotted.probability());
        // plain: b/b 4, and 3 of the others, of whom 1 is B/B
        assertEquals(
                Map.of("B", Distribution.ofWeights(ImmutableMap.of("B/B", 1, "B/b", 2, "b/b", 4))),
                hidden(reasons, "spot: plain"));
    }

    @Test
    void the_mask_that_decides_a_look_is_named() {
        Model masked = model().trait("spot", rule -> rule.otherwise("spotted"))
                .mask(Mask.of("albinism", Condition.where("A", "none")).covering("spot", "plain"))
                .build();
        MatingExplanation reasons = explained(masked, "A/a B/B", "A/a B/B", "spot");
        assertEquals(List.of("albinism"), way(reasons, "spot: plain").masks());
        assertEquals(List.of(), way(reasons, "spot: spotted").masks());
        assertTrue(reasons.statements().contains("/masks/albinism"), reasons.statements()::toString);
        List<String> causes = new ArrayList<>();
        reasons.hidden().forEach(one -> one.causes().forEach(cause -> causes.add(one.locus() + " " + cause)));
        assertEquals(List.of("A dominant allele A"), causes);
    }

    /** Who is lost is decided by a locus that nobody asked about, next door to one that is asked about. */
    @Test
    void a_loss_on_the_same_chromosome_rests_on_its_own_dominance() {
        Model lethal = model().locus(
                        "L",
                        locus -> locus.alleles("L", "l")
                                .shows("L", "lives")
                                .shows("L/l", "lives too")
                                .shows("l", "dies"))
                .group(LinkageGroup.autosomal("one", List.of("A", "L"), List.of(Probability.of(1, 10))))
                .viability(Viability.lethal("lost", "L", "dies"))
                .build();
        MatingExplanation reasons = explained(lethal, "[A L]/[a l] B/B", "[A L]/[a l] B/B", "hue");
        assertEquals(Probability.of(3, 4), reasons.cases().get(0).counted());
        assertTrue(
                reasons.statements()
                        .containsAll(List.of(
                                "/groups/one",
                                "/viability/lost",
                                "/loci/L/dominance/shows/l",
                                "/loci/L/dominance/shows/L~1l")),
                reasons.statements()::toString);
        // of 400: a/a with l/l are 81 and die; a/a with L/l 18, with L/L 1, so that 19 of 300 are albino
        assertEquals(Probability.of(19, 300), way(reasons, "hue: none").probability());
    }

    /** Which mask decides may itself be drawn: an animal that is plain is veiled, a spotted one is not. */
    @Test
    void a_mask_that_chance_decides_is_named_on_its_own_ways_only() {
        CaseState even = new CaseState.Chance(Distribution.ofWeights(ImmutableMap.of("spotted", 1, "plain", 1)));
        Model veiled = model().trait("spot", rule -> rule.otherwise(even, Optional.empty()))
                .mask(Mask.of("veil", Condition.where("spot", "plain")).covering("hue", "none"))
                .build();
        MatingExplanation reasons = explained(veiled, "A/A B/B", "A/A B/B", "hue");
        assertEquals(List.of("veil"), way(reasons, "hue: none").masks());
        assertEquals(List.of(), way(reasons, "hue: black").masks());
        assertEquals(
                Map.of("/traits/spot/otherwise", Probability.of(1, 2)),
                way(reasons, "hue: none").factors());
    }

    /** What a look may hide is listed in the order of the locus, whichever way comes first. */
    @Test
    void alternatives_are_listed_as_the_locus_lists_them() {
        CaseState often = new CaseState.Chance(Distribution.ofWeights(ImmutableMap.of("spotted", 3, "plain", 1)));
        Model reversed = Model.builder("reasons", "1", CATALOGUE)
                .locus(
                        "B",
                        locus -> locus.alleles("B", "b")
                                .expressions("brown", "black")
                                .dominant("B", "b")
                                .shows("B", "black")
                                .shows("b", "brown"))
                .trait(
                        "spot",
                        rule -> rule.when("has it", Condition.where("B", "black"), often)
                                .otherwise("plain"))
                .build();
        MatingExplanation reasons = explained(reversed, "B/b", "B/b", "spot");
        Hidden plain = reasons.hidden().stream()
                .filter(one -> one.phenotype().equals(Phenotype.of("spot", "plain")))
                .findFirst()
                .orElseThrow();
        assertEquals("[B/B, B/b, b/b]", plain.alternatives().toString());
        assertEquals(
                "[dominant allele B, chance, which may give the same spot either way]",
                plain.causes().toString());
    }

    /** Pure at either end look alike only with the other locus on the other side, so that neither dominance nor a mask hides them. */
    @Test
    void what_two_ways_to_one_look_hide() {
        Model model = Model.builder("reasons", "1", CATALOGUE)
                .locus(
                        "U",
                        locus -> locus.alleles("U", "u")
                                .shows("U", "one kind")
                                .shows("U/u", "mixed")
                                .shows("u", "other kind"))
                .locus(
                        "B",
                        locus -> locus.alleles("B", "b")
                                .dominant("B", "b")
                                .shows("B", "black")
                                .shows("b", "brown"))
                .trait(
                        "hue",
                        rule -> rule.when(
                                        "one",
                                        Condition.where("U", "one kind").and("B", "black"),
                                        new CaseState.Certain("black"))
                                .when(
                                        "other",
                                        Condition.where("U", "other kind").and("B", "brown"),
                                        new CaseState.Certain("black"))
                                .otherwise("brown"))
                .build();
        MatingExplanation reasons = explained(model, "U/u B/b", "U/u B/b", "hue");
        Hidden atU = reasons.hidden().stream()
                .filter(one -> one.phenotype().equals(Phenotype.of("hue", "black"))
                        && one.locus().equals("U"))
                .findFirst()
                .orElseThrow();
        assertEquals(
                Distribution.ofWeights(ImmutableMap.of("U/U", 3, "u/u", 1)),
                atU.chances().orElseThrow().map(Object::toString));
        assertEquals("[the same look through locus B]", atU.causes().toString());
    }
}
