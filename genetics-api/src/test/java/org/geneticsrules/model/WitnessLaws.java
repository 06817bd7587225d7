package org.geneticsrules.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.testing.BruteForce;
import org.geneticsrules.testing.Copies;
import org.geneticsrules.testing.DocumentMaps;
import org.geneticsrules.testing.RandomModels;
import org.geneticsrules.testing.RandomModels.Size;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.BoxSet;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Regions of expressions against listed genotypes, and whether the genotype that a conflict names really shows it. */
class WitnessLaws {

    private static final Pattern WITNESS =
            Pattern.compile("for (any genotype|genotype [^:;]*(?::[^ ]+/[^:;]*)*?)(?:: \"|$)");

    @Provide
    Arbitrary<Model> models() {
        return RandomModels.models(Size.SMALL);
    }

    static void dominanceIsReadAlike(Model model) {
        Map<String, Object> document = DocumentMaps.of(model);
        model.loci().forEach((name, locus) -> {
            assertEquals(
                    BruteForce.pairs(document, name),
                    locus.pairs().stream()
                            .map(pair -> pair.alleles().get(0).id() + "/"
                                    + pair.alleles().get(1).id())
                            .toList());
            locus.pairs()
                    .forEach(pair -> assertEquals(
                            BruteForce.expression(
                                    document,
                                    name,
                                    pair.alleles().get(0).id() + "/"
                                            + pair.alleles().get(1).id()),
                            locus.expression(pair, Sex.FEMALE)));
        });
    }

    static void regionsHoldTheGenotypesOfTheirStates(Model model) {
        Map<String, Object> document = DocumentMaps.of(model);
        Regions regions = Regions.of(model);
        for (Map<String, String> genotype : BruteForce.genotypes(document)) {
            Map<String, String> point = new LinkedHashMap<>();
            genotype.forEach((locus, pair) -> point.put(locus, BruteForce.expression(document, locus, pair)));
            for (TraitRule rule : model.rules().values()) {
                Optional<String> own = BruteForce.own(document, genotype, rule.trait());
                for (String state : rule.states()) {
                    assertEquals(
                            own.equals(Optional.of(state)),
                            regions.own(rule.trait(), Allowed.only(state)).contains(point));
                }
                assertEquals(own.isEmpty(), regions.notModelled(rule.trait()).contains(point));
            }
            List<String> active = BruteForce.activeMasks(document, genotype);
            for (Mask mask : model.masks().values()) {
                assertEquals(
                        active.contains(mask.id()), regions.holds(mask.when()).contains(point));
                BoxSet sure = regions.holds(mask.when());
                assertTrue(sure.minus(regions.mayHold(mask.when())).isEmpty());
            }
        }
    }

    static void aWitnessLiesInItsRegion(Model model) {
        Map<String, Object> document = DocumentMaps.of(model);
        Regions regions = Regions.of(model);
        for (TraitRule rule : model.rules().values()) {
            for (String state : rule.states()) {
                Optional<Regions.Witness> witness = regions.witness(regions.own(rule.trait(), Allowed.only(state)));
                boolean reached = BruteForce.genotypes(document).stream()
                        .anyMatch(genotype ->
                                BruteForce.own(document, genotype, rule.trait()).equals(Optional.of(state)));
                assertEquals(reached, witness.isPresent());
                witness.map(Regions.Witness::genotype)
                        .ifPresent(text -> completions(model, text)
                                .forEach(genotype -> assertEquals(
                                        Optional.of(state), BruteForce.own(document, genotype, rule.trait()), text)));
            }
        }
    }

    /** All full genotypes that agree with the text of a witness; the text may leave out loci that do not matter. */
    private static List<Map<String, String>> completions(Model model, String text) {
        Genotype named = Genotype.parse(model, text.equals("any genotype") ? "" : text);
        List<Map<String, String>> all = new ArrayList<>();
        for (Map<String, String> genotype : BruteForce.genotypes(DocumentMaps.of(model))) {
            if (GenotypeSet.of(model, named).contains(RandomModels.genotype(model, genotype))) {
                all.add(genotype);
            }
        }
        return all;
    }

    /** Repeats the condition of a mask in a new one that another new one contradicts, and reads what the check says. */
    static int conflictsNameGenotypesThatShowThem(Model model, int which) {
        List<Mask> masks = new ArrayList<>(model.masks().values());
        if (masks.isEmpty() || model.visibleTraits().isEmpty()) {
            return 0;
        }
        Mask mask = masks.get(which % masks.size());
        String trait = model.visibleTraits().iterator().next();
        List<String> states = model.states(trait);
        ModelBuilder builder = Copies.of(model);
        builder.mask(Mask.of("first spoilt", mask.when()).covering(trait, states.get(0)));
        builder.mask(Mask.of("second spoilt", Condition.always()).covering(trait, states.get(1)));
        try {
            builder.build();
            return 0;
        } catch (ProblemsException refused) {
            Map<String, Object> document = DocumentMaps.of(model);
            int checked = 0;
            for (Problem problem : refused.problems()) {
                assertEquals("mask-conflict", problem.code());
                Matcher witness = WITNESS.matcher(problem.message());
                if (problem.message().contains("\"first spoilt\" and \"second spoilt\"") && witness.find()) {
                    for (Map<String, String> genotype :
                            completions(model, witness.group(1).replaceFirst("^genotype ", ""))) {
                        assertTrue(BruteForce.activeMasks(document, genotype).contains(mask.id()), problem.toString());
                        checked++;
                    }
                }
            }
            return checked;
        }
    }

    @Property(tries = 200)
    void dominance(@ForAll("models") Model model) {
        dominanceIsReadAlike(model);
    }

    @Property(tries = 100)
    void regions(@ForAll("models") Model model) {
        regionsHoldTheGenotypesOfTheirStates(model);
        aWitnessLiesInItsRegion(model);
    }

    @Property(tries = 100)
    void conflicts(@ForAll("models") Model model, @ForAll @IntRange(max = 3) int which) {
        conflictsNameGenotypesThatShowThem(model, which);
    }

    @Test
    @Tag("long")
    void conflicts_with_witnesses_are_common_among_the_models() {
        int checked = 0;
        for (long seed = 0; seed < 50; seed++) {
            checked += conflictsNameGenotypesThatShowThem(RandomModels.model(seed, Size.SMALL), 0) > 0 ? 1 : 0;
        }
        assertTrue(checked >= 15, checked + " of 50");
    }
}
