package org.geneticsrules.ferret;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.inference.LitterLikelihood;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.junit.jupiter.api.Test;

/**
 * How much likelier records are under one model than under another. The litters are invented; the ratios are calculated: the first by hand,
 * the others by a program apart from this library that lists all pairs of parents and all their kits in whole numbers.
 */
class RecordsTest {

    private static final String YOUNG = "week 5, moult 0";
    private static final String GROWN = "week 60, moult 2";

    private final Model common = Ferret.common();

    /** Each silver kit of two one-dose parents weighs 1/2 by dose and 3/4 as a dominant: (2/3)^6. */
    @Test
    void six_silver_kits_weigh_dose_against_dominance() {
        Individual silver = seen("moult 2", "white guard hairs: mostly coloured");
        List<Individual> kits = kits(
                2,
                seen("moult 1", "white guard hairs: none"),
                6,
                seen("moult 1", "white guard hairs: mostly coloured"));
        for (String population : common.populations().keySet()) {
            assertEquals(
                    64 / 729.0,
                    ratio(common, Ferret.hypothesis("silver-dominant"), population, silver, silver, kits),
                    1e-12);
        }
    }

    @Test
    void lightened_kits_of_two_tested_silvers() {
        Individual tested = seen(GROWN, "eye colour: dark")
                .with(new GenotypeTest(Optional.empty(), "M", Set.of("M/m"), Probability.ZERO));
        Model study = Ferret.model("tyr-and-mlph");
        Individual full = seen(YOUNG, "dilution: full, eye colour: dark");
        Individual white = seen(YOUNG, "dilution: near-white, eye colour: dark");
        List<Individual> paled = kits(2, full, 2, white);
        paled.addAll(Collections.nCopies(4, seen(YOUNG, "dilution: lightened, eye colour: dark")));
        assertRatio(0.006979270382911689, common, study, "few carriers", tested, tested, paled);
        assertRatio(0.05783097295117114, common, study, "many carriers", tested, tested, paled);
        List<Individual> dark = kits(6, full, 2, white);
        assertRatio(686.0165690013628, common, study, "few carriers", tested, tested, dark);
        assertRatio(414.21841898727615, common, study, "many carriers", tested, tested, dark);
    }

    @Test
    void pale_kits_of_pale_parents_and_of_an_albino() {
        Model apart = Ferret.hypothesis("pale-apart");
        Individual lightened = seen(GROWN, "dilution: lightened, eye colour: dark");
        Individual sandy = seen(GROWN, "dilution: sandy, eye colour: dark");
        Individual albino = seen(GROWN, "dilution: none, eye colour: pink");
        List<Individual> pale = kits(6, seen(YOUNG, "dilution: lightened, eye colour: dark"), 0, sandy);
        assertRatio(896.0938072232675, common, apart, "few carriers", lightened, sandy, pale);
        assertRatio(434.71327070012563, common, apart, "many carriers", lightened, sandy, pale);
        List<Individual> young = kits(6, seen(YOUNG, "dilution: sandy, eye colour: dark"), 0, sandy);
        assertRatio(286.31416268866894, common, apart, "few carriers", sandy, albino, young);
        assertRatio(23.13860252004582, common, apart, "many carriers", sandy, albino, young);
        assertEquals(
                0.0,
                ratio(
                        common,
                        apart,
                        "few carriers",
                        lightened,
                        sandy,
                        kits(6, seen(YOUNG, "dilution: full, eye colour: dark"), 0, sandy)),
                "full-coloured kits of two pale parents cannot be under one series");
    }

    private static void assertRatio(
            double expected,
            Model one,
            Model other,
            String population,
            Individual sire,
            Individual dam,
            List<Individual> kits) {
        assertEquals(expected, ratio(one, other, population, sire, dam, kits), 1e-9 * expected);
    }

    private static double ratio(
            Model one, Model other, String population, Individual sire, Individual dam, List<Individual> kits) {
        return Math.exp(log(one, population, sire, dam, kits) - log(other, population, sire, dam, kits));
    }

    private static double log(Model model, String population, Individual sire, Individual dam, List<Individual> kits) {
        LitterLikelihood litters = Inference.of(
                        CompiledModel.of(model),
                        Pedigree.builder("invented", "1").build())
                .from(population)
                .litters();
        return litters.log(
                litters.sire(sire),
                litters.dam(dam),
                kits.stream().map(litters::kit).toList());
    }

    private static Individual seen(String stage, String look) {
        return Individual.of("one").with(Observation.of(LifeStage.parse(stage), Phenotype.parse(look)));
    }

    private static List<Individual> kits(int some, Individual first, int more, Individual second) {
        List<Individual> kits = new ArrayList<>(Collections.nCopies(some, first));
        kits.addAll(Collections.nCopies(more, second));
        return kits;
    }
}
