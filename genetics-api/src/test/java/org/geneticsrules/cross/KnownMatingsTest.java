package org.geneticsrules.cross;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Recombination;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.model.Viability;
import org.geneticsrules.probability.Approximation;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/**
 * Matings whose young are known from textbooks, and ratios that follow from meiosis by hand. The traits are named after their loci:
 * an animal shows trait {@code a} as {@code yes} if it has an allele A.
 */
class KnownMatingsTest {

    /** One locus for each letter, with a dominant and a recessive allele, each seen by itself. */
    private static ModelBuilder letters(String... letters) {
        Catalogue.Builder catalogue = Catalogue.builder("letters.traits", "1");
        for (String letter : letters) {
            catalogue.trait(letter.toLowerCase(Locale.ROOT), "yes", "no");
        }
        ModelBuilder model = Model.builder("letters", "1", catalogue.build());
        for (String letter : letters) {
            String small = letter.toLowerCase(Locale.ROOT);
            model.locus(
                            letter,
                            locus -> locus.alleles(letter, small)
                                    .dominant(letter, small)
                                    .shows(letter, "with")
                                    .shows(small, "without"))
                    .trait(
                            small,
                            rule -> rule.when(Condition.where(letter, "with"), "yes")
                                    .when(Condition.where(letter, "without"), "no"));
        }
        return model;
    }

    private static Model with(ModelBuilder builder, Consumer<ModelBuilder> more) {
        more.accept(builder);
        return builder.build();
    }

    private static Cross cross(Model model, String sire, String dam) {
        return Cross.of(model, Genotype.parse(model, sire), Genotype.parse(model, dam));
    }

    /** The same question to the engine of uncertain parents. */
    private static Distribution<Phenotype> asUncertain(Cross cross, View view) {
        Model model = cross.sire().model();
        return UncertainCross.of(CompiledModel.of(model), Parent.of(model, cross.sire()), Parent.of(model, cross.dam()))
                .probable(view)
                .orElseThrow();
    }

    private static void young(Map<String, Integer> weights, Cross cross, String... traits) {
        View view = View.of(List.of(traits));
        Distribution<Phenotype> expected = Distribution.ofWeights(weights).map(Phenotype::parse);
        assertEquals(expected, cross.phenotypes(view));
        assertEquals(expected, asUncertain(cross, view));
        Approximation<Phenotype> close = cross.approximate(view);
        expected.asMap().forEach((look, chance) -> assertEquals(chance.toDouble(), close.chance(look), 1e-14));
    }

    /** Mendel 1866, Versuche ueber Pflanzenhybriden: 9 : 3 : 3 : 1. */
    @Test
    void two_hybrids_of_two_characters() {
        Model model = letters("A", "B").build();
        Cross hybrids = cross(model, "A/a B/b", "A/a B/b");
        young(
                ImmutableMap.of("a: yes, b: yes", 9, "a: yes, b: no", 3, "a: no, b: yes", 3, "a: no, b: no", 1),
                hybrids,
                "a",
                "b");
        assertEquals(9, hybrids.genotypes(List.of("A", "B")).outcomes().size());
        assertEquals(
                Distribution.ofWeights(ImmutableMap.of("A/A", 1, "A/a", 2, "a/a", 1)),
                hybrids.segregation("A").map(Object::toString));
        assertEquals(Probability.of(1, 16), hybrids.probability(Phenotype.parse("a: no, b: no")));
        assertEquals("A/a B/b \u00d7 A/a B/b", hybrids.toString());
    }

    /** The binomial expansion of (3/4 + 1/4)^4: 81, 108, 54, 12 and 1 of 256. */
    @Test
    void how_many_of_four_young_show_the_recessive() {
        Model model = letters("A").build();
        Cross hybrids = cross(model, "A/a", "A/a");
        Phenotype recessive = Phenotype.of("a", "no");
        assertEquals(
                Distribution.ofWeights(ImmutableMap.of(0, 81, 1, 108, 2, 54, 3, 12, 4, 1)),
                hybrids.count(recessive, 4));
        assertEquals(Probability.of(175, 256), hybrids.atLeastOne(recessive, 4));
        assertEquals(Probability.ZERO, hybrids.atLeastOne(recessive, 0));
    }

    /** White eyes of the fruit fly: sons take after their dam, daughters after the red sire (Morgan 1910, Science 32:120). */
    @Test
    void sons_of_an_x_linked_recessive_dam_take_after_her() {
        Model model = with(letters("W"), m -> m.group(LinkageGroup.single(Transmission.X, "W")));
        young(ImmutableMap.of("w: yes, sex: female", 1, "w: no, sex: male", 1), cross(model, "W/Y", "w/w"), "w", "sex");
        young(
                ImmutableMap.of("w: yes, sex: female", 1, "w: yes, sex: male", 1),
                cross(model, "w/Y", "W/W"),
                "w",
                "sex");
        young(
                ImmutableMap.of("w: yes, sex: female", 2, "w: yes, sex: male", 1, "w: no, sex: male", 1),
                cross(model, "W/Y", "W/w"),
                "w",
                "sex");
        young(ImmutableMap.of("w: yes", 3, "w: no", 1), cross(model, "W/Y", "W/w"), "w");
        young(ImmutableMap.of("w: yes", 1, "w: no", 1), cross(model, "W/Y", "w/w"), "w");
        assertEquals(
                Distribution.ofWeights(ImmutableMap.of("W/w", 1, "w/Y", 1)),
                cross(model, "W/Y", "w/w").segregation("W").map(Object::toString));
    }

    /** Barring of fowl: with a barred dam only the sons are barred (Z-linked; textbook). */
    @Test
    void sons_of_a_z_linked_dominant_dam_take_after_her() {
        Model model = with(letters("B"), m -> m.group(LinkageGroup.single(Transmission.Z, "B")));
        young(ImmutableMap.of("b: yes, sex: male", 1, "b: no, sex: female", 1), cross(model, "b/b", "B/W"), "b", "sex");
    }

    @Test
    void what_one_parent_alone_hands_down() {
        Model maternal = with(letters("M"), m -> m.group(LinkageGroup.single(Transmission.MATERNAL, "M")));
        young(ImmutableMap.of("m: no", 1), cross(maternal, "M", "m"), "m");
        young(ImmutableMap.of("m: yes", 1), cross(maternal, "m", "M"), "m");
        Model fathers = with(
                letters("B"),
                m -> m.locus("H", locus -> locus.alleles("H").shows("H", "has").absent("has not"))
                        .group(LinkageGroup.single(Transmission.Y, "H")));
        assertEquals(
                Distribution.ofWeights(ImmutableMap.of("H", 1, "-", 1)),
                cross(fathers, "H B/B", "B/B")
                        .segregation("H")
                        .map(pair -> pair.alleles().isEmpty()
                                ? "-"
                                : pair.alleles().get(0).id()));
    }

    /** Yellow mice: two yellows have young 2 : 1, as pure yellows die (Castle and Little 1910, Science 32:868). */
    @Test
    void two_yellow_mice() {
        Catalogue catalogue =
                Catalogue.builder("mice", "1").trait("coat", "yellow", "wild").build();
        Model mice = Model.builder("yellow", "1", catalogue)
                .locus(
                        "A",
                        locus -> locus.alleles("Ay", "a")
                                .shows("Ay", "dies")
                                .shows("Ay/a", "yellow")
                                .shows("a", "wild"))
                .trait(
                        "coat",
                        rule -> rule.when(Condition.where("A", "yellow", "dies"), "yellow")
                                .when(Condition.where("A", "wild"), "wild"))
                .viability(Viability.lethal("pure yellow", "A", "dies"))
                .build();
        Cross yellows = cross(mice, "Ay/a", "Ay/a");
        young(ImmutableMap.of("coat: yellow", 2, "coat: wild", 1), yellows, "coat");
        assertEquals(
                Distribution.ofWeights(ImmutableMap.of("coat: yellow", 3, "coat: wild", 1)),
                yellows.phenotypes(View.of(List.of("coat")).among(Census.CONCEIVED))
                        .map(Object::toString));
        assertEquals(Probability.of(1, 4), yellows.lostShare(Census.BORN));
        assertEquals(Probability.ZERO, yellows.lostShare(Census.CONCEIVED));
        Cross none = cross(mice, "Ay/Ay", "a/a"); // a sire that never lived
        IllegalArgumentException refused =
                assertThrows(IllegalArgumentException.class, () -> none.phenotypes(View.of(List.of("coat"))));
        assertTrue(refused.getMessage().contains("no kit of Ay/Ay \u00d7 a/a is ever"), refused.getMessage());
    }

    /** A test cross of two loci 10 % apart, by hand: 45 : 5 : 5 : 45 in coupling, the reverse in repulsion, equal if it is not known. */
    @Test
    void a_test_cross_of_two_linked_loci() {
        Model model = with(
                letters("A", "B"),
                m -> m.group(LinkageGroup.autosomal("one", List.of("A", "B"), List.of(Probability.of(1, 10)))));
        young(weights("a", "b", 9, 1, 1, 9), cross(model, "[A B]/[a b]", "a/a b/b"), "a", "b");
        young(weights("a", "b", 1, 9, 9, 1), cross(model, "a/a b/b", "[A b]/[a B]"), "a", "b");
        young(weights("a", "b", 1, 1, 1, 1), cross(model, "A/a B/b", "a/a b/b"), "a", "b");
        // with itself in coupling: 0.45 x 0.45 double recessives
        assertEquals(
                Probability.of(81, 400),
                cross(model, "[A B]/[a b]", "[A B]/[a b]").probability(Phenotype.parse("a: no, b: no")));
    }

    private static Map<String, Integer> weights(String one, String other, int... weights) {
        return ImmutableMap.of(
                one + ": yes, " + other + ": yes", weights[0],
                one + ": yes, " + other + ": no", weights[1],
                one + ": no, " + other + ": yes", weights[2],
                one + ": no, " + other + ": no", weights[3]);
    }

    /** Over a locus that is not asked for: 1/10 x 3/4 + 9/10 x 1/4 = 3/10 are separated; sperm recombine less than eggs here. */
    @Test
    void the_outer_of_three_linked_loci() {
        List<Probability> eggs = List.of(Probability.of(1, 10), Probability.of(1, 4));
        List<Probability> sperm = List.of(Probability.of(1, 100), Probability.ZERO);
        Model model = with(
                letters("A", "B", "C"),
                m -> m.group(LinkageGroup.of(
                        "one",
                        Transmission.AUTOSOMAL,
                        List.of("A", "B", "C"),
                        new Recombination.Fractions(eggs, sperm))));
        young(weights("a", "c", 7, 3, 3, 7), cross(model, "a/a b/b c/c", "[A B C]/[a b c]"), "a", "c");
        young(weights("a", "c", 99, 1, 1, 99), cross(model, "[A B C]/[a b c]", "a/a b/b c/c"), "a", "c");
        young(weights("a", "b", 99, 1, 1, 99), cross(model, "[A B C]/[a b c]", "a/a b/b c/c"), "a", "b");
    }

    /** Complete interference: 10 % and 20 % of single crossovers, no double, so that the outer loci are 30 % apart. */
    @Test
    void crossovers_that_never_happen_together() {
        Map<String, Probability> patterns = ImmutableMap.of(
                "none", Probability.of(7, 10), "A-B", Probability.of(1, 10), "B-C", Probability.of(2, 10));
        Model model = with(
                letters("A", "B", "C"),
                m -> m.group(LinkageGroup.of(
                        "one",
                        Transmission.AUTOSOMAL,
                        List.of("A", "B", "C"),
                        new Recombination.Crossovers(patterns))));
        Cross backcross = cross(model, "[A B C]/[a b c]", "a/a b/b c/c");
        young(weights("a", "c", 7, 3, 3, 7), backcross, "a", "c");
        young(weights("a", "b", 9, 1, 1, 9), backcross, "a", "b");
        young(weights("b", "c", 8, 2, 2, 8), backcross, "b", "c");
        assertEquals(Probability.ZERO, backcross.probability(Phenotype.parse("a: yes, b: no, c: yes")));
        assertEquals(Probability.of(1, 20), backcross.probability(Phenotype.parse("a: yes, b: no, c: no")));
        assertEquals(Probability.of(1, 10), backcross.probability(Phenotype.parse("a: yes, b: yes, c: no")));
    }

    /** One gamete in a hundred of A/A carries a, by hand: 1/100 of the young of an a/a mate are recessive. */
    @Test
    void a_mutation_between_parent_and_young() {
        Catalogue catalogue =
                Catalogue.builder("mutants", "1").trait("a", "yes", "no").build();
        Model model = Model.builder("mutants", "1", catalogue)
                .locus(
                        "A",
                        locus -> locus.alleles("A", "a")
                                .dominant("A", "a")
                                .shows("A", "with")
                                .shows("a", "without")
                                .mutation("A", "a", Probability.of(1, 100)))
                .trait(
                        "a",
                        rule -> rule.when(Condition.where("A", "with"), "yes").otherwise("no"))
                .build();
        assertEquals(
                Distribution.ofWeights(ImmutableMap.of("A/a", 99, "a/a", 1)),
                cross(model, "A/A", "a/a").segregation("A").map(Object::toString));
        young(ImmutableMap.of("a: yes", 99, "a: no", 1), cross(model, "A/A", "a/a"), "a");
        // A/a passes on A in 99 of 200 gametes
        assertEquals(
                Distribution.ofWeights(ImmutableMap.of("A/A", 99 * 99, "A/a", 2 * 99 * 101, "a/a", 101 * 101)),
                cross(model, "A/a", "A/a").segregation("A").map(Object::toString));
    }

    /** Horns of sheep, dominant in rams and recessive in ewes: of two hybrids 3 : 1 of the sons and 1 : 3 of the daughters (textbook). */
    @Test
    void horns_of_sheep() {
        Catalogue catalogue = Catalogue.builder("sheep", "1")
                .trait("head", "horned", "polled")
                .build();
        Model sheep = Model.builder("sheep", "1", catalogue)
                .locus(
                        "H",
                        locus -> locus.alleles("H", "h")
                                .in(
                                        Sex.MALE,
                                        ram -> ram.dominant("H", "h")
                                                .shows("H", "horned")
                                                .shows("h", "polled"))
                                .in(
                                        Sex.FEMALE,
                                        ewe -> ewe.dominant("h", "H")
                                                .shows("H", "horned")
                                                .shows("h", "polled")))
                .trait(
                        "head",
                        rule -> rule.when(Condition.where("H", "horned"), "horned")
                                .otherwise("polled"))
                .build();
        Cross hybrids = cross(sheep, "H/h", "H/h");
        young(ImmutableMap.of("head: horned", 1, "head: polled", 1), hybrids, "head");
        young(
                ImmutableMap.of(
                        "head: horned, sex: male", 3,
                        "head: polled, sex: male", 1,
                        "head: horned, sex: female", 1,
                        "head: polled, sex: female", 3),
                hybrids,
                "head",
                "sex");
        young(
                ImmutableMap.of("head: horned, sex: male", 1, "head: polled, sex: female", 1),
                cross(sheep, "H/H", "h/h"),
                "head",
                "sex");
    }

    @Test
    void the_square_of_two_hybrids() {
        Model model = letters("A", "B").build();
        PunnettSquare square = cross(model, "A/a B/b", "A/A B/b").square(List.of("A", "B"));
        assertEquals(
                List.of("A B", "A b", "a B", "a b"),
                square.sireGametes().outcomes().stream().map(Gamete::toString).toList());
        assertEquals(
                List.of("A B", "A b"),
                square.damGametes().outcomes().stream().map(Gamete::toString).toList());
        for (Gamete sperm : square.sireGametes().outcomes()) {
            for (Gamete egg : square.damGametes().outcomes()) {
                assertEquals(Probability.of(1, 8), square.probability(sperm, egg));
            }
        }
        assertEquals(
                Distribution.ofWeights(ImmutableMap.of(
                        "A/A B/B", 1, "A/A B/b", 2, "A/A b/b", 1, "A/a B/B", 1, "A/a B/b", 2, "A/a b/b", 1)),
                square.genotypes().map(Object::toString));
    }

    @Test
    void gametes_of_the_parent_with_two_kinds_decide_the_sex() {
        Model model = with(letters("W"), m -> m.group(LinkageGroup.single(Transmission.X, "W")));
        PunnettSquare square = cross(model, "W/Y", "W/w").square(List.of("W"));
        assertEquals(
                List.of("W Optional[FEMALE]", "Y Optional[MALE]"),
                square.sireGametes().outcomes().stream()
                        .map(gamete -> gamete + " " + gamete.kit())
                        .toList());
        assertEquals(
                List.of("W Optional.empty", "w Optional.empty"),
                square.damGametes().outcomes().stream()
                        .map(gamete -> gamete + " " + gamete.kit())
                        .toList());
        assertEquals(
                Set.of("W/W", "W/w", "W/Y", "w/Y"),
                Set.copyOf(square.genotypes().outcomes().stream()
                        .map(Object::toString)
                        .toList()));
    }

    @Test
    void a_square_is_shown_up_to_64_gametes_of_each_parent() {
        String[] seven = {"A", "B", "C", "D", "E", "F", "G"};
        Model model = letters(seven).build();
        Cross hybrids = cross(model, "A/a B/b C/c D/d E/e F/f G/g", "A/A B/B C/C D/D E/E F/F G/G");
        assertEquals(
                64,
                hybrids.square(List.of(seven).subList(0, 6))
                        .sireGametes()
                        .outcomes()
                        .size());
        TooLargeException refused = assertThrows(TooLargeException.class, () -> hybrids.square(List.of(seven)));
        assertTrue(refused.getMessage().contains("ask for the square of fewer loci"), refused.getMessage());
    }

    @Test
    void a_parent_must_be_known_at_each_locus_that_is_asked_for() {
        Model model = letters("A", "B").build();
        Cross half = cross(model, "A/a", "A/a B/b");
        for (Runnable question : List.<Runnable>of(
                () -> half.phenotypes(List.of("b")),
                () -> half.segregation("B"),
                () -> half.explain(List.of("b")),
                () -> half.count(Phenotype.of("b", "no"), 3))) {
            IllegalArgumentException refused = assertThrows(IllegalArgumentException.class, question::run);
            assertEquals("the sire's genotype \"A/a\" does not say what locus B carries", refused.getMessage());
        }
        IllegalArgumentException refused = assertThrows(
                IllegalArgumentException.class,
                () -> cross(model, "A/a B/b", "A/a").phenotypes(List.of("b")));
        assertEquals("the dam's genotype \"A/a\" does not say what locus B carries", refused.getMessage());
        young(ImmutableMap.of("a: yes", 3, "a: no", 1), half, "a");
    }

    /** Kits of one known pair are independent, so the count is binomial; of a pair not wholly known it is a mixture. */
    @Test
    void kits_of_a_pair_whose_phase_is_open_depend_on_one_another() {
        Model model = with(
                letters("A", "B"),
                m -> m.group(LinkageGroup.autosomal("one", List.of("A", "B"), List.of(Probability.ZERO))));
        Cross open = cross(model, "A/a B/b", "a/a b/b");
        Phenotype both = Phenotype.parse("a: yes, b: yes");
        // in coupling half the young show both, in repulsion none
        assertEquals(
                Distribution.ofWeights(ImmutableMap.of(0, 5, 1, 2, 2, 1)),
                open.count(View.of(List.of("a", "b")), both, LitterSize.of(2)));
        assertEquals(Optional.of(Probability.of(1, 4)), Optional.of(open.probability(both)));
    }

    /**
     * Both recessives die, and the loci never recombine. In coupling with coupling a third of those left is pure at both, with any
     * repulsion none; kits are weighed mating by mating, so that it is a quarter of a third.
     */
    @Test
    void an_open_phase_that_decides_who_is_lost() {
        Model lethal = Model.builder(
                        "open",
                        "1",
                        Catalogue.builder("open.traits", "1")
                                .trait("a", "yes", "no")
                                .build())
                .locus(
                        "A",
                        locus -> locus.alleles("A", "a")
                                .shows("A", "pure")
                                .shows("A/a", "mixed")
                                .shows("a", "dies"))
                .locus(
                        "B",
                        locus -> locus.alleles("B", "b")
                                .shows("B", "pure")
                                .shows("B/b", "mixed")
                                .shows("b", "dies"))
                .group(LinkageGroup.autosomal("one", List.of("A", "B"), List.of(Probability.ZERO)))
                .trait(
                        "a",
                        rule -> rule.when(Condition.where("A", "pure").and("B", "pure"), "yes")
                                .otherwise("no"))
                .viability(Viability.lethal("a", "A", "dies"))
                .viability(Viability.lethal("b", "B", "dies"))
                .build();
        young(ImmutableMap.of("a: yes", 1, "a: no", 11), cross(lethal, "A/a B/b", "A/a B/b"), "a");
        young(ImmutableMap.of("a: yes", 1, "a: no", 2), cross(lethal, "[A B]/[a b]", "[A B]/[a b]"), "a");
        young(ImmutableMap.of("a: no", 1), cross(lethal, "[A b]/[a B]", "[A b]/[a B]"), "a");
    }

    /** Of the inner loci of four only their own interval counts, of loci that leave out their neighbours all that lie between. */
    @Test
    void a_part_of_a_chromosome_with_tabled_crossovers() {
        Map<String, Probability> patterns = ImmutableMap.of(
                "none", Probability.of(5, 10),
                "A-B", Probability.of(1, 10),
                "B-C", Probability.of(1, 10),
                "C-D", Probability.of(2, 10),
                "A-B C-D", Probability.of(1, 10));
        Model model = with(
                letters("A", "B", "C", "D"),
                m -> m.group(LinkageGroup.of(
                        "one",
                        Transmission.AUTOSOMAL,
                        List.of("A", "B", "C", "D"),
                        new Recombination.Crossovers(patterns))));
        Cross backcross = cross(model, "[A B C D]/[a b c d]", "a/a b/b c/c d/d");
        young(weights("b", "c", 9, 1, 1, 9), backcross, "b", "c");
        young(weights("c", "d", 7, 3, 3, 7), backcross, "c", "d");
        young(weights("b", "d", 6, 4, 4, 6), backcross, "b", "d");
        young(weights("a", "d", 6, 4, 4, 6), backcross, "a", "d"); // both ends changed are as none
        young(weights("a", "c", 7, 3, 3, 7), backcross, "a", "c");
    }

    @Test
    void parents_of_an_equal_model_are_parents_of_the_model() {
        Model model = letters("A", "B").build();
        Model same = letters("A", "B").build();
        Cross cross =
                Cross.of(CompiledModel.of(model), Genotype.parse(same, "A/a B/b"), Genotype.parse(same, "a/a B/b"));
        young(
                ImmutableMap.of("a: yes, b: yes", 3, "a: yes, b: no", 1, "a: no, b: yes", 3, "a: no, b: no", 1),
                cross,
                "a",
                "b");
        Cross half = Cross.of(CompiledModel.of(model), Genotype.parse(same, "A/a"), Genotype.parse(same, "A/a"));
        assertThrows(IllegalArgumentException.class, () -> half.phenotypes(List.of("b")));
    }

    @Test
    void parents_who_have_no_kits_at_all() {
        Model model = Model.builder(
                        "barren",
                        "1",
                        Catalogue.builder("barren.traits", "1")
                                .trait("a", "yes", "no")
                                .build())
                .locus(
                        "A",
                        locus -> locus.alleles("A", "a")
                                .shows("A", "x")
                                .shows("A/a", "dies")
                                .shows("a", "y"))
                .trait("a", rule -> rule.when(Condition.where("A", "x"), "yes").otherwise("no"))
                .viability(Viability.lethal("mixed", "A", "dies"))
                .build();
        Cross barren = cross(model, "A/A", "a/a");
        for (Executable question : List.<Executable>of(
                () -> barren.phenotypes(List.of("a")), () -> barren.approximate(View.of(List.of("a"))))) {
            IllegalArgumentException refused = assertThrows(IllegalArgumentException.class, question);
            assertEquals(
                    "no kit of A/A \u00d7 a/a is ever born, so that nothing can be said of what such kits show",
                    refused.getMessage());
        }
        young(ImmutableMap.of("a: yes", 1), cross(model, "A/A", "A/A"), "a");
    }
}
