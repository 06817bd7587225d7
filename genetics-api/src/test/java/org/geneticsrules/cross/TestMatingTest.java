package org.geneticsrules.cross;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.model.Population;
import org.geneticsrules.model.Viability;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.junit.jupiter.api.Test;

/** Test matings in models with losses, linkage and sex chromosomes, by hand. */
class TestMatingTest {

    private static final View COAT = View.of(List.of("coat"));
    private static final Set<Phenotype> WHITE = Set.of(Phenotype.of("coat", "white"));
    private static final LitterSize KIT = LitterSize.of(1);
    private static final Probability HALF = Probability.of(1, 2);

    /** Locus A, seen as coloured or white, and locus L, which is not seen. */
    private static Model model(Consumer<ModelBuilder> more) {
        ModelBuilder model = Model.builder(
                        "test-matings",
                        "1",
                        Catalogue.builder("test-matings.traits", "1")
                                .trait("coat", "coloured", "white")
                                .trait("kind", "one", "another")
                                .build())
                .locus(
                        "A",
                        locus -> locus.alleles("A", "a")
                                .dominant("A", "a")
                                .shows("A", "full")
                                .shows("a", "none"))
                .locus(
                        "L",
                        locus -> locus.alleles("L", "l")
                                .shows("L", "one kind")
                                .shows("L/l", "mixed")
                                .shows("l", "other kind"))
                .trait(
                        "coat",
                        rule -> rule.when(Condition.where("A", "none"), "white").otherwise("coloured"))
                .population(
                        "even",
                        population -> population
                                .frequency("A", "A", HALF)
                                .frequency("A", "a", HALF)
                                .frequency("L", "L", HALF)
                                .frequency("L", "l", HALF));
        more.accept(model);
        return model.build();
    }

    private static Parent parent(Model model, String genotype) {
        return Parent.of(model, Genotype.parse(model, genotype));
    }

    private static Parent open(Model model, String genotype) {
        return Parent.among(GenotypeSet.parse(model, genotype, OmittedLoci.UNKNOWN));
    }

    private static TestMating test(Model model, Sex sex, Parent tested, Mate mate) {
        return TestMating.of(CompiledModel.of(model), sex, tested, mate);
    }

    /**
     * The lethal allele l lies with A on one strand: of the young of [A l]/[a L] and [A l]/[a L] those with A/A die, so that two of
     * three daughters are as their parents, and one is a/a. Mated back, the former have 1/3 of white kits, the latter 1/2.
     */
    @Test
    void daughters_who_live_to_be_mates() {
        Model model =
                model(more -> more.group(LinkageGroup.autosomal("one", List.of("A", "L"), List.of(Probability.ZERO)))
                        .viability(Viability.lethal("lost", "L", "other kind")));
        Parent hybrid = parent(model, "[A l]/[a L]");
        Mate daughters = Mate.ownYoung(hybrid);
        Detection many = test(model, Sex.MALE, hybrid, daughters)
                .byManyMates(COAT, WHITE, KIT)
                .orElseThrow();
        assertEquals(Distribution.certain(Probability.of(11, 18)), many.step());
        Detection one = test(model, Sex.MALE, hybrid, daughters)
                .byOneMate(COAT, WHITE, KIT)
                .orElseThrow();
        assertEquals(Distribution.ofWeights(ImmutableMap.of(Probability.of(2, 3), 2, HALF, 1)), one.step());
        // counted among the conceived, a quarter of the kits of the former is white
        assertEquals(
                Distribution.certain(Probability.of(2, 3)),
                test(model, Sex.MALE, hybrid, daughters)
                        .byManyMates(COAT.among(Census.CONCEIVED), WHITE, KIT)
                        .orElseThrow()
                        .step());
        Detection sons = test(model, Sex.FEMALE, hybrid, daughters)
                .byManyMates(COAT, WHITE, KIT)
                .orElseThrow();
        assertEquals(many, sons);
    }

    /** Heterozygotes at L die, so that a mate of the other kind has no kits; of the two kinds only the like one tests anything. */
    @Test
    void mates_that_have_no_kits_test_nothing() {
        Model model = model(more -> more.viability(Viability.lethal("mixed", "L", "mixed"))
                .trait(
                        "kind",
                        rule -> rule.when(Condition.where("L", "one kind"), "one")
                                .otherwise("another")));
        View both = View.of(List.of("coat", "kind"));
        Set<Phenotype> sign = Set.of(Phenotype.parse("coat: white, kind: one"));
        Parent tested = parent(model, "A/a L/L");
        Parent white = open(model, "a/a").from(model.populations().get("even"));
        Detection detection = test(model, Sex.MALE, tested, Mate.of(white))
                .byOneMate(both, sign, KIT)
                .orElseThrow();
        assertEquals(Distribution.certain(HALF), detection.step());
        assertEquals(
                Optional.empty(),
                test(model, Sex.MALE, tested, Mate.of(parent(model, "a/a l/l"))).byOneMate(both, sign, KIT));
    }

    /** The same though nobody asks about what is seen of the locus at which all kits die. */
    @Test
    void a_pair_without_kits_tests_nothing_at_any_other_locus() {
        Model model = model(more -> more.viability(Viability.lethal("mixed", "L", "mixed")));
        Parent tested = parent(model, "A/a L/L");
        TestMating barren = test(model, Sex.MALE, tested, Mate.of(parent(model, "a/a l/l")));
        assertEquals(Optional.empty(), barren.byOneMate(COAT, WHITE, KIT));
        assertEquals(Optional.empty(), barren.byManyMates(COAT, WHITE, KIT));
        assertEquals(Set.of(), barren.proofs(COAT, parent(model, "A/A L/L")));
        assertEquals(
                Distribution.certain(HALF),
                barren.byOneMate(COAT.among(Census.CONCEIVED), WHITE, KIT)
                        .orElseThrow()
                        .step());
        TestMating fertile = test(model, Sex.MALE, tested, Mate.of(parent(model, "a/a L/L")));
        assertEquals(
                Distribution.certain(HALF),
                fertile.byOneMate(COAT, WHITE, KIT).orElseThrow().step());
        assertEquals(WHITE, fertile.proofs(COAT, parent(model, "A/A L/L")));
    }

    /**
     * Either the male is a carrier of one kind or, like half of his mates, of the other kind: heterozygotes at L die. The mates of his
     * kind alone count, and of these all are white, though half of all mates are not.
     */
    @Test
    void pairs_without_kits_are_left_out_where_what_is_known_ties_loci() {
        Model model = model(more -> more.viability(Viability.lethal("mixed", "L", "mixed")));
        Population even = model.populations().get("even");
        Parent tested = parent(model, "A/a L/L");
        Parent mates = either(model, "a/a L/L", "A/A l/l").from(even);
        TestMating test = test(model, Sex.MALE, tested, Mate.of(mates));
        assertEquals(
                Distribution.certain(HALF),
                test.byManyMates(COAT, WHITE, KIT).orElseThrow().step());
        // among the conceived the kits of the others count as well, one pair as often as the other
        assertEquals(
                Distribution.certain(Probability.of(3, 4)),
                test.byManyMates(COAT.among(Census.CONCEIVED), WHITE, KIT)
                        .orElseThrow()
                        .step());
        // the carrier has no kit with these mates, so that a white kit is never his
        TestMating other = test(
                model, Sex.FEMALE, either(model, "A/a l/l", "A/A L/L").from(even), Mate.of(parent(model, "a/a L/L")));
        assertEquals(
                Distribution.certain(Probability.ONE),
                other.byOneMate(COAT, WHITE, KIT).orElseThrow().step());
        assertEquals(Set.of(), other.proofs(COAT, parent(model, "A/A L/L")));
        assertEquals(WHITE, other.proofs(COAT.among(Census.CONCEIVED), parent(model, "A/A L/L")));
    }

    private static Parent either(Model model, String one, String other) {
        return Parent.among(GenotypeSet.of(model, Genotype.parse(model, one))
                .or(GenotypeSet.of(model, Genotype.parse(model, other))));
    }

    /** A mate's own look ties its loci: of daughters that look as a/a or l/l ones do, those that are l/l have no kits with the male. */
    @Test
    void what_was_seen_of_mates_ties_loci() {
        Model model = model(more -> more.viability(Viability.lethal("mixed", "L", "mixed"))
                .trait(
                        "kind",
                        rule -> rule.when("a", Condition.where("A", "none"), new CaseState.Certain("one"))
                                .when(
                                        "l",
                                        Condition.where("A", "full").and("L", "other kind"),
                                        new CaseState.Certain("one"))
                                .otherwise("another")));
        Parent either = open(model, "A/a").from(model.populations().get("even"));
        Mate daughters = Mate.youngOf(either, either).seen(Sighting.of(Phenotype.of("kind", "one")));
        // born are L/L and l/l, as their parents are; of a/a L/L, a/a l/l and A/- l/l only the first has kits with the
        // sire
        assertEquals(
                Distribution.certain(HALF),
                test(model, Sex.MALE, parent(model, "A/a L/L"), daughters)
                        .byManyMates(COAT, WHITE, KIT)
                        .orElseThrow()
                        .step());
    }

    /** A carrier dam of an X-linked recessive gives it to half her sons; a normal sire hides it in daughters. */
    @Test
    void a_carrier_of_an_x_linked_recessive() {
        Model model = model(more -> more.group(LinkageGroup.single(Transmission.X, "A")));
        Mate sire = Mate.of(parent(model, "A/Y L/L"));
        Detection detection = test(model, Sex.FEMALE, parent(model, "A/a L/L"), sire)
                .byOneMate(COAT, WHITE, KIT)
                .orElseThrow();
        assertEquals(Distribution.certain(Probability.of(3, 4)), detection.step());
        View sexed = View.of(List.of("coat", "sex"));
        assertEquals(
                Set.of(Phenotype.parse("coat: white, sex: male")),
                test(model, Sex.FEMALE, parent(model, "A/a L/L"), sire).proofs(sexed, parent(model, "A/A L/L")));
        assertEquals( // that she is not white herself, any coloured kit shows
                Set.of(Phenotype.parse("coat: coloured, sex: female"), Phenotype.parse("coat: coloured, sex: male")),
                test(model, Sex.FEMALE, parent(model, "A/a L/L"), Mate.of(parent(model, "a/Y L/L")))
                        .proofs(sexed, parent(model, "a/a L/L")));
    }

    /** Half the sons of a carrier are white themselves: mated with a carrier they have white kits in 1/2, the others in 1/4. */
    @Test
    void sons_of_a_carrier_of_an_x_linked_recessive() {
        Model model = model(more -> more.group(LinkageGroup.single(Transmission.X, "A")));
        Parent carrier = parent(model, "A/a L/L");
        Mate sons = Mate.youngOf(parent(model, "A/Y L/L"), carrier);
        assertEquals(
                Distribution.ofWeights(ImmutableMap.of(Probability.of(3, 4), 1, HALF, 1)),
                test(model, Sex.FEMALE, carrier, sons)
                        .byOneMate(COAT, WHITE, KIT)
                        .orElseThrow()
                        .step());
        // daughters of a white sire carry: half their sons by the same sire are white, and half their daughters
        Parent white = parent(model, "a/Y L/L");
        assertEquals(
                Distribution.certain(HALF),
                test(model, Sex.MALE, white, Mate.ownYoung(parent(model, "A/A L/L")))
                        .byOneMate(COAT, WHITE, KIT)
                        .orElseThrow()
                        .step());
        // what only the dam hands down
        Model maternal = model(more -> more.group(LinkageGroup.single(Transmission.MATERNAL, "A")));
        assertEquals(
                Distribution.certain(Probability.ZERO),
                test(
                                maternal,
                                Sex.MALE,
                                parent(maternal, "A L/L"),
                                Mate.youngOf(parent(maternal, "A L/L"), parent(maternal, "a L/L")))
                        .byOneMate(COAT, WHITE, KIT)
                        .orElseThrow()
                        .step());
    }

    /** Each animal that is only partly known is named by its part in the test. */
    @Test
    void whoever_is_only_partly_known_is_named() {
        Model model = model(more -> {});
        Parent open = open(model, "A/-");
        Parent known = parent(model, "A/a L/L");
        String tail = " is only partly known at A, and no population is named";
        needs("the animal tested" + tail, test(model, Sex.MALE, open, Mate.of(known)));
        needs("the mate" + tail, test(model, Sex.MALE, known, Mate.of(open)));
        needs("the other parent of the mate" + tail, test(model, Sex.MALE, known, Mate.ownYoung(open)));
        needs("the sire of the mate" + tail, test(model, Sex.MALE, known, Mate.youngOf(open, known)));
        needs("the dam of the mate" + tail, test(model, Sex.MALE, known, Mate.youngOf(known, open)));
    }

    private static void needs(String message, TestMating test) {
        ProblemsException refused =
                assertThrows(ProblemsException.class, () -> test.byOneMate(COAT, WHITE, KIT), message);
        assertEquals(1, refused.problems().size(), refused::getMessage);
        assertTrue(refused.getMessage().startsWith(message), refused::getMessage);
    }

    /** Sisters of one family are all free or share a carrier parent; a dam of her own for each mate mixes the families. */
    @Test
    void young_of_other_animals_that_are_sibs_or_not() {
        Model model = model(more -> {});
        Parent sire = parent(model, "A/A L/L");
        Parent dam = open(model, "A/- L/L").from(model.populations().get("even")); // A/A 1 : A/a 2
        Parent tested = parent(model, "A/a L/L");
        // of a carrier dam half the daughters carry: 1/8 of their kits are white, none of those of a free dam
        assertEquals(
                Distribution.ofWeights(ImmutableMap.of(Probability.ONE, 1, Probability.of(7, 8), 2)),
                test(model, Sex.MALE, tested, Mate.youngOf(sire, dam).asSibs())
                        .byManyMates(COAT, WHITE, KIT)
                        .orElseThrow()
                        .step());
        assertEquals(
                Distribution.certain(Probability.of(11, 12)),
                test(model, Sex.MALE, tested, Mate.youngOf(sire, dam))
                        .byManyMates(COAT, WHITE, KIT)
                        .orElseThrow()
                        .step());
        assertEquals(
                "male A/a L/L tested by " + Mate.of(sire),
                test(model, Sex.MALE, tested, Mate.of(sire)).toString());
    }

    @Test
    void the_loci_at_which_frequencies_are_lacking_are_named() {
        Model model = model(more -> {});
        assertEquals(
                List.of("A"),
                test(model, Sex.MALE, parent(model, "A/a L/L"), Mate.of(open(model, "L/L")))
                        .missingFrequencies(COAT));
        assertEquals(
                List.of(),
                test(model, Sex.MALE, parent(model, "A/a L/L"), Mate.of(parent(model, "a/a L/l")))
                        .missingFrequencies(COAT));
    }

    @Test
    void a_sign_names_what_is_looked_at() {
        Model model = model(more -> {});
        Parent known = parent(model, "A/a L/L");
        IllegalArgumentException refused = assertThrows(
                IllegalArgumentException.class,
                () -> test(model, Sex.MALE, known, Mate.of(known))
                        .byManyMates(COAT, Set.of(Phenotype.of("hue", "none")), KIT));
        assertEquals(
                "a sign names only traits that are looked at, here [coat], but one was \"hue: none\"",
                refused.getMessage());
    }
}
