package org.geneticsrules.cross;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.explanation.MatingExplanation;
import org.geneticsrules.explanation.Way;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Viability;
import org.geneticsrules.probability.Approximation;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.DocumentMaps;
import org.geneticsrules.testing.RandomModels;
import org.geneticsrules.testing.brute.Animal;
import org.geneticsrules.testing.brute.Founders;
import org.geneticsrules.testing.brute.Genome;
import org.geneticsrules.testing.brute.Litters;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.junit.jupiter.api.Test;

/** Parents of whom some pairs lose every kit: heterozygotes of locus U die before birth, so that U/U and u/u have none together. */
class InfertileMatingsTest {

    private static final Model MODEL = model();
    private static final Genome GENOME = new Genome(DocumentMaps.of(MODEL));
    private static final View VIEW = View.of(List.of("hue"));
    private static final Phenotype DARK = Phenotype.of("hue", "dark");
    private static final Phenotype PALE = Phenotype.of("hue", "pale");

    private static Model model() {
        Catalogue catalogue = Catalogue.builder("infertile.traits", "1.0.0")
                .trait("hue", "dark", "pale")
                .build();
        return Model.builder("infertile", "1.0.0", catalogue)
                .locus(
                        "U",
                        locus -> locus.alleles("U", "u")
                                .expressions("one kind", "mixed", "other kind")
                                .shows("U", "one kind")
                                .shows("U/u", "mixed")
                                .shows("u", "other kind"))
                .locus(
                        "B",
                        locus -> locus.alleles("B", "b")
                                .dominant("B", "b")
                                .shows("B", "dark")
                                .shows("b", "pale"))
                .viability(new Viability(
                        "mixed",
                        "U",
                        Set.of("mixed"),
                        Optional.empty(),
                        Probability.ZERO,
                        Probability.ONE,
                        Optional.empty()))
                .trait(
                        "hue",
                        rule -> rule.when(Condition.where("B", "dark"), "dark")
                                .when(Condition.where("B", "pale"), "pale"))
                .population(
                        "even",
                        population -> population
                                .frequency("U", "U", Probability.of(1, 3))
                                .frequency("U", "u", Probability.of(2, 3))
                                .frequency("B", "B", Probability.of(1, 4))
                                .frequency("B", "b", Probability.of(3, 4)))
                .build();
    }

    /** Some genotypes of one animal, for the engine and for the reference. */
    private record Some(Sex sex, List<Genotype> genotypes) {
        static Some of(Sex sex, String... texts) {
            List<Genotype> genotypes = new ArrayList<>();
            for (String text : texts) {
                genotypes.add(Genotype.parse(MODEL, text));
            }
            return new Some(sex, genotypes);
        }

        Parent parent() {
            GenotypeSet set = GenotypeSet.of(MODEL, genotypes.get(0));
            for (Genotype other : genotypes) {
                set = set.or(GenotypeSet.of(MODEL, other));
            }
            return Parent.among(set).from(MODEL.populations().get("even"));
        }

        Map<Animal, Probability> animals() {
            List<Map<String, String>> plain =
                    genotypes.stream().map(RandomModels::plain).toList();
            return Founders.of(GENOME, sex.word(), plain, Map.of(), "even", "scored", List.of());
        }
    }

    private static void agree(Sires sires, Some dam, Litters litters) {
        UncertainCross cross = UncertainCross.of(CompiledModel.of(MODEL), sires, dam.parent());
        Map<Phenotype, Probability> expected = new LinkedHashMap<>();
        litters.looks(Map.of(), List.of("hue")).forEach((look, chance) -> expected.put(Phenotype.from(look), chance));
        assertEquals(Optional.of(Distribution.of(expected)), cross.probable(VIEW));
        Approximation<Phenotype> close = cross.approximate(VIEW).orElseThrow();
        expected.forEach((look, chance) -> assertEquals(chance.toDouble(), close.chance(look), 1e-14));
        Distribution<Probability> dark = Distribution.of(litters.chances("", Map.of(), DARK.asMap()));
        assertEquals(Optional.of(dark), cross.chance(VIEW, DARK, List.of()));
        assertEquals(Set.copyOf(dark.outcomes()), Set.copyOf(cross.possibleChances(VIEW, DARK, List.of())));
        assertEquals(
                litters.given(List.of(new org.geneticsrules.testing.brute.Seen.Kit(
                                "", List.of(new org.geneticsrules.testing.brute.Seen(Map.of(), PALE.asMap())))))
                        .chances("", Map.of(), DARK.asMap()),
                cross.chance(VIEW, DARK, List.of(Sighting.of(PALE)))
                        .orElseThrow()
                        .asMap());
        MatingExplanation reasons = cross.explain(VIEW).orElseThrow();
        Map<Phenotype, Probability> sums = new LinkedHashMap<>();
        for (Way way : reasons.ways()) {
            sums.merge(way.phenotype(), way.probability(), Probability::plus);
        }
        assertEquals(expected, sums);
    }

    @Test
    void dams_that_have_no_kits_with_the_sire_are_left_out() {
        Some sire = Some.of(Sex.MALE, "U/U b/b");
        Some dam = Some.of(Sex.FEMALE, "U/U B/b", "u/u b/b");
        agree(Sires.of(sire.parent()), dam, Litters.of(GENOME, sire.animals(), dam.animals(), "born"));
    }

    @Test
    void the_sire_of_a_litter_is_a_male_who_has_kits_with_the_dam() {
        Some first = Some.of(Sex.MALE, "U/U B/B", "u/u B/b");
        Some second = Some.of(Sex.MALE, "u/u b/b");
        Some dam = Some.of(Sex.FEMALE, "U/U b/b", "u/u B/b", "u/u b/b");
        List<Probability> access = List.of(Probability.of(1, 4), Probability.of(3, 4));
        agree(
                Sires.oneOf(List.of(first.parent(), second.parent()), access),
                dam,
                Litters.oneOf(GENOME, List.of(first.animals(), second.animals()), access, dam.animals(), "born"));
    }

    @Test
    void the_share_of_a_male_who_has_no_kits_with_the_dam_goes_to_the_other() {
        Some first = Some.of(Sex.MALE, "U/U B/B", "u/u B/b");
        Some second = Some.of(Sex.MALE, "u/u b/b");
        Some dam = Some.of(Sex.FEMALE, "U/U b/b", "u/u B/b", "u/u b/b");
        List<Probability> access = List.of(Probability.of(1, 4), Probability.of(3, 4));
        agree(
                Sires.perKit(List.of(first.parent(), second.parent()), access),
                dam,
                Litters.perKit(GENOME, List.of(first.animals(), second.animals()), access, dam.animals(), "born"));
    }

    /** Where what was seen is decided by the locus at which kits die, a dam who has none with the sire is not among those left. */
    @Test
    void a_look_of_the_locus_at_which_kits_die() {
        Catalogue catalogue = Catalogue.builder("kinds.traits", "1.0.0")
                .trait("kind", "one", "other")
                .build();
        Model model = Model.builder("kinds", "1.0.0", catalogue)
                .locus(
                        "U",
                        locus -> locus.alleles("U", "u")
                                .shows("U", "one kind")
                                .shows("U/u", "mixed")
                                .shows("u", "other kind"))
                .trait(
                        "kind",
                        rule -> rule.when(Condition.where("U", "one kind"), "one")
                                .otherwise("other"))
                .viability(Viability.lethal("mixed", "U", "mixed"))
                .population(
                        "even",
                        population -> population
                                .frequency("U", "U", Probability.of(1, 2))
                                .frequency("U", "u", Probability.of(1, 2)))
                .build();
        Phenotype one = Phenotype.of("kind", "one");
        Parent sire = Parent.of(model, Genotype.parse(model, "U/U"));
        Parent dam = Parent.among(GenotypeSet.of(model, Genotype.parse(model, "U/U"))
                        .or(GenotypeSet.of(model, Genotype.parse(model, "u/u"))))
                .from(model.populations().get("even"));
        UncertainCross cross = UncertainCross.of(CompiledModel.of(model), sire, dam);
        for (List<Sighting> seen : List.of(List.<Sighting>of(), List.of(Sighting.of(one)))) {
            assertEquals(Optional.of(Distribution.certain(Probability.ONE)), cross.chance(one, seen));
        }
        assertEquals(Optional.empty(), cross.chance(one, List.of(Sighting.of(Phenotype.of("kind", "other")))));
    }
}
