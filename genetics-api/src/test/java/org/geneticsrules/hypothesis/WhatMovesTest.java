package org.geneticsrules.hypothesis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.patch.Patch;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** What moves in a model small enough to foresee it by hand. */
class WhatMovesTest {

    private static Node when(String variable, String... values) {
        return new ObjectBuilder().with(variable, Node.texts(List.of(values))).build();
    }

    private static MovedGenotype firstGenotype(WhatMoves moves) {
        return moves.genotypes().smallest().get(0);
    }

    private static MovedMating firstMating(WhatMoves moves) {
        return moves.matings().smallest().get(0);
    }

    private static Distribution<String> states(Fate fate, String trait) {
        return fate.looks().orElseThrow().map(look -> look.state(trait).orElse("no claim"));
    }

    // ---- silver by dose, silver recessive
    // -----------------------------------------------------------------------------

    @Test
    void of_silver_that_is_recessive_the_smallest_genotype_that_moves_has_one_dose() {
        WhatMoves moves = Sketch.comparison(Sketch.recessive()).whatMoves();
        MovedGenotype one = firstGenotype(moves);
        assertEquals("M/m", moves.apart(one.genotype()).toString());
        assertEquals(Optional.empty(), one.sex());
        assertEquals(Set.of("white hairs"), one.traits());
        assertEquals(Probability.of(3, 4), states(one.before(), "white hairs").probability("few"));
        assertEquals(Distribution.certain("none"), states(one.after(), "white hairs"));
        assertEquals(
                List.of("/loci/M/dominance"),
                one.drivers().stream().map(Change::pointer).toList());
        assertEquals(
                Optional.of("example.silver-recessive"), one.drivers().get(0).patch());
        assertEquals(
                Optional.of(new Moment(LifeStage.atMoult(0), Census.BORN)),
                moves.genotypes().first());
        assertEquals("the reference", text(moves, firstMating(moves).sire()));
        assertEquals("m/m", moves.apart(firstMating(moves).dam()).toString());
        assertEquals(
                "The smallest genotype that moves is M/m, in white hairs, first at moult 0; "
                        + "the smallest mating that moves is the reference x m/m, in white hairs, first at moult 0.",
                moves.verdict());
    }

    /** Whitening then covers the hue of m/m alone: 9 black : 3 white : 4 pink-eyed, calculated by hand. */
    @Test
    void with_silver_recessive_the_cross_of_two_carriers_is_9_3_4_at_every_moult() {
        Model patched = Sketch.patched(Sketch.recessive());
        Genotype parent = Genotype.parse(patched, "C/c B/B M/m W/W");
        for (int moult = 0; moult < 5; moult++) {
            Distribution<Phenotype> kits = Cross.of(patched, parent, parent)
                    .phenotypes(View.of(List.of("hue", "eye")).at(LifeStage.atMoult(moult)));
            assertEquals(Probability.of(9, 16), kits.probability(Phenotype.parse("hue: black, eye: black")));
            assertEquals(Probability.of(3, 16), kits.probability(Phenotype.parse("hue: none, eye: black")));
            assertEquals(Probability.of(4, 16), kits.probability(Phenotype.parse("hue: none, eye: pink")));
        }
    }

    /** At birth a silver of one dose is still black; a third of the way to white leads over the next moults. */
    @Test
    void what_moves_only_later_is_found_at_the_first_stage_at_which_it_does() {
        WhatMoves moves =
                Sketch.comparison(Sketch.recessive()).inTraits(List.of("hue")).whatMoves();
        assertEquals(
                LifeStage.atMoult(1), moves.genotypes().first().orElseThrow().stage());
        assertEquals(LifeStage.atMoult(1), moves.matings().first().orElseThrow().stage());
        assertEquals("M/m", moves.apart(firstGenotype(moves).genotype()).toString());
        // a quarter is half white at birth, and a third of these turn white with the first moult
        assertEquals(
                Probability.of(1, 12),
                states(firstGenotype(moves).before(), "hue").probability("none"));
        assertTrue(Sketch.comparison(Sketch.recessive())
                .inTraits(List.of("hue"))
                .at(LifeStage.atMoult(0))
                .whatMoves()
                .isNothing());
    }

    @Test
    void where_nothing_moves_that_is_proved_at_as_many_stages_as_both_chains_have_states() {
        WhatMoves moves =
                Sketch.comparison(Sketch.recessive()).inTraits(List.of("eye")).whatMoves();
        assertTrue(moves.isNothing());
        assertEquals(1, moves.moments().size());
        assertTrue(moves.verdict().startsWith("Nothing moves: both models foretell the same"), moves.verdict());
        assertTrue(moves.verdict().endsWith("in eye."), moves.verdict());
        Patch dark = Sketch.patch(
                "example.dark",
                Map.of(
                        "/loci/B/dominance",
                        new ObjectBuilder()
                                .with(
                                        "shows",
                                        new ObjectBuilder()
                                                .with("B", "dark")
                                                .with("b", "brown")
                                                .with("B/b", "dark")
                                                .build())
                                .build()),
                List.of(),
                Map.of());
        WhatMoves same = Sketch.comparison(dark).whatMoves();
        assertTrue(same.isNothing(), same.verdict());
        assertEquals(1, same.changes().size());
        assertEquals(6, same.moments().size()); // few, half, all in either model
        assertTrue(same.verdict().endsWith(" at every stage of life."), same.verdict());
    }

    // ---- matings alone
    // ------------------------------------------------------------------------------------------------

    @Test
    void another_recombination_fraction_moves_matings_but_no_genotype() {
        Patch tighter = Sketch.patch(
                "example.tighter",
                Map.of(
                        "/groups/g",
                        new ObjectBuilder()
                                .with("transmission", "autosomal")
                                .with("loci", Node.texts(List.of("B", "W")))
                                .with("recombination", Node.texts(List.of("1/20")))
                                .build()),
                List.of(),
                Map.of());
        WhatMoves moves = Sketch.comparison(tighter)
                .inTraits(List.of("hue", "throat"))
                .at(LifeStage.atBirth())
                .whatMoves();
        assertTrue(moves.genotypes().isEmpty());
        MovedMating one = firstMating(moves);
        assertEquals(
                "[B W]/[b w]",
                moves.apart(one.sire()).restrictedTo(List.of("B", "W")).toString());
        assertEquals("b/b", moves.apart(one.dam()).toString());
        assertEquals(Set.of("hue", "throat"), one.traits()); // neither moves alone
        // a brown kit has the marked strand only by recombination, and shows a bib in 9 of 10
        Phenotype brown = Phenotype.parse("hue: chocolate, throat: bib");
        assertEquals(Probability.of(9, 200), looks(one.before(), brown));
        assertEquals(Probability.of(9, 400), looks(one.after(), brown));
        assertEquals(
                List.of("/groups/g"),
                one.drivers().stream().map(Change::pointer).toList());
        assertTrue(moves.verdict().startsWith("No genotype moves, but matings do; the smallest is "), moves.verdict());
    }

    private static Probability looks(Fate fate, Phenotype look) {
        return fate.looks().orElseThrow().probability(look);
    }

    // ---- loci of one model
    // --------------------------------------------------------------------------------------------

    private static Patch bare(String baseline) {
        return Sketch.patch(
                "example.bare",
                Map.of(
                        "/loci/N",
                        new ObjectBuilder()
                                .with("alleles", Node.texts(List.of("N", "n")))
                                .with("expressions", Node.texts(List.of("haired", "bare")))
                                .with("dominance", Sketch.dominance("N > n", Map.of("N", "haired", "n", "bare")))
                                .build(),
                        "/masks/bare",
                        new ObjectBuilder()
                                .with("when", when("N", "bare"))
                                .with(
                                        "covers",
                                        new ObjectBuilder().with("hue", "none").build())
                                .withAny("over", List.of("albino", "whitened"))
                                .build()),
                List.of(),
                Map.of("N", baseline));
    }

    @Test
    void an_added_locus_is_compared_at_its_baseline_allele() {
        WhatMoves same = Sketch.comparison(bare("N")).whatMoves();
        assertTrue(same.isNothing());
        assertEquals(1, same.limits().size());
        assertTrue(same.limits().get(0).contains("no allele there but N"), same.limits()::toString);
        WhatMoves other = Sketch.comparison(bare("n")).whatMoves();
        assertEquals("the reference", text(other, firstGenotype(other).genotype()));
        assertEquals(
                "n/n",
                firstGenotype(other).counterpart().pair("N").orElseThrow().toString());
        assertEquals(
                Set.of("/loci/N", "/loci/N/dominance", "/masks/bare"),
                Set.copyOf(firstGenotype(other).drivers().stream()
                        .map(Change::pointer)
                        .toList()));
    }

    private static String text(WhatMoves moves, Genotype genotype) {
        Genotype apart = moves.apart(genotype);
        return apart.loci().isEmpty() ? "the reference" : apart.toString();
    }

    @Test
    void a_removed_locus_is_compared_at_its_wild_type_or_at_what_is_stated() {
        Patch without = Sketch.patch(
                "example.without-silver",
                Map.of(),
                List.of("/loci/M", "/traits/white hairs", "/masks/whitened"),
                Map.of());
        Patch albino = Sketch.patch(
                "example.albino",
                Map.of(
                        "/masks/albino",
                        new ObjectBuilder()
                                .with("when", when("C", "albino"))
                                .with(
                                        "covers",
                                        new ObjectBuilder()
                                                .with("hue", "none")
                                                .with("throat", "none")
                                                .with("head", "none")
                                                .build())
                                .build()),
                List.of(),
                Map.of());
        Comparison comparison = Sketch.comparison(without, albino);
        WhatMoves moves = comparison.whatMoves();
        assertTrue(moves.isNothing(), moves.verdict());
        assertEquals(Set.of("white hairs"), moves.onlyBefore());
        assertEquals(Set.of(), moves.onlyAfter());
        WhatMoves silver = comparison.from("M", "m").whatMoves();
        assertEquals("the reference", text(silver, firstGenotype(silver).genotype()));
        assertEquals(
                Optional.of("example.without-silver"),
                silver.changes().stream()
                        .filter(change -> change.pointer().equals("/loci/M"))
                        .findFirst()
                        .orElseThrow()
                        .patch());
    }

    // ---- life and sex
    // -------------------------------------------------------------------------------------------------

    @Test
    void a_lethal_moves_whom_it_kills_and_parents_that_live_to_have_such_kits() {
        Patch lethal = Sketch.patch(
                "example.lethal",
                Map.of(
                        "/viability/two doses",
                        new ObjectBuilder()
                                .with("locus", "M")
                                .with("expressions", Node.texts(List.of("two doses")))
                                .with("birth", "0")
                                .build()),
                List.of(),
                Map.of());
        WhatMoves moves = Sketch.comparison(lethal).inTraits(List.of("eye")).whatMoves();
        MovedGenotype one = firstGenotype(moves);
        assertEquals("m/m", moves.apart(one.genotype()).toString());
        assertEquals(Probability.ONE, one.after().lost());
        assertEquals(Optional.empty(), one.after().looks());
        MovedMating mating = firstMating(moves);
        assertEquals("M/m", moves.apart(mating.sire()).toString());
        assertEquals("M/m", moves.apart(mating.dam()).toString());
        assertEquals(Probability.of(1, 4), mating.after().lost());
        assertEquals(Set.of(), mating.traits()); // eyes are as before in those born
        assertTrue(moves.verdict().contains("in the share that is lost"), moves.verdict());
    }

    @Test
    void where_the_sexes_show_otherwise_the_example_names_the_sex() {
        Patch hens = Sketch.patch(
                "example.sons",
                Map.of(
                        "/loci/B/dominance",
                        new ObjectBuilder()
                                .with("female", Sketch.dominance("B > b", Map.of("B", "dark", "b", "brown")))
                                .with("male", Sketch.dominance("b > B", Map.of("B", "dark", "b", "brown")))
                                .build()),
                List.of(),
                Map.of());
        WhatMoves moves = Sketch.comparison(hens)
                .inTraits(List.of("hue"))
                .at(LifeStage.atBirth())
                .whatMoves();
        assertEquals(Optional.of(Sex.MALE), firstGenotype(moves).sex());
        assertEquals("B/b", moves.apart(firstGenotype(moves).genotype()).toString());
        assertTrue(firstMating(moves).before().looks().orElseThrow().outcomes().stream()
                .allMatch(look -> look.state("sex").isPresent()));
    }

    @Test
    void an_autosomal_locus_on_the_x_is_compared_where_males_carry_one_allele_alone() {
        Patch onX = Sketch.patch(
                "example.on-x",
                Map.of(
                        "/groups/x",
                        new ObjectBuilder()
                                .with("transmission", "X")
                                .with("loci", Node.texts(List.of("C")))
                                .build()),
                List.of(),
                Map.of());
        WhatMoves moves = Sketch.comparison(onX).inTraits(List.of("eye")).whatMoves();
        assertTrue(moves.genotypes().isEmpty());
        // sons of an albino sire and a full-coloured dam are not carriers: c/c x C/C moves nothing seen, but C/C x c/c
        // does
        MovedMating one = firstMating(moves);
        assertEquals("the reference", text(moves, one.sire()));
        assertEquals("c/c", text(moves, one.dam()));
        assertEquals("C/Y", one.sireCounterpart().pair("C").orElseThrow().toString());
        assertEquals(Distribution.certain("black"), states(one.before(), "eye"));
        assertEquals(Probability.of(1, 2), states(one.after(), "eye").probability("pink"));
        assertTrue(moves.limits().get(0).contains("one allele alone"), moves.limits()::toString);
        assertEquals(
                List.of("/groups/x"),
                one.drivers().stream().map(Change::pointer).toList());
    }

    // ---- examples
    // -----------------------------------------------------------------------------------------------------

    @Test
    void as_many_examples_are_given_as_asked_for_and_whether_there_are_more() {
        Comparison comparison = Sketch.comparison(Sketch.recessive()).inTraits(List.of("white hairs"));
        WhatMoves one = comparison.showing(1).whatMoves();
        assertEquals(1, one.genotypes().smallest().size());
        assertTrue(one.genotypes().more());
        WhatMoves all = comparison.showing(1000).whatMoves();
        // M/m, with or without one c; the white of c/c covers it
        assertEquals(
                List.of("M/m", "C/c M/m"),
                all.genotypes().smallest().stream()
                        .map(found -> all.apart(found.genotype()).toString())
                        .toList());
        assertFalse(all.genotypes().more());
        assertThrows(IllegalArgumentException.class, () -> comparison.showing(0));
        assertThrows(IllegalArgumentException.class, () -> comparison.showing(1001));
    }

    @Test
    void a_model_compared_with_itself_differs_in_nothing() {
        WhatMoves moves = Comparison.of(Sketch.BASE, Sketch.BASE).whatMoves();
        assertTrue(moves.isNothing());
        assertEquals(List.of(), moves.changes());
    }

    // ---- what cannot be asked
    // -----------------------------------------------------------------------------------------

    private static String refusal(Comparison comparison) {
        return assertThrows(ProblemsException.class, comparison::whatMoves)
                .problems()
                .get(0)
                .toString();
    }

    @Test
    void what_is_not_known_is_named_with_the_nearest() {
        Comparison comparison = Sketch.comparison(Sketch.recessive());
        String trait = refusal(comparison.inTraits(List.of("hew")));
        assertTrue(trait.contains("unknown trait of either model \"hew\"") && trait.contains("hue"), trait);
        String locus = refusal(comparison.from("MM", "M"));
        assertTrue(locus.contains("unknown locus \"MM\"") && locus.contains("\"M\""), locus);
        String allele = refusal(comparison.from("M", "n"));
        assertTrue(allele.contains("\"n\"") && allele.contains("locus M"), allele);
        String stage = refusal(comparison.at(LifeStage.unstated().in("winter")));
        assertTrue(stage.contains("winter"), stage);
        String need = refusal(comparison.at(LifeStage.atWeek(3)));
        assertTrue(need.contains("moult"), need);
    }

    @Test
    void models_that_cannot_be_compared_are_refused_with_the_reason() {
        Model renamed = Sketch.read(Sketch.MODEL
                .replace("\"M\",\"m\"]", "\"M\",\"x\"]")
                .replace("\"M/m\"", "\"M/x\"")
                .replace("\"m\":\"two doses\"", "\"x\":\"two doses\""));
        WhatMoves moves = Comparison.of(Sketch.BASE, renamed)
                .inTraits(List.of("eye", "white hairs"))
                .whatMoves();
        assertTrue(moves.isNothing()); // of M/M
        assertEquals(2, moves.limits().size());
        assertTrue(moves.limits().get(0).contains("the allele m"), moves.limits()::toString);
        Model others = Sketch.read(Sketch.MODEL
                .replace("\"M\",\"m\"], \"wildType\": \"M\"", "\"y\",\"x\"], \"wildType\": \"y\"")
                .replace("\"M\":\"plain\"", "\"y\":\"plain\"")
                .replace("\"M/m\"", "\"y/x\"")
                .replace("\"m\":\"two doses\"", "\"x\":\"two doses\""));
        assertTrue(refusal(Comparison.of(Sketch.BASE, others)).contains("no allele of locus M in common"));
        Model onY = Sketch.read(Sketch.MODEL
                .replace("\"groups\": { ", "\"groups\": { \"y\": {\"transmission\": \"Y\", \"loci\": [\"C\"]}, ")
                .replace(
                        "\"dominance\": {\"order\": [\"C > c\"], \"shows\"",
                        "\"absent\": \"pigment\", \"dominance\": {\"shows\""));
        String strands = refusal(Comparison.of(Sketch.BASE, onY));
        assertTrue(strands.contains("females have locus C in one model and lack it in the other"), strands);
    }

    @Test
    void traits_that_only_one_models_are_named_and_if_none_is_left_that_is_refused() {
        Patch tail = Sketch.patch(
                "example.tail",
                Map.of(
                        "/traits/tail",
                        new ObjectBuilder()
                                .with("cases", new ObjectBuilder().build())
                                .with("otherwise", "long")
                                .build()),
                List.of(),
                Map.of());
        WhatMoves moves = Sketch.comparison(tail).whatMoves();
        assertEquals(Set.of("tail"), moves.onlyAfter());
        assertTrue(moves.isNothing());
        assertTrue(refusal(Sketch.comparison(tail).inTraits(List.of("tail"))).contains("nothing-to-compare"));
    }

    @Test
    void too_many_stages_are_refused_with_what_to_ask_instead() {
        // four chains of three states each progress together, in either model: 2 x 81 stages are few enough, 2 x 243
        // are not
        TooLargeException large = assertThrows(
                TooLargeException.class,
                () -> Comparison.of(chains(5), chains(5)).whatMoves());
        assertTrue(large.getMessage().contains("state the stage"), large.getMessage());
        assertTrue(Comparison.of(chains(5), chains(5))
                .at(LifeStage.atMoult(2))
                .whatMoves()
                .isNothing());
    }

    private static Model chains(int count) {
        StringBuilder cases = new StringBuilder();
        for (int i = 0; i < count; i++) {
            cases.append(i == 0 ? "" : ", ")
                    .append("\"inner ")
                    .append(i)
                    .append("\": {\"visible\": false, \"states\": [\"a\", \"b\", \"c\"], \"cases\": {}, \"otherwise\": "
                            + "{\"progression\": {\"clock\": \"moult\", \"start\": {\"a\": \"1\"}, "
                            + "\"step\": {\"a\": {\"a\": \"1/2\", \"b\": \"1/2\"}, \"b\": {\"c\": \"1\"}}}}}");
        }
        StringBuilder when = new StringBuilder();
        for (int i = 0; i < count; i++) {
            when.append(i == 0 ? "" : ", ").append("\"inner ").append(i).append("\": [\"c\"]");
        }
        return Sketch.read(
                "{\"formatVersion\": 0, \"kind\": \"model\", \"id\": \"example.chains\", \"version\": \"1\", "
                        + "\"catalogue\": {\"id\": \"example.traits\", \"version\": \"0.1.0\"}, \"loci\": {\"K\": {\"alleles\": [\"K\"], "
                        + "\"expressions\": [\"on\"], \"dominance\": {\"shows\": {\"K\": \"on\"}}}}, \"traits\": {"
                        + cases
                        + ", \"hue\": {\"cases\": {\"all\": {\"when\": {" + when
                        + "}, \"state\": \"none\"}}, \"otherwise\": \"black\"}}}");
    }
}
