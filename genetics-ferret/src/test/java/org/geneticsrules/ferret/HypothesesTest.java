package org.geneticsrules.ferret;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.evidence.Evidence;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.expression.View;
import org.geneticsrules.hypothesis.Comparison;
import org.geneticsrules.hypothesis.WhatMoves;
import org.geneticsrules.json.Documents;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.model.Statement;
import org.geneticsrules.patch.Patch;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The rival hypotheses that are shipped as patches of the default model. */
class HypothesesTest {

    private static final View PALE = View.of(List.of("dilution", "eye colour")).at(LifeStage.atMoult(0));

    static Stream<Patch> patches() {
        return Ferret.REGISTRY.patches(Ferret.common()).stream();
    }

    @ParameterizedTest
    @MethodSource("patches")
    void a_hypothesis_is_graded_as_one_and_says_where_it_comes_from(Patch patch) {
        Model model = Documents.reader().apply(Ferret.common(), List.of(patch));
        assertTrue(patch.title().isPresent());
        assertEquals(
                patch.evidence().size() + Ferret.common().evidence().size(),
                model.evidence().size());
        for (String name : patch.evidence().keySet()) {
            Evidence evidence = model.evidence().get(name);
            assertEquals(Grade.CONJECTURE, evidence.grade());
            assertTrue(evidence.sources().get(0).length() > 20, evidence::toString);
        }
        for (Statement statement : model.statements().values()) {
            assertTrue(statement.evidence().isPresent(), statement::toString);
        }
        assertEquals(Ferret.cautions(), Ferret.REGISTRY.cautions(model).get(0));
        assertEquals(Ferret.catalogue().reference(), model.catalogue().reference());
    }

    @Test
    void a_pale_kit_of_pale_and_albino_proves_nothing_by_itself() {
        Model series = Ferret.common();
        Model apart = Ferret.hypothesis("sandy-apart");
        Distribution<Phenotype> first = kits(series, "cs/cs M/M", "c/c M/M");
        Distribution<Phenotype> second = kits(series, "cs/c M/M", "cs/c M/M");
        // The albino hides the other recessive in double dose: both generations are alike under both models.
        assertEquals(first, kits(apart, "C/C M/M s/s", "c/c M/M s/s"));
        assertEquals(second, kits(apart, "C/c M/M s/s", "C/c M/M s/s"));
        // An albino that does not hide it tells the two apart in the first generation.
        assertNotEquals(first, kits(apart, "C/C M/M s/s", "c/c M/M S/S"));
    }

    /** Under separate loci the first generation of two pale parents is full-coloured; under one series none of it is. */
    @Test
    void full_coloured_kits_of_two_pale_parents_prove_two_loci() {
        Model apart = Ferret.hypothesis("pale-apart");
        Phenotype full = Phenotype.parse("dilution: full, eye colour: dark");
        assertEquals(
                Probability.ONE,
                kits(apart, "C/C M/M T/T s/s", "C/C M/M t/t S/S").probability(full));
        assertEquals(
                Probability.ZERO,
                kits(Ferret.common(), "cs/cs M/M", "cl/cl M/M").probability(full));
        // The trap again: what the albino hides makes both generations alike.
        assertEquals(kits(Ferret.common(), "cl/cl M/M", "c/c M/M"), kits(apart, "C/C M/M t/t S/S", "c/c M/M t/t S/S"));
        assertEquals(kits(Ferret.common(), "cl/c M/M", "cl/c M/M"), kits(apart, "C/c M/M t/t S/S", "C/c M/M t/t S/S"));
    }

    @Test
    void a_rival_of_the_dark_eyed_white_foretells_it_where_it_says_and_nowhere_else() {
        Map<String, List<Integer>> quarters = new LinkedHashMap<>();
        for (String rival : List.of("default", "silver", "old-silver", "pale-step", "marking")) {
            Model model = rival.equals("default") ? Ferret.common() : Ferret.hypothesis("dark-eyed-white-is-" + rival);
            quarters.put(rival, List.of(white(model, "M/m"), white(model, "C/ce"), white(model, "W/w")));
        }
        assertEquals(
                Map.of(
                        "default", List.of(1, 1, 0),
                        "silver", List.of(1, -1, 0),
                        "old-silver", List.of(0, -1, 0),
                        "pale-step", List.of(0, 1, 0),
                        "marking", List.of(1, -1, 1)),
                quarters);
    }

    /** Quarters of kits that are white with dark eyes from the start; -1 if the model has no such genotype. */
    private static int white(Model model, String carriers) {
        if (carriers.equals("C/ce") && !model.locus("C").alleles().containsKey("ce")) {
            return -1;
        }
        Genotype parent = wildExceptFor(model, carriers);
        Probability share = Cross.of(model, parent, parent)
                .phenotypes(PALE)
                .probability(Phenotype.parse("dilution: near-white, eye colour: dark"));
        assertTrue(share.equals(Probability.ZERO) || share.equals(Probability.of(1, 4)), share::toString);
        return share.equals(Probability.ZERO) ? 0 : 1;
    }

    private static Genotype wildExceptFor(Model model, String text) {
        return Genotype.of(
                model,
                GenotypeSet.parse(model, text, OmittedLoci.WILD_TYPE).boxes().get(0).values().stream()
                        .map(pairs -> pairs.get(0))
                        .toList());
    }

    @Test
    void what_a_patch_does_not_speak_of_stays_where_it_is() {
        List<String> marksAndHue = List.of("eye colour", "head white", "knees", "coat length", "trunk depth");
        for (String rival : List.of("pale-apart", "dark-eyed-white-is-old-silver", "dark-eyed-white-is-pale-step")) {
            assertTrue(moves(rival, List.of("eye colour", "coat length")).isNothing(), rival);
        }
        for (String rival : List.of("dark-eyed-white-is-old-silver", "dark-eyed-white-is-pale-step")) {
            assertFalse(moves(rival, List.of("dilution")).isNothing(), rival);
        }
        assertTrue(moves("pale-apart", marksAndHue).isNothing());
        assertTrue(moves("pale-apart", List.of("hue", "white guard hairs")).isNothing());
        assertFalse(moves("dark-eyed-white-is-old-silver", marksAndHue).isNothing(), "a white coat hides marks");
    }

    /** The steps of the series and the loci of their own are in one model each: what moves is told of animals that carry them. */
    @Test
    void of_separate_pale_loci_only_those_who_carry_them_are_told() {
        WhatMoves without = moves("pale-apart", List.of("dilution"));
        assertTrue(without.isNothing());
        assertFalse(without.limits().isEmpty(), "steps that only one model has are named");
        for (String locus : List.of("S", "T")) {
            WhatMoves carrying = Comparison.of(
                            Ferret.common(), Ferret.hypothesis("pale-apart"), List.of(patch("pale-apart")))
                    .from(locus, locus.toLowerCase(Locale.ROOT))
                    .inTraits(List.of("dilution"))
                    .at(LifeStage.atMoult(0))
                    .whatMoves();
            assertFalse(carrying.isNothing(), locus);
        }
    }

    private static WhatMoves moves(String name, List<String> traits) {
        return Comparison.of(Ferret.common(), Ferret.hypothesis(name), List.of(patch(name)))
                .inTraits(traits)
                .at(LifeStage.parse("week 30, moult 0, winter"))
                .whatMoves();
    }

    /** Of eyes the three models foretell the same of every genotype and every mating: no record of eyes tells one from another. */
    @Test
    void eyes_do_not_tell_the_models_of_dna_from_the_default() {
        for (String name : List.of("molecular-only", "tyr-and-mlph")) {
            WhatMoves moves = Comparison.of(Ferret.common(), Ferret.model(name))
                    .inTraits(List.of("eye colour", "nose colour"))
                    .whatMoves();
            assertTrue(moves.isNothing(), moves::toString);
        }
        WhatMoves paled = Comparison.of(Ferret.common(), Ferret.model("tyr-and-mlph"))
                .inTraits(List.of("dilution"))
                .at(LifeStage.atMoult(0))
                .whatMoves();
        assertFalse(paled.isNothing());
    }

    @Test
    void hypotheses_about_different_statements_are_held_together() {
        Model model = Documents.reader()
                .apply(
                        Ferret.common(),
                        List.of(patch("silver-recessive"), patch("low-white-threshold"), patch("long-coat-by-dose")));
        Genotype carrier = Genotype.parse(model, "C/C M/m W/w W2/w2 L/l");
        View view = View.of(List.of("white guard hairs", "coat length")).at(LifeStage.atMoult(0));
        assertEquals(
                3 * 3,
                Cross.of(model, carrier, carrier).phenotypes(view).outcomes().size());
    }

    @Test
    void hypotheses_about_one_statement_are_rivals() {
        ProblemsException refusal = assertThrows(
                ProblemsException.class,
                () -> Documents.reader()
                        .apply(Ferret.common(), List.of(patch("silver-recessive"), patch("silver-dominant"))));
        assertEquals("patches-overlap", refusal.problems().get(0).code());
    }

    private static Patch patch(String name) {
        return Ferret.REGISTRY.patch("geneticsrules.ferret." + name);
    }

    private static Distribution<Phenotype> kits(Model model, String sire, String dam) {
        return Cross.of(model, Genotype.parse(model, sire), Genotype.parse(model, dam))
                .phenotypes(PALE);
    }
}
