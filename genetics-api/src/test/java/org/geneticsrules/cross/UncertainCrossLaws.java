package org.geneticsrules.cross;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.geneticsrules.explanation.Way;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.model.Population;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.BruteForce;
import org.geneticsrules.testing.Copies;
import org.geneticsrules.testing.DocumentMaps;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomModels;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sighting;

/** Laws of matings of parents of whom only a set of genotypes is known, for any model. */
@Once
class UncertainCrossLaws {

    /** A mating with the sets of its parents written out for the brute-force engine. */
    private record Mating(
            Model model,
            UncertainCross cross,
            List<String> traits,
            Distribution<Map<String, String>> sires,
            Distribution<Map<String, String>> dams) {}

    @Provide
    Arbitrary<Model> models() {
        return RandomModels.models(RandomModels.Size.SMALL);
    }

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 60)
    void probable_young_are_the_mixture_over_all_parents(@ForAll("models") Model model, @ForAll("seeds") long seed) {
        mating(model, seed).ifPresent(UncertainCrossLaws::probableIsTheMixture);
    }

    @Property(tries = 60)
    void possible_is_the_support_of_probable(@ForAll("models") Model model, @ForAll("seeds") long seed) {
        mating(model, seed).ifPresent(UncertainCrossLaws::possibleIsTheSupport);
    }

    @Property(tries = 40)
    void kits_of_one_litter_depend_through_their_parents(@ForAll("models") Model model, @ForAll("seeds") long seed) {
        mating(model, seed).ifPresent(UncertainCrossLaws::littersAreMixtures);
    }

    @Property(tries = 60)
    void reasons_add_up_to_the_chances(@ForAll("models") Model model, @ForAll("seeds") long seed) {
        mating(model, seed).ifPresent(UncertainCrossLaws::reasonsAddUp);
    }

    private static void probableIsTheMixture(Mating mating) {
        Map<String, Object> document = DocumentMaps.of(mating.model());
        Distribution<Map<String, String>> young = BruteForce.offspring(document, mating.sires(), mating.dams());
        Distribution<Map<String, String>> expected = BruteForce.phenotypes(document, young, mating.traits());
        assertEquals(
                expected,
                mating.cross().probable(mating.traits()).orElseThrow().map(Phenotype::asMap),
                () -> mating.model() + ": " + mating.cross());
    }

    private static void possibleIsTheSupport(Mating mating) {
        assertEquals(
                mating.cross().probable(mating.traits()).orElseThrow().outcomes(),
                mating.cross().possible(mating.traits()));
    }

    private static void littersAreMixtures(Mating mating) {
        Map<String, Object> document = DocumentMaps.of(mating.model());
        Phenotype look = mating.cross().possible(mating.traits()).iterator().next();
        Map<Probability, Probability> chances = new LinkedHashMap<>();
        mating.sires()
                .asMap()
                .forEach((sire, p) -> mating.dams().asMap().forEach((dam, q) -> {
                    Probability chance = BruteForce.phenotypes(
                                    document, BruteForce.offspring(document, sire, dam), List.copyOf(look.traits()))
                            .probability(look.asMap());
                    chances.merge(chance, p.times(q), Probability::plus);
                }));
        Distribution<Probability> expected = Distribution.of(chances);
        UncertainCross cross = mating.cross();
        assertEquals(expected, cross.chance(look, List.of()).orElseThrow(), () -> mating.model() + ": " + cross);
        assertEquals(Set.copyOf(expected.outcomes()), Set.copyOf(cross.possibleChances(look)));
        assertEquals(
                BruteForce.counts(document, mating.sires(), mating.dams(), 2, look.asMap()),
                cross.count(look, 2, List.of()).orElseThrow());
        assertEquals(
                secondGivenFirst(mating, look),
                cross.next(look, List.of(Sighting.of(look))).orElseThrow());
    }

    /** E(p l) / E(l) over the parents, where l is the chance of a kit that shows no modelled trait otherwise than the first did. */
    private static Probability secondGivenFirst(Mating mating, Phenotype look) {
        Map<String, Object> document = DocumentMaps.of(mating.model());
        Probability both = Probability.ZERO;
        Probability first = Probability.ZERO;
        for (Map.Entry<Map<String, String>, Probability> sire :
                mating.sires().asMap().entrySet()) {
            for (Map.Entry<Map<String, String>, Probability> dam :
                    mating.dams().asMap().entrySet()) {
                Distribution<Map<String, String>> kit = BruteForce.phenotypes(
                        document,
                        BruteForce.offspring(document, sire.getKey(), dam.getKey()),
                        List.copyOf(look.traits()));
                Probability weight = sire.getValue().times(dam.getValue());
                Probability likelihood = weight.times(
                        kit.probabilityOf(seen -> look.asMap().entrySet().containsAll(seen.entrySet())));
                first = first.plus(likelihood);
                both = both.plus(likelihood.times(kit.probability(look.asMap())));
            }
        }
        return both.dividedBy(first);
    }

    private static void reasonsAddUp(Mating mating) {
        Map<Phenotype, Probability> sums = new LinkedHashMap<>();
        for (Way way : mating.cross().explain(mating.traits()).orElseThrow().ways()) {
            sums.merge(way.phenotype(), way.probability(), Probability::plus);
        }
        assertEquals(mating.cross().probable(mating.traits()).orElseThrow(), Distribution.of(sums));
    }

    /** Draws sets of one to three random genotypes, each blurred at some loci; empty if a set has too many members to list. */
    private static Optional<Mating> mating(Model model, long seed) {
        Model positive = withPositiveFrequencies(model);
        SplittableRandom random = new SplittableRandom(seed);
        Population population = positive.populations().get("even");
        GenotypeSet sire = set(positive, random);
        GenotypeSet dam = set(positive, random);
        Map<String, Object> document = DocumentMaps.of(positive);
        Optional<Distribution<Map<String, String>>> sires = listed(positive, document, sire);
        Optional<Distribution<Map<String, String>>> dams = listed(positive, document, dam);
        assertTrue(sires.isPresent() && dams.isPresent());
        UncertainCross cross = UncertainCross.of(
                CompiledModel.of(positive),
                Parent.among(sire).from(population),
                Parent.among(dam).from(population));
        boolean small = sires.get().outcomes().size() * dams.get().outcomes().size() <= 400;
        List<String> traits = List.copyOf(positive.visibleTraits());
        return small ? Optional.of(new Mating(positive, cross, traits, sires.get(), dams.get())) : Optional.empty();
    }

    private static GenotypeSet set(Model model, SplittableRandom random) {
        GenotypeSet set = null;
        int boxes = random.nextInt(1, 4);
        for (int i = 0; i < boxes; i++) {
            Genotype genotype = RandomModels.genotype(model, random.nextLong());
            Set<String> kept = new LinkedHashSet<>(model.loci().keySet());
            kept.removeIf(locus -> random.nextInt(3) == 0);
            GenotypeSet box = GenotypeSet.of(model, genotype.restrictedTo(kept));
            set = set == null ? box : set.or(box);
        }
        return set;
    }

    private static Optional<Distribution<Map<String, String>>> listed(
            Model model, Map<String, Object> document, GenotypeSet set) {
        List<Map<String, String>> members = BruteForce.genotypes(document).stream()
                .filter(genotype -> set.contains(RandomModels.genotype(model, genotype)))
                .toList();
        return BruteForce.founders(document, members, "even");
    }

    /** The same model with one more population, in which no allele is absent: 1 : 2 : 3 .. in declared order. */
    private static Model withPositiveFrequencies(Model model) {
        ModelBuilder builder = Copies.of(model);
        builder.population(
                "even",
                population -> model.loci().values().forEach(locus -> {
                    int k = locus.alleles().size();
                    int position = 1;
                    for (String allele : locus.alleles().keySet()) {
                        population.frequency(locus.id(), allele, Probability.of(position++, k * (k + 1L) / 2));
                    }
                }));
        return builder.build();
    }
}
