package org.geneticsrules.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import org.apache.commons.statistics.inference.ChiSquareTest;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Recombination;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.model.Viability;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Ratios of textbooks come out of drawn litters, and rival ratios do not (Pearson's chi-squared test). Seeds are fixed, so a test that passes
 * once does always.
 */
@Tag("default-jdk")
class TextbookDrawsTest {

    private static final int LITTERS = 2_000;

    /** Two loci, each seen in a trait of its own; with a group, if one is stated. */
    private static Model twoTraits(Optional<Recombination> recombination) {
        ModelBuilder builder = Model.builder(
                        "two",
                        "1",
                        Catalogue.builder("two.traits", "1")
                                .trait("form", "round", "wrinkled")
                                .trait("colour", "yellow", "green")
                                .build())
                .locus(
                        "R",
                        at -> at.alleles("R", "r")
                                .dominant("R", "r")
                                .shows("R", "R")
                                .shows("r", "r"))
                .locus(
                        "Y",
                        at -> at.alleles("Y", "y")
                                .dominant("Y", "y")
                                .shows("Y", "Y")
                                .shows("y", "y"))
                .trait(
                        "form",
                        rule -> rule.when(Condition.where("R", "R"), "round").otherwise("wrinkled"))
                .trait(
                        "colour",
                        rule -> rule.when(Condition.where("Y", "Y"), "yellow").otherwise("green"));
        recombination.ifPresent(
                how -> builder.group(LinkageGroup.of("g", Transmission.AUTOSOMAL, List.of("R", "Y"), how)));
        return builder.build();
    }

    static Model coat() {
        return Model.builder(
                        "coat",
                        "1",
                        Catalogue.builder("coat.traits", "1")
                                .trait("hue", "black", "brown", "white")
                                .build())
                .locus(
                        "C",
                        at -> at.alleles("C", "c")
                                .dominant("C", "c")
                                .shows("C", "full")
                                .shows("c", "none"))
                .locus(
                        "B",
                        at -> at.alleles("B", "b")
                                .dominant("B", "b")
                                .shows("B", "dark")
                                .shows("b", "light"))
                .trait(
                        "hue",
                        rule -> rule.when(Condition.where("B", "light"), "brown")
                                .otherwise("black"))
                .mask(Mask.of("albino", Condition.where("C", "none")).covering("hue", "white"))
                .population(
                        "kennel",
                        population -> population
                                .frequency("C", "C", Probability.of(7, 10))
                                .frequency("C", "c", Probability.of(3, 10))
                                .frequency("B", "B", Probability.of(3, 5))
                                .frequency("B", "b", Probability.of(2, 5)))
                .build();
    }

    private static Model yellowMouse() {
        return Model.builder(
                        "mouse",
                        "1",
                        Catalogue.builder("mouse.traits", "1")
                                .trait("coat", "yellow", "agouti")
                                .build())
                .locus(
                        "A",
                        at -> at.alleles("Ay", "A")
                                .shows("Ay", "two doses")
                                .shows("Ay/A", "one dose")
                                .shows("A", "none"))
                .trait(
                        "coat",
                        rule -> rule.when(Condition.where("A", "none"), "agouti")
                                .otherwise("yellow"))
                .viability(Viability.lethal("yellow", "A", "two doses"))
                .build();
    }

    private static List<DrawnLitter> litters(Model model, String sire, String dam, String... traits) {
        return Simulation.of(CompiledModel.of(model))
                .seeded(1)
                .looking(PlannedLook.at(traits))
                .litters(
                        Founder.of(Genotype.parse(model, sire)),
                        Founder.of(Genotype.parse(model, dam)),
                        LitterSize.of(6),
                        Census.BORN)
                .limit(LITTERS)
                .toList();
    }

    private static Map<String, Long> counts(List<DrawnLitter> litters) {
        return litters.stream()
                .flatMap(litter -> litter.kits().stream())
                .map(kit -> String.join(
                        " ",
                        kit.observations()
                                .get(0)
                                .looks()
                                .iterator()
                                .next()
                                .asMap()
                                .values()))
                .collect(Collectors.groupingBy(look -> look, LinkedHashMap::new, Collectors.counting()));
    }

    private static double fit(Map<String, Long> counts, Map<String, Integer> ratio) {
        assertTrue(ratio.keySet().containsAll(counts.keySet()), counts::toString);
        double[] expected = ratio.values().stream().mapToDouble(part -> part).toArray();
        long[] observed = ratio.keySet().stream()
                .mapToLong(look -> counts.getOrDefault(look, 0L))
                .toArray();
        return ChiSquareTest.withDefaults().test(expected, observed).getPValue();
    }

    /** Mendel 1866. */
    @Test
    void two_hybrid_loci_are_9_3_3_1() {
        Model model = twoTraits(Optional.empty());
        Map<String, Long> counts = counts(litters(model, "R/r Y/y", "R/r Y/y", "form", "colour"));
        Map<String, Integer> ratio = new LinkedHashMap<>();
        ratio.put("round yellow", 9);
        ratio.put("round green", 3);
        ratio.put("wrinkled yellow", 3);
        ratio.put("wrinkled green", 1);
        assertTrue(fit(counts, ratio) > 0.001, counts::toString);
    }

    /** Recessive epistasis: Little 1957, The Inheritance of Coat Color in Dogs. */
    @Test
    void a_recessive_that_hides_another_locus_is_9_3_4() {
        Map<String, Long> counts = counts(litters(coat(), "C/c B/b", "C/c B/b", "hue"));
        assertTrue(fit(counts, Map.of("black", 9, "brown", 3, "white", 4)) > 0.001, counts::toString);
        assertTrue(fit(counts, Map.of("black", 9, "brown", 4, "white", 3)) < 1e-6, counts::toString);
    }

    /** Yellow mice: Cu&eacute;not 1905; Castle &amp; Little 1910, Science 32:868. */
    @Test
    void a_lethal_homozygote_is_2_1_and_a_quarter_is_lost() {
        List<DrawnLitter> litters = litters(yellowMouse(), "Ay/A", "Ay/A", "coat");
        Map<String, Long> counts = counts(litters);
        assertTrue(fit(counts, Map.of("yellow", 2, "agouti", 1)) > 0.001, counts::toString);
        assertTrue(fit(counts, Map.of("yellow", 3, "agouti", 1)) < 1e-6, counts::toString);
        long conceived = litters.stream().mapToLong(DrawnLitter::conceived).sum();
        long lost = litters.stream().mapToLong(DrawnLitter::lost).sum();
        assertEquals(0.25, (double) lost / conceived, 0.02); // 5 standard errors of 16,000 kits
    }

    /**
     * Black and vestigial of Drosophila, as textbooks tell Morgan's test cross: 965 : 944 : 206 : 185, so 17 in 100 recombine; none do in
     * males (Morgan 1912, Science 36:719; from memory).
     */
    @Test
    void linked_loci_of_a_test_cross_recombine_in_females_only() {
        Model model = twoTraits(
                Optional.of(new Recombination.Fractions(List.of(Probability.of(17, 100)), List.of(Probability.ZERO))));
        Map<String, Long> ofDam = counts(litters(model, "r/r y/y", "[R Y]/[r y]", "form", "colour"));
        Map<String, Integer> ratio = new LinkedHashMap<>();
        ratio.put("round yellow", 83);
        ratio.put("wrinkled green", 83);
        ratio.put("round green", 17);
        ratio.put("wrinkled yellow", 17);
        assertTrue(fit(ofDam, ratio) > 0.001, ofDam::toString);
        Map<String, Long> ofSire = counts(litters(model, "[R Y]/[r y]", "r/r y/y", "form", "colour"));
        assertTrue(fit(ofSire, Map.of("round yellow", 1, "wrinkled green", 1)) > 0.001, ofSire::toString);
    }

    @Test
    void kits_of_a_parent_of_unknown_phase_agree_on_it() {
        Model model = twoTraits(Optional.of(Recombination.Fractions.of(List.of(Probability.ZERO))));
        int coupled = 0;
        for (DrawnLitter litter : litters(model, "r/r y/y", "R/r Y/y", "form", "colour")) {
            Map<String, Long> counts = counts(List.of(litter));
            boolean coupling = counts.containsKey("round yellow") || counts.containsKey("wrinkled green");
            boolean repulsion = counts.containsKey("round green") || counts.containsKey("wrinkled yellow");
            assertTrue(coupling != repulsion, counts::toString);
            coupled += coupling ? 1 : 0;
        }
        assertEquals(LITTERS / 2.0, coupled, 5 * Math.sqrt(LITTERS) / 2); // half each, within 5 standard errors
    }

    // ---- gene dropping ---------------------------------------------------------------------------------------------

    /** Young of full sibs have two copies of one ancestral allele with 1/4, of first cousins with 1/16 (Wright 1922, Am. Nat. 56:330). */
    @Test
    void dropped_alleles_meet_as_often_as_inbreeding_says() {
        ModelBuilder builder = Model.builder(
                "marked",
                "1",
                Catalogue.builder("marked.traits", "1")
                        .trait("coat", "plain", "other")
                        .build());
        builder.locus("A", at -> {
            at.alleles("a1", "a2", "a3", "a4", "a5", "a6", "a7", "a8");
            at.dominance(order -> {
                for (int i = 1; i < 8; i++) {
                    order.dominant("a" + i, "a" + (i + 1));
                }
            });
            for (int i = 1; i <= 8; i++) {
                at.shows("a" + i, "plain");
            }
        });
        Model model = builder.trait("coat", rule -> rule.otherwise("plain")).build();
        Pedigree plan = Pedigree.builder("kin", "1")
                .add(Individual.of("hob", Sex.MALE))
                .add(Individual.of("jill", Sex.FEMALE))
                .add(Individual.of("son", Sex.MALE))
                .add(Individual.of("daughter", Sex.FEMALE))
                .add(Individual.of("his mate", Sex.FEMALE))
                .add(Individual.of("her mate", Sex.MALE))
                .add(Individual.of("nephew", Sex.MALE))
                .add(Individual.of("niece", Sex.FEMALE))
                .add(Individual.of("kit of sibs"))
                .add(Individual.of("kit of cousins"))
                .add(Litter.of("first", "jill", "hob", "son", "daughter"))
                .add(Litter.of("second", "his mate", "son", "nephew"))
                .add(Litter.of("third", "daughter", "her mate", "niece"))
                .add(Litter.of("fourth", "daughter", "son", "kit of sibs"))
                .add(Litter.of("fifth", "niece", "nephew", "kit of cousins"))
                .build();
        Map<String, Founder> founders = new LinkedHashMap<>();
        founders.put("hob", Founder.of(Genotype.parse(model, "a1/a2")));
        founders.put("jill", Founder.of(Genotype.parse(model, "a3/a4")));
        founders.put("his mate", Founder.of(Genotype.parse(model, "a5/a6")));
        founders.put("her mate", Founder.of(Genotype.parse(model, "a7/a8")));
        Shares<Boolean> sibs = new Shares<>();
        Shares<Boolean> cousins = new Shares<>();
        Simulation.of(CompiledModel.of(model))
                .pedigrees(plan, founders)
                .limit(20_000)
                .forEach(drawn -> {
                    sibs.add(isHomozygous(drawn.animal("kit of sibs")));
                    cousins.add(isHomozygous(drawn.animal("kit of cousins")));
                });
        sibs.agreeWith(Map.of(true, Probability.of(1, 4), false, Probability.of(3, 4)), () -> "kit of sibs");
        cousins.agreeWith(Map.of(true, Probability.of(1, 16), false, Probability.of(15, 16)), () -> "kit of cousins");
    }

    private static boolean isHomozygous(DrawnAnimal animal) {
        return animal.genotype().pair("A").orElseThrow().isHomozygous();
    }

    // ---- ascertainment ---------------------------------------------------------------------------------------------

    private static Simulation albinosOf(Probability noticed) {
        return Simulation.of(CompiledModel.of(coat()))
                .seeded(3)
                .looking(PlannedLook.at("hue"))
                .keeping(new Ascertainment.Probands(
                        Sighting.of(Phenotype.of("hue", "white")), noticed, OptionalInt.empty()));
    }

    private static Founder carrier(String genotype) {
        return Founder.of(Genotype.parse(coat(), genotype));
    }

    /** The numbers of recessives in litters of four that are kept: binomial, times the chance of a proband (Fisher 1934; from memory). */
    @Test
    void litters_known_by_a_kit_hold_more_of_its_kind() {
        Map<Integer, Integer> binomial = Map.of(1, 108, 2, 54, 3, 12, 4, 1); // of 256; none in 81
        for (int chance = 1; chance <= 2; chance++) { // all are noticed, or half
            Map<Integer, Long> weights = new LinkedHashMap<>();
            int parts = chance;
            binomial.forEach((kits, ways) -> {
                long each = 1;
                long missed = 1;
                for (int i = 0; i < kits; i++) {
                    each *= parts;
                    missed *= parts - 1;
                }
                weights.put(kits, ways * (each - missed) * (parts == 1 ? 1 : 16 / each));
            });
            Shares<Integer> drawn = new Shares<>();
            long tried = 0;
            for (DrawnLitter litter : albinosOf(Probability.of(1, chance))
                    .litters(carrier("C/c B/B"), carrier("C/c B/B"), LitterSize.of(4), Census.BORN)
                    .limit(4_000)
                    .toList()) {
                int white = (int) litter.kits().stream()
                        .filter(kit -> kit.isRecordedWith(Phenotype.of("hue", "white")))
                        .count();
                assertTrue(!litter.probands().isEmpty() && litter.probands().size() <= white);
                assertTrue(litter.kits().containsAll(litter.probands()));
                assertEquals(
                        new Ascertainment.Probands(
                                Sighting.of(Phenotype.of("hue", "white")),
                                Probability.of(1, chance),
                                OptionalInt.of(litter.probands().size())),
                        litter.ascertainment());
                drawn.add(white);
                tried += litter.tried();
            }
            drawn.agreeWith(Distribution.ofWeights(weights).asMap(), () -> "litters with probands");
            // 175/256 of litters hold one, half of them noticed: 1 - (1 - 1/8)^4
            double kept = chance == 1 ? 175 / 256.0 : 1 - Math.pow(7 / 8.0, 4);
            assertEquals(kept, 4_000.0 / tried, 0.05);
        }
    }

    @Test
    void what_never_comes_up_is_given_up() {
        TooRareException none = assertThrows(
                TooRareException.class,
                () -> albinosOf(Probability.ONE)
                        .within(690)
                        .litters(carrier("C/C B/B"), carrier("C/c B/B"), LitterSize.of(4), Census.BORN)
                        .findFirst());
        assertEquals(690, none.tries());
        assertEquals(
                "no litter to be kept (probands 1: hue: white) came up in 690 tries; if one in 100 were such, it would have come up 999"
                        + " times in 1000.",
                none.getMessage());
        assertThrows(
                IllegalArgumentException.class, () -> albinosOf(Probability.ONE).within(0));
    }
}
