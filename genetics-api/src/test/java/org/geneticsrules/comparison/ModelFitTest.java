package org.geneticsrules.comparison;

import static org.geneticsrules.testing.Coats.DARK;
import static org.geneticsrules.testing.Coats.LIGHT;
import static org.geneticsrules.testing.Coats.seen;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.comparison.KitFit.Standing;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.statistics.ChiSquared;
import org.geneticsrules.testing.Coats;
import org.geneticsrules.testing.Once;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** Records of litters judged by one model. */
@Once
class ModelFitTest {

    private static FittedModel fit(Model model, Pedigree pedigree) {
        return ModelFit.of(Candidate.of(model), pedigree).from("even").judge();
    }

    private static ChiSquared chiSquared(FittedModel fit) {
        return fit.matings().get(0).test().chiSquared().orElseThrow();
    }

    /** Pea pods, green 428 : yellow 152 (Mendel 1866, Bateson's translation 1902): chi-squared 0.45057. */
    @Test
    void peas() {
        FittedModel fit = fit(Coats.recessive(), Coats.ofCarriers(428, 152));
        assertEquals(0.45057, chiSquared(fit).statistic(), 5e-6);
        assertTrue(fit.matings().get(0).independent());
        assertFalse(fit.isRejected());
        assertTrue(fit.matings().get(0).shares().get(1).contains(0.25));
        assertEquals(
                fit.p().orElseThrow(),
                fit.matings().get(0).exact().orElseThrow().p(),
                1e-7);
    }

    /**
     * Yellow mice 263 : 100 (Cuénot 1905, from memory): chi-squared 1.2571 against 3 : 1 and 5.4669 against the true 2 : 1, which the small
     * sample rejects; 800 : 435 (Castle and Little 1910, from memory): 68.8327 and 1.9838.
     */
    @Test
    void yellow_mice() {
        assertEquals(
                1.2571,
                chiSquared(fit(Coats.recessive(), Coats.ofCarriers(263, 100))).statistic(),
                5e-5);
        FittedModel small = fit(Coats.lethal(), Coats.ofCarriers(263, 100));
        assertEquals(5.4669, chiSquared(small).statistic(), 5e-5);
        assertTrue(small.isRejected());
        assertEquals(
                68.8327,
                chiSquared(fit(Coats.recessive(), Coats.ofCarriers(800, 435))).statistic(),
                5e-5);
        assertEquals(
                1.9838,
                chiSquared(fit(Coats.lethal(), Coats.ofCarriers(800, 435))).statistic(),
                5e-5);
    }

    /**
     * White eyes of flies (Morgan 1910, Science 32:120, from memory): 2459 red females, 1011 red males and 782 white males where 2 : 1 : 1 is
     * expected. The model is right and chi-squared is 128.98, because white-eyed flies live less often.
     */
    @Test
    void the_true_model_is_rejected() {
        Catalogue traits =
                Catalogue.builder("flies", "1").trait("eyes", "red", "white").build();
        Model model = Model.builder("flies", "1", traits)
                .locus(
                        "W",
                        at -> at.alleles("W", "w")
                                .dominant("W", "w")
                                .shows("W", "red")
                                .shows("w", "white"))
                .group(LinkageGroup.single(Transmission.X, "W"))
                .trait(
                        "eyes",
                        rule -> rule.when(Condition.where("W", "white"), "white")
                                .otherwise("red"))
                .population(
                        "even",
                        one -> one.frequency("W", "W", Probability.of(1, 2)).frequency("W", "w", Probability.of(1, 2)))
                .build();
        PedigreeBuilder builder = Pedigree.builder("flies", "1")
                .add(tested("sire", Sex.MALE, "W/Y"))
                .add(tested("dam", Sex.FEMALE, "W/w"));
        List<String> young = new ArrayList<>();
        add(builder, young, 2459, Sex.FEMALE, "red");
        add(builder, young, 1011, Sex.MALE, "red");
        add(builder, young, 782, Sex.MALE, "white");
        Pedigree pedigree = builder.add(Litter.of("f2", "dam", "sire", young.toArray(String[]::new))
                        .with(Ascertainment.complete()))
                .build();
        FittedModel fit = ModelFit.of(
                        ModelComparison.of(List.of(Candidate.of(model)), pedigree)
                                .from("even"),
                        0)
                .judge();
        assertEquals(128.98, chiSquared(fit).statistic(), 5e-3);
        assertEquals(2, chiSquared(fit).degreesOfFreedom());
        assertFalse(fit.isImpossible());
        assertTrue(fit.kits().stream().allMatch(kit -> kit.standing() == Standing.FINE));
    }

    private static Individual tested(String id, Sex sex, String pair) {
        return Individual.of(id, sex).with(new GenotypeTest(Optional.empty(), "W", Set.of(pair), Probability.ZERO));
    }

    private static void add(PedigreeBuilder builder, List<String> young, int count, Sex sex, String eyes) {
        for (int k = 0; k < count; k++) {
            String id = sex + " " + eyes + " " + k;
            builder.add(seen(id, Phenotype.of("eyes", eyes)).with(sex));
            young.add(id);
        }
    }

    /**
     * Of ten young of two carriers none is light with (3/4)^10 = 0.0563, so of plants that are selfed, two of three of them carriers, ten
     * young show 0.6291 : 0.3709 and not 2 : 1 (Fisher 1936, from memory). A litter without a light kit does not clear its parents.
     */
    @Test
    void ten_young_miss_a_carrier() {
        PedigreeBuilder builder = Coats.carriers(Pedigree.builder("carriers", "1"), "");
        FittedModel fit = fit(
                Coats.recessive(),
                Coats.litter(builder, "ten", "", 10, 0, Ascertainment.complete())
                        .build());
        LitterFit litter = fit.litters().get(0);
        assertEquals(2.5, litter.expected().get(new Shown(Optional.empty(), LIGHT)), 1e-9);
        // no likelier than none light are also six and more: 1 - sum of the others, by hand below
        double p = 0;
        double none = Math.pow(0.75, 10);
        for (int k = 0; k <= 10; k++) {
            double chance = choose(10, k) * Math.pow(0.25, k) * Math.pow(0.75, 10 - k);
            p += chance <= none * (1 + 1e-9) ? chance : 0;
        }
        assertEquals(p, litter.p().orElseThrow(), 1e-12);
        assertEquals(0.0563, none, 5e-5);
        assertEquals(0.6291, 2.0 / 3 * (1 - none), 5e-5);
        assertEquals(Standing.FINE, litter.standing());
    }

    private static double choose(int n, int k) {
        double ways = 1;
        for (int i = 1; i <= k; i++) {
            ways = ways * (n + 1 - i) / i;
        }
        return ways;
    }

    /** Two light kits of dark parents show that both carry the allele; of such parents two of two are light in 1/16. */
    @Test
    void parents_are_what_all_records_say() {
        PedigreeBuilder builder =
                Pedigree.builder("pair", "1").add(seen("sire", DARK)).add(seen("dam", DARK));
        FittedModel fit = fit(
                Coats.recessive(),
                Coats.litter(builder, "litter", "", 0, 2, Ascertainment.complete())
                        .build());
        assertEquals(1.0 / 16, fit.p().orElseThrow(), 1e-12);
        assertTrue(fit.matings().get(0).independent());
        assertEquals(1.0 / 16, fit.matings().get(0).exact().orElseThrow().p(), 1e-12);
        // given its mate, a kit is light with 1/4, so it is fine
        assertEquals(
                List.of(0.25, 0.25),
                fit.kits().stream()
                        .map(KitFit::chance)
                        .map(c -> Math.rint(c * 1e9) / 1e9)
                        .toList());
        assertEquals(Set.of(Standing.FINE), standings(fit));
        assertFalse(fit.isRejected());
    }

    /** Two dark kits leave their dark parents uncertain: (5/9 + 4/9 (3/4)^4) of (5/9 + 4/9 (3/4)^2) such couples have two more dark ones. */
    @Test
    void uncertain_parents_make_litter_mates_alike() {
        PedigreeBuilder builder =
                Pedigree.builder("pair", "1").add(seen("sire", DARK)).add(seen("dam", DARK));
        FittedModel fit = fit(
                Coats.recessive(),
                Coats.litter(builder, "litter", "", 2, 0, Ascertainment.complete())
                        .build());
        assertFalse(fit.matings().get(0).independent());
        assertEquals(Optional.empty(), fit.matings().get(0).exact());
        assertEquals(1, fit.p().orElseThrow(), 1e-12);
        double four = 5.0 / 9 + 4.0 / 9 * Math.pow(0.75, 4);
        double three = 5.0 / 9 + 4.0 / 9 * Math.pow(0.75, 3);
        double two = 5.0 / 9 + 4.0 / 9 * Math.pow(0.75, 2);
        assertTrue(four < two);
        assertEquals(2 * three / two, fit.litters().get(0).expected().get(new Shown(Optional.empty(), DARK)), 1e-12);
    }

    private static Set<Standing> standings(FittedModel fit) {
        return fit.kits().stream().map(KitFit::standing).collect(Collectors.toSet());
    }

    /** A light kit of parents of which one is tested to be free of the allele cannot be; its mates are fine. */
    @Test
    void an_impossible_kit_is_named() {
        PedigreeBuilder builder = Pedigree.builder("pair", "1")
                .add(Individual.of("sire", Sex.MALE)
                        .with(new GenotypeTest(Optional.empty(), "A", Set.of("D/D"), Probability.ZERO)))
                .add(seen("dam", DARK));
        FittedModel fit = fit(
                Coats.recessive(),
                Coats.litter(builder, "litter", "", 3, 1, Ascertainment.complete())
                        .build());
        assertTrue(fit.isImpossible());
        assertEquals(
                List.of(Standing.NOT_JUDGED, Standing.NOT_JUDGED, Standing.NOT_JUDGED, Standing.IMPOSSIBLE),
                fit.kits().stream().map(KitFit::standing).toList());
    }

    /**
     * Where one allele in a hundred is light, one light kit beside five dark ones has 1/4 (c^2 (3/4)^5) / (1 - c^2 + c^2 (3/4)^5) with
     * c = 2/101 by its mates, but shows that its parents carry: of one more kit of theirs a quarter is light.
     */
    @Test
    void a_kit_that_shows_its_parents_to_be_carriers_is_fine() {
        FittedModel pair = fit(
                Coats.recessive("rare", Probability.of(1, 100)),
                Coats.litter(
                                Pedigree.builder("pair", "1")
                                        .add(seen("sire", DARK))
                                        .add(seen("dam", DARK)),
                                "litter",
                                "",
                                5,
                                1,
                                Ascertainment.complete())
                        .build());
        KitFit light = pair.kits().get(5);
        double both = Math.pow(2.0 / 101, 2);
        double left = Math.pow(0.75, 5);
        assertEquals(both * left / 4 / (1 - both + both * left), light.chance(), 1e-12);
        assertEquals(0.25, light.rarer(), 1e-12);
        assertEquals(Standing.FINE, light.standing());
        // the same with an uncle, where the kindred is more than a couple
        FittedModel kindred = fit(
                Coats.recessive("rare", Probability.of(1, 100)),
                Coats.litter(
                                Pedigree.builder("kindred", "1")
                                        .add(seen("grandsire", DARK))
                                        .add(seen("granddam", DARK))
                                        .add(seen("sire", DARK))
                                        .add(seen("uncle", DARK))
                                        .add(Litter.of("sires", "granddam", "grandsire", "sire", "uncle"))
                                        .add(seen("dam", DARK)),
                                "litter",
                                "",
                                5,
                                1,
                                Ascertainment.complete())
                        .build());
        KitFit same = kindred.kits().stream()
                .filter(kit -> kit.rarer() < 0.5)
                .findFirst()
                .orElseThrow();
        assertEquals(0.25, same.rarer(), 1e-9);
        assertEquals(Set.of(Standing.FINE), standings(kindred));
    }

    /** A kit that is misread once in a thousand and shows what it cannot is unlikely. */
    @Test
    void a_rare_kit_is_unlikely() {
        PedigreeBuilder builder =
                Pedigree.builder("pair", "1").add(seen("sire", LIGHT)).add(seen("dam", LIGHT));
        Pedigree pedigree = Coats.litter(builder, "litter", "", 1, 5, Ascertainment.complete())
                .build();
        ModelComparison question = ModelComparison.of(List.of(Candidate.of(Coats.recessive())), pedigree)
                .from("even")
                .with(org.geneticsrules.trait.Confusions.of(List.of(new org.geneticsrules.trait.Confusion(
                        "coat", "light", "dark", Optional.empty(), Probability.of(1, 1000)))));
        FittedModel fit = ModelFit.of(question, 0).judge();
        KitFit kit = fit.kits().get(0);
        assertEquals(Standing.UNLIKELY, kit.standing());
        assertEquals(0.001, kit.chance(), 1e-9);
        assertEquals(Standing.FINE, fit.kits().get(1).standing());
    }

    /** Of litters noticed by a light kit, two kits of carriers are both light in 1/7, not in 1/16. */
    @Test
    void noticed_litters_are_compared_with_noticed_litters() {
        FittedModel fit = fit(
                Coats.recessive(),
                Coats.litter(
                                Coats.carriers(Pedigree.builder("carriers", "1"), ""),
                                "litter",
                                "",
                                0,
                                2,
                                Ascertainment.atLeastOne(LIGHT))
                        .build());
        assertEquals(1.0 / 7, fit.p().orElseThrow(), 1e-12);
        assertEquals(List.of(), fit.matings());
    }

    /** Several litters together are drawn from a seed that is told, and come out the same again. */
    @Test
    void several_litters_are_drawn() {
        PedigreeBuilder builder = Coats.carriers(Pedigree.builder("carriers", "1"), "");
        Coats.litter(builder, "one", "", 5, 1, Ascertainment.complete());
        Coats.litter(builder, "two", "", 2, 4, Ascertainment.complete());
        Pedigree pedigree = builder.build();
        ModelFit question =
                ModelFit.of(Candidate.of(Coats.recessive()), pedigree).from("even");
        FittedModel fit = question.drawing(20_000, 7).judge();
        assertEquals(fit, question.drawing(20_000, 7).judge());
        assertEquals(Optional.of(new FittedModel.Draws(20_000, 7)), fit.draws());
        // by hand: pairs of binomial counts no likelier than these
        double observed = binomial(1) * binomial(4);
        double p = 0;
        for (int one = 0; one <= 6; one++) {
            for (int two = 0; two <= 6; two++) {
                double both = binomial(one) * binomial(two);
                p += both <= observed * (1 + 1e-9) ? both : 0;
            }
        }
        assertEquals(p, fit.p().orElseThrow(), 5 * fit.standardError());
    }

    private static double binomial(int light) {
        return choose(6, light) * Math.pow(0.25, light) * Math.pow(0.75, 6 - light);
    }
}
