package org.geneticsrules.comparison;

import static org.geneticsrules.testing.Coats.DARK;
import static org.geneticsrules.testing.Coats.LIGHT;
import static org.geneticsrules.testing.Coats.seen;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.model.Viability;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.testing.Coats;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Confusion;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.junit.jupiter.api.Test;

/** Models held against litters, with numbers worked by hand. */
class ModelComparisonTest {

    private static final double EXACT = 1e-9;

    private static ComparedModels compare(Pedigree pedigree, Model... models) {
        List<Candidate> candidates = new ArrayList<>();
        for (Model model : models) {
            candidates.add(Candidate.of(model));
        }
        return ModelComparison.of(candidates, pedigree).from("even").compare();
    }

    /**
     * Yellow mice mated with one another: 263 yellow and 100 of other colours (Cuénot 1905, from memory) are nearer to 3 : 1 than to the
     * 2 : 1 of a dominant allele that is lethal in double dose, which is true; 800 and 435 (Castle and Little 1910, Science 32:868, from
     * memory) are not. The small sample picks the wrong model, and does not reach the bar.
     */
    @Test
    void a_small_sample_picks_the_wrong_model() {
        ComparedModels small = compare(Coats.ofCarriers(263, 100), Coats.lethal(), Coats.recessive());
        double ratio = 263 * Math.log(9.0 / 8) + 100 * Math.log(3.0 / 4);
        assertEquals(ratio, small.logRatio(1, 0).orElseThrow(), EXACT);
        assertEquals(OptionalInt.of(1), small.best());
        assertEquals(20, small.bar(), 1e-12);
        assertEquals(OptionalInt.empty(), small.reached(1, 0, small.bar()));
        ComparedModels large = compare(Coats.ofCarriers(800, 435), Coats.lethal(), Coats.recessive());
        assertEquals(OptionalInt.of(0), large.best());
        assertEquals(OptionalInt.of(0), large.reached(0, 1, large.bar()));
        assertEquals(
                (800 * Math.log(8.0 / 9) + 435 * Math.log(4.0 / 3)) / Math.log(10),
                large.lod(0, 1).orElseThrow(),
                EXACT);
    }

    /**
     * Two dark parents of populations in which the light allele is as common as the other: each carries it with 2/3. Of three kits one is
     * light, so both carry it: 4/9 of pairs, and 3/4 3/4 1/4.
     */
    @Test
    void uncertain_parents_are_summed_over() {
        PedigreeBuilder builder =
                Pedigree.builder("pair", "1").add(seen("sire", DARK)).add(seen("dam", DARK));
        Pedigree pedigree = Coats.litter(builder, "litter", "", 2, 1, Ascertainment.complete())
                .build();
        ComparedModels compared = compare(pedigree, Coats.recessive());
        assertEquals(Math.log(4.0 / 9 * 9 / 64), compared.log(0), EXACT);
        // with the records of the parents, 3/4 of all animals are dark
        ComparedModels counting = ModelComparison.of(List.of(Candidate.of(Coats.recessive())), pedigree)
                .from("even")
                .countingParents()
                .compare();
        assertEquals(Math.log(9.0 / 16 * 4 / 9 * 9 / 64), counting.log(0), EXACT);
    }

    /** Litters of the same parents are not independent: after a light kit, both carry, and 3/4 of the next litter are dark. */
    @Test
    void a_litter_is_judged_by_what_earlier_ones_showed() {
        PedigreeBuilder builder =
                Pedigree.builder("pair", "1").add(seen("sire", DARK)).add(seen("dam", DARK));
        Coats.litter(builder, "first", "", 0, 1, Ascertainment.complete());
        Pedigree pedigree = Coats.litter(builder, "second", "", 2, 0, Ascertainment.complete())
                .build();
        ComparedModels compared = compare(pedigree, Coats.recessive());
        assertEquals(Math.log(4.0 / 9 / 4), compared.litter(0).logs().get(0), EXACT);
        assertEquals(Math.log(9.0 / 16), compared.litter(1).logs().get(0), EXACT);
        assertEquals(0, compared.litter(1).kindred());
        // without the first, the second is 4/9 9/16 + 5/9
        assertEquals(
                Math.log(4.0 / 9 * 9 / 16 + 5.0 / 9),
                compared.leavingOut().get(0).logs().get(0),
                EXACT);
    }

    /**
     * Of two carriers and three kits, a litter is noticed by a light kit with 1 - (3/4)^3 = 37/64; so one of three is light with
     * (27/64) / (37/64) among those that are (Fisher 1934, Annals of Eugenics 6:13, from memory, for the principle).
     */
    @Test
    void a_litter_noticed_by_a_kit_is_one_of_those_with_such_kits() {
        Pedigree pedigree = Coats.litter(
                        Coats.carriers(Pedigree.builder("carriers", "1"), ""),
                        "litter",
                        "",
                        2,
                        1,
                        Ascertainment.atLeastOne(LIGHT))
                .build();
        // which of the three is light makes no difference to a sequence
        assertEquals(
                Math.log(9.0 / 64 / (37.0 / 64)),
                compare(pedigree, Coats.recessive()).log(0),
                EXACT);
    }

    /** If each light kit is noticed with 1/3, a litter of three carriers' kits is with 1 - (3/4 + 1/4 2/3)^3; two of two are with 1 - 4/9. */
    @Test
    void probands_are_counted_or_not() {
        double noticed = 1 - Math.pow(11.0 / 12, 3);
        for (boolean counted : new boolean[] {true, false}) {
            Ascertainment how = new Ascertainment.Probands(
                    Sighting.of(LIGHT), Probability.of(1, 3), counted ? OptionalInt.of(1) : OptionalInt.empty());
            Pedigree pedigree = Coats.litter(
                            Coats.carriers(Pedigree.builder("carriers", "1"), ""), "litter", "", 1, 2, how)
                    .build();
            double kits = 3.0 / 64;
            double found = counted ? 1.0 / 3 * 2 / 3 : 5.0 / 9;
            assertEquals(
                    Math.log(kits * found / noticed),
                    compare(pedigree, Coats.recessive()).log(0),
                    EXACT);
        }
    }

    /** Dark parents chosen because they had a light kit both carry, so a litter of theirs has 3/4 dark kits. */
    @Test
    void chosen_parents_had_an_earlier_kit() {
        PedigreeBuilder builder =
                Pedigree.builder("pair", "1").add(seen("sire", DARK)).add(seen("dam", DARK));
        Pedigree pedigree = Coats.litter(
                        builder, "litter", "", 2, 0, new Ascertainment.ParentsChosen(Sighting.of(LIGHT)))
                .build();
        assertEquals(Math.log(9.0 / 16), compare(pedigree, Coats.recessive()).log(0), EXACT);
    }

    /** How a litter came to be recorded must go with what is recorded of it. */
    @Test
    void ascertainment_unlike_the_records_is_refused() {
        Pedigree none = Coats.litter(
                        Coats.carriers(Pedigree.builder("carriers", "1"), ""),
                        "litter",
                        "",
                        3,
                        0,
                        Ascertainment.atLeastOne(LIGHT))
                .build();
        ProblemsException refused = assertThrows(ProblemsException.class, () -> compare(none, Coats.recessive()));
        assertTrue(refused.getMessage().contains("litter litter"), refused.getMessage());
    }

    /** Dark parents of a light kit cannot be where light is dominant: any one of the three records decides it. */
    @Test
    void one_kit_that_cannot_be_is_looked_at_again() {
        PedigreeBuilder builder =
                Pedigree.builder("pair", "1").add(seen("sire", DARK)).add(seen("dam", DARK));
        Pedigree pedigree = Coats.litter(builder, "litter", "", 5, 1, Ascertainment.complete())
                .build();
        ComparedModels compared = compare(pedigree, Coats.dominant(), Coats.recessive());
        assertTrue(compared.impossible(0));
        assertEquals(Double.POSITIVE_INFINITY, compared.logRatio(1, 0).orElseThrow());
        assertEquals(
                List.of(new ComparedModels.Recheck(List.of("litter"), List.of("sire", "dam", "litter.5"))),
                compared.recheck(0));
        assertEquals(List.of(), compared.recheck(1));
        // one in a hundred misread: finite, and by hand for the kit alone, if parents are known by their looks to be
        // dark
        ComparedModels misread = ModelComparison.of(
                        List.of(Candidate.of(Coats.dominant()), Candidate.of(Coats.recessive())), pedigree)
                .from("even")
                .with(Confusions.of(List.of(
                        new Confusion("coat", "light", "dark", Optional.empty(), Probability.of(1, 100)),
                        new Confusion("coat", "dark", "light", Optional.empty(), Probability.of(1, 100)))))
                .compare();
        assertFalse(misread.impossible(0));
    }

    /** Two light parents with a dark kit: impossible at one locus, possible at two (complementation). */
    @Test
    void two_loci_complement_one_another() {
        PedigreeBuilder builder =
                Pedigree.builder("pair", "1").add(seen("sire", LIGHT)).add(seen("dam", LIGHT));
        Pedigree pedigree = Coats.litter(builder, "litter", "", 4, 0, Ascertainment.complete())
                .build();
        ComparedModels compared = compare(pedigree, Coats.recessive(), Coats.twoLoci());
        assertTrue(compared.impossible(0));
        assertFalse(compared.impossible(1));
        assertEquals(OptionalInt.of(0), compared.reached(1, 0, 20));
        assertEquals(List.of(0.0, 1.0), compared.posteriors());
    }

    /** Dates decide the order; a daughter's litter comes after the one that she is from, and her look is data there. */
    @Test
    void related_litters_are_one_kindred() {
        PedigreeBuilder builder = Pedigree.builder("kindred", "1")
                .add(seen("sire", DARK))
                .add(seen("dam", LIGHT))
                .add(seen("other", LIGHT))
                .add(seen("daughter", DARK).with(Sex.FEMALE))
                .add(seen("grandchild", LIGHT))
                .add(Litter.of("second", "daughter", "other", "grandchild"))
                .add(Litter.of("first", "dam", "sire", "daughter"));
        ComparedModels compared = compare(builder.build(), Coats.recessive());
        assertEquals(
                List.of("first", "second"),
                compared.litters().stream().map(LitterEvidence::litter).toList());
        // a daughter: half as likely as each sex; dark with 2/3 (sire D/D 1/3, D/d 2/3); then a carrier, and half of
        // her kits are light
        assertEquals(Math.log(2.0 / 3 / 2), compared.litter(0).logs().get(0), EXACT);
        assertEquals(Math.log(1.0 / 2), compared.litter(1).logs().get(0), EXACT);
        assertEquals(3, compared.kits() + 1);
    }

    @Test
    void information_criteria_count_what_was_fitted() {
        Pedigree pedigree = Coats.ofCarriers(9, 3);
        ComparedModels compared = ModelComparison.of(
                        List.of(
                                Candidate.of(Coats.recessive()),
                                Candidate.of(Coats.lethal()).fitted(2)),
                        pedigree)
                .from("even")
                .compare();
        assertEquals(-2 * compared.log(0), compared.aic(0), EXACT);
        assertEquals(4 - 2 * compared.log(1), compared.aic(1), EXACT);
        assertEquals(2 * Math.log(12) - 2 * compared.log(1), compared.bic(1), EXACT);
    }

    /**
     * If a model is true and was named beforehand, the running ratio of another over it reaches 20 in at most one of twenty sequences (Ville
     * 1939, from memory). Of 2,000 seeded sequences of 20 litters with six kits each, drawn here by 3 : 1 with nothing of the library.
     */
    @Test
    void a_true_model_is_seldom_rejected_however_often_one_looks() {
        SplittableRandom random = new SplittableRandom(20_261_127);
        int reached = 0;
        int sequences = 2_000;
        for (int s = 0; s < sequences; s++) {
            double running = 0;
            boolean ever = false;
            int[] light = new int[20];
            for (int t = 0; t < light.length; t++) {
                for (int k = 0; k < 6; k++) {
                    light[t] += random.nextInt(4) == 0 ? 1 : 0;
                }
                // the same by hand
                running += light[t] * Math.log(4.0 / 3) + (6 - light[t]) * Math.log(8.0 / 9);
                ever |= running >= Math.log(20);
            }
            reached += ever ? 1 : 0;
            if (s % 100 == 0) {
                PedigreeBuilder builder = Coats.carriers(Pedigree.builder("sequence", "1"), "");
                for (int t = 0; t < light.length; t++) {
                    Coats.litter(builder, "l" + t, "", 6 - light[t], light[t], Ascertainment.complete());
                }
                ComparedModels compared = compare(builder.build(), Coats.recessive(), Coats.lethal());
                double[] path = compared.running(1, 0);
                assertEquals(running, path[path.length - 1], EXACT);
                assertEquals(ever, compared.reached(1, 0, compared.bar()).isPresent());
            }
        }
        assertTrue(reached > 10 && reached <= sequences / 20, reached + " of " + sequences);
    }

    /** What states and loci are called, and what only one model knows, changes no ratio. */
    @Test
    void names_and_what_one_model_knows_change_no_ratio() {
        double plain = ratio("dark", "light", false);
        assertEquals(3 * Math.log(9.0 / 8) + 2 * Math.log(3.0 / 4), plain, EXACT);
        assertEquals(plain, ratio("dunkel", "hell", false), EXACT);
        assertEquals(plain, ratio("dark", "light", true), EXACT);
    }

    private static double ratio(String dark, String light, boolean ears) {
        Catalogue.Builder traits = Catalogue.builder("names", "1").trait("coat", dark, light);
        Catalogue catalogue = (ears ? traits.trait("ears", "long", "short") : traits).build();
        List<Candidate> candidates = new ArrayList<>();
        for (String id : List.of("lethal", "recessive")) {
            ModelBuilder model = Model.builder(id, "1", catalogue)
                    .locus(
                            id.equals("lethal") ? "K" : "A",
                            at -> at.alleles("D", "d")
                                    .shows("D", "two doses")
                                    .shows("D/d", "one dose")
                                    .shows("d", "none"))
                    .trait(
                            "coat",
                            rule -> rule.when(Condition.where(id.equals("lethal") ? "K" : "A", "none"), light)
                                    .otherwise(dark))
                    .population(
                            "even",
                            one -> one.frequency(id.equals("lethal") ? "K" : "A", "D", Probability.of(1, 2))
                                    .frequency(id.equals("lethal") ? "K" : "A", "d", Probability.of(1, 2)));
            if (id.equals("lethal")) {
                model.viability(new Viability(
                        "lost",
                        "K",
                        Set.of("two doses"),
                        Optional.empty(),
                        Probability.ZERO,
                        Probability.ONE,
                        Optional.empty()));
            } else if (ears) {
                model.trait("ears", rule -> rule.otherwise("long"));
            }
            candidates.add(Candidate.of(model.build()));
        }
        // parents of a light kit that are dark carry one dose each, whatever else differs
        PedigreeBuilder builder = Pedigree.builder("names", "1");
        List<String> kits = new ArrayList<>();
        for (String id : List.of("sire", "dam", "k1", "k2", "k3", "k4", "k5", "k0")) {
            String coat = id.equals("k4") || id.equals("k5") || id.equals("k0") ? light : dark;
            Phenotype look = Phenotype.of("coat", coat);
            Individual one = seen(id, look);
            builder.add(
                    ears && id.startsWith("k")
                            ? one.with(Observation.of(LifeStage.unstated(), Phenotype.of("ears", "long")))
                            : one);
            if (id.startsWith("k") && !id.equals("k0")) {
                kits.add(id);
            }
        }
        builder.add(Litter.of("first", "dam", "sire", "k0").with(Ascertainment.complete()));
        builder.add(
                Litter.of("second", "dam", "sire", kits.toArray(String[]::new)).with(Ascertainment.complete()));
        ComparedModels compared =
                ModelComparison.of(candidates, builder.build()).from("even").compare();
        assertEquals(ears ? 1 : 0, compared.records().dropped().size());
        LitterEvidence second = compared.litter(1);
        return second.logs().get(1) - second.logs().get(0);
    }

    /** The bar is 20 for each rival. */
    @Test
    void bars_rise_with_the_number_of_rivals() {
        Pedigree pedigree = Coats.ofCarriers(9, 3);
        assertEquals(
                40,
                compare(pedigree, Coats.recessive(), Coats.lethal(), Coats.recessive("other", Probability.of(1, 3)))
                        .bar(),
                1e-12);
        assertThrows(IllegalArgumentException.class, () -> ComparedModels.bar(0, 2));
        assertThrows(ProblemsException.class, () -> compare(pedigree, Coats.recessive(), Coats.recessive()));
        assertTrue(compare(pedigree, Coats.recessive(), Coats.recessive("other", Probability.of(1, 3)))
                .alike(0, 1));
    }

    /** Kits that were scored and are not listed count where a litter is noticed by any of them. */
    @Test
    void unlisted_kits_count_for_notice() {
        Individual light = seen("kit", LIGHT);
        Pedigree pedigree = Coats.carriers(Pedigree.builder("carriers", "1"), "")
                .add(light)
                .add(Litter.of("litter", "dam", "sire", "kit").counting(3, 3).with(Ascertainment.atLeastOne(LIGHT)))
                .build();
        assertEquals(
                Math.log(1.0 / 4 / (37.0 / 64)),
                compare(pedigree, Coats.recessive()).log(0),
                EXACT);
        assertEquals(
                1, IntStream.of(compare(pedigree, Coats.recessive()).size()).sum());
    }
}
