package org.geneticsrules.cross;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.geneticsrules.explanation.MatingExplanation;
import org.geneticsrules.explanation.Way;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.BruteForce;
import org.geneticsrules.testing.DocumentMaps;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomModels;
import org.geneticsrules.testing.Relabelled;
import org.geneticsrules.trait.Phenotype;

/** Laws of matings of known parents, for any model. */
@Once
class CrossLaws {

    @Provide
    Arbitrary<Model> models() {
        return RandomModels.models();
    }

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 150)
    void young_are_those_of_listing_every_gamete(@ForAll("models") Model model, @ForAll("seeds") long seed) {
        agreesWithBruteForce(model, seed);
    }

    @Property(tries = 200)
    void reciprocal_matings_agree(@ForAll("models") Model model, @ForAll("seeds") long seed) {
        reciprocalAgree(model, seed);
    }

    @Property(tries = 200)
    void a_part_of_the_traits_is_the_marginal_of_all(@ForAll("models") Model model, @ForAll("seeds") long seed) {
        partIsMarginal(model, seed);
    }

    @Property(tries = 100)
    void the_square_gives_the_same_genotypes(@ForAll("models") Model model, @ForAll("seeds") long seed) {
        squareAgrees(model, seed);
    }

    @Property(tries = 150)
    void renaming_alleles_and_expressions_changes_no_chance(@ForAll("models") Model model, @ForAll("seeds") long seed) {
        relabellingChangesNothing(model, seed);
    }

    @Property(tries = 150)
    void reasons_add_up_to_the_chances(@ForAll("models") Model model, @ForAll("seeds") long seed) {
        reasonsAddUp(model, seed);
    }

    static void agreesWithBruteForce(Model model, long seed) {
        Cross cross = cross(model, seed);
        Map<String, Object> document = DocumentMaps.of(model);
        List<String> traits = List.copyOf(model.visibleTraits());
        Distribution<Map<String, String>> young =
                BruteForce.offspring(document, RandomModels.plain(cross.sire()), RandomModels.plain(cross.dam()));
        assertEquals(young, cross.genotypes(model.loci().keySet()).map(RandomModels::plain));
        Distribution<Map<String, String>> seen = BruteForce.phenotypes(document, young, traits);
        assertEquals(seen, cross.phenotypes().map(Phenotype::asMap), () -> model + ": " + cross);
        seen.asMap().forEach((phenotype, chance) -> {
            if (phenotype.size() == traits.size()) {
                assertEquals(chance, cross.probability(Phenotype.from(phenotype)));
            }
        });
    }

    static void reciprocalAgree(Model model, long seed) {
        Cross cross = cross(model, seed);
        assertEquals(
                cross.phenotypes(),
                Cross.of(model, cross.dam(), cross.sire()).phenotypes(),
                () -> model + ": " + cross);
    }

    static void partIsMarginal(Model model, long seed) {
        Cross cross = cross(model, seed);
        List<String> traits = List.copyOf(model.visibleTraits());
        List<String> part = traits.subList(0, 1 + Math.floorMod(seed, traits.size()));
        assertEquals(
                cross.phenotypes().map(phenotype -> phenotype.restrictedTo(part)),
                cross.phenotypes(part),
                () -> model + ": " + cross + " in " + part);
    }

    static void squareAgrees(Model model, long seed) {
        Cross cross = cross(model, seed);
        Set<String> loci = model.loci().keySet();
        assertEquals(cross.genotypes(loci), cross.square(loci).genotypes());
    }

    static void relabellingChangesNothing(Model model, long seed) {
        Relabelled relabelled = Relabelled.of(model);
        Cross cross = cross(model, seed);
        Cross renamed =
                Cross.of(relabelled.model(), relabelled.genotype(cross.sire()), relabelled.genotype(cross.dam()));
        assertEquals(cross.phenotypes(), renamed.phenotypes(), () -> model + ": " + cross);
    }

    static void reasonsAddUp(Model model, long seed) {
        Cross cross = cross(model, seed);
        List<String> traits = List.copyOf(model.visibleTraits());
        MatingExplanation explanation = cross.explain(traits);
        cross.phenotypes(traits).asMap().forEach((phenotype, chance) -> {
            Probability sum = Probability.ZERO;
            for (Way way : explanation.ways()) {
                if (way.phenotype().equals(phenotype)) {
                    Probability product = Probability.ONE;
                    for (Probability factor : way.factors().values()) {
                        product = product.times(factor);
                    }
                    assertEquals(product, way.probability());
                    sum = sum.plus(product);
                }
            }
            assertEquals(chance, sum, () -> model + ": " + cross + " " + phenotype);
        });
        assertHiddenChances(model, cross, traits, explanation);
    }

    /** What a kit of a look carries, recomputed by conditioning the brute-force distribution of genotypes. */
    private static void assertHiddenChances(
            Model model, Cross cross, List<String> traits, MatingExplanation explanation) {
        Map<String, Object> document = DocumentMaps.of(model);
        Distribution<Map<String, String>> young =
                BruteForce.offspring(document, RandomModels.plain(cross.sire()), RandomModels.plain(cross.dam()));
        Set<String> expected = new LinkedHashSet<>();
        Set<String> found = new LinkedHashSet<>();
        for (Phenotype look : cross.phenotypes(traits).outcomes()) {
            Distribution<Map<String, String>> behind = young.given(
                            kit -> BruteForce.phenotype(document, kit, traits).equals(look.asMap()))
                    .orElseThrow();
            for (String locus : CompiledModel.of(model).lociRead(traits)) {
                Distribution<String> pairs = behind.map(kit -> kit.get(locus));
                if (pairs.outcomes().size() > 1) {
                    expected.add(look + " | " + locus + " " + new TreeMap<>(pairs.asMap()));
                }
            }
        }
        explanation.hidden().forEach(hidden -> {
            Map<String, Probability> chances = new TreeMap<>();
            hidden.chances()
                    .orElseThrow()
                    .asMap()
                    .forEach((pair, chance) -> chances.put(
                            pair.alleles().get(0).id() + "/"
                                    + pair.alleles().get(1).id(),
                            chance));
            found.add(hidden.phenotype() + " | " + hidden.locus() + " " + chances);
        });
        assertEquals(
                new ArrayList<>(expected).stream().sorted().toList(),
                new ArrayList<>(found).stream().sorted().toList());
    }

    static Cross cross(Model model, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Genotype sire = RandomModels.genotype(model, random.nextLong());
        Genotype dam = RandomModels.genotype(model, random.nextLong());
        return Cross.of(model, sire, dam);
    }
}
