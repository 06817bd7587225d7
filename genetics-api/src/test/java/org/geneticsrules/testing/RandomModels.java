package org.geneticsrules.testing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.Function;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.RandomDistribution;
import org.geneticsrules.evidence.Evidence;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;

/**
 * Valid models drawn from a seed, for laws that must hold of any model.
 *
 * <p>A model has 1 to 4 loci of 1 to 4 alleles whose dominance is an order, a table or both; 1 to 4 visible traits and up to 2 inner
 * ones, whose cases are the leaves of a decision tree and therefore disjoint; up to 4 masks, some over others; and 1 or 2 populations
 * that name every locus. Not every combination is modelled, some symbols belong to two loci, and some statements name evidence.
 *
 * <p>The same seed gives the same model everywhere. The seed is the last part of the model's id, so a failing law names it.
 */
public final class RandomModels {

    /** How a model may turn out larger or smaller. */
    public record Size(int loci, int alleles, int traits) {
        /** Up to 4 loci of 4 alleles and 4 visible traits. */
        public static final Size FULL = new Size(4, 4, 4);

        /** Up to 3 loci of 3 alleles and 2 visible traits, for laws that list pairs of genotypes. */
        public static final Size SMALL = new Size(3, 3, 2);
    }

    private static final List<String> SEASONS = List.of("summer", "winter");

    private RandomModels() {}

    /**
     * Returns models of full size.
     *
     * @return an arbitrary that draws uniformly random seeds
     */
    public static Arbitrary<Model> models() {
        return models(Size.FULL);
    }

    /**
     * Returns models up to a size.
     *
     * @param size the largest numbers of loci, alleles and visible traits
     * @return an arbitrary that draws uniformly random seeds
     */
    public static Arbitrary<Model> models(Size size) {
        return seeds().map(seed -> model(seed, size)).withoutEdgeCases();
    }

    /**
     * Returns small models that use the whole language: sexes and their chromosomes, linkage, mutation, viability, chance, progression,
     * thresholds and seasons.
     *
     * @return an arbitrary that draws uniformly random seeds
     */
    public static Arbitrary<Model> whole() {
        return seeds().map(RandomModels::whole).withoutEdgeCases();
    }

    private static Arbitrary<Long> seeds() {
        return Arbitraries.longs().between(0, Long.MAX_VALUE).withDistribution(RandomDistribution.uniform());
    }

    /**
     * Returns the model of a seed.
     *
     * @param seed any number
     * @param size the largest numbers of loci, alleles and visible traits
     * @return a valid model, the same for the same arguments
     */
    public static Model model(long seed, Size size) {
        SplittableRandom random = new SplittableRandom(seed);
        List<RandomLocus> loci = new ArrayList<>();
        int count = random.nextInt(1, size.loci() + 1);
        for (int i = 0; i < count; i++) {
            loci.add(RandomLocus.draw(random, i, size.alleles()));
        }
        RandomRules rules = RandomRules.draw(random, loci, size.traits());
        Map<String, List<String>> alleles = new LinkedHashMap<>();
        loci.forEach(locus -> alleles.put(locus.id(), ids(locus)));
        return model(seed, random, rules, masks -> {
            ModelBuilder builder = start("random.seed" + seed, List.of(), rules);
            loci.forEach(locus -> builder.locus(locus.id(), locus::describe));
            return finish(builder, seed, alleles, rules, masks);
        });
    }

    /**
     * Returns a small model of a seed that uses the whole language. Its population {@code even} has no allele of frequency 0.
     *
     * @param seed any number
     * @return a valid model, the same for the same seed
     */
    public static Model whole(long seed) {
        return whole(seed, Size.SMALL);
    }

    /**
     * Returns a model of a seed that uses the whole language. Its population {@code even} has no allele of frequency 0.
     *
     * @param seed any number
     * @param size the largest numbers of loci, alleles and visible traits
     * @return a valid model, the same for the same arguments
     */
    public static Model whole(long seed, Size size) {
        SplittableRandom random = new SplittableRandom(seed);
        RandomGenome genome = RandomGenome.draw(random, size);
        Map<String, List<String>> variables = genome.expressions();
        RandomCases cases = new RandomCases(random, genome.expressions(), random.nextInt(10) < 8 ? 4 : 0);
        if (random.nextInt(3) == 0) {
            variables.put(Sex.VARIABLE, Sex.words());
        }
        boolean seasonal = random.nextInt(4) == 0;
        if (seasonal) {
            variables.put(LifeStage.SEASON, SEASONS);
        }
        RandomRules rules = RandomRules.draw(random, variables, size.traits(), Optional.of(cases));
        Map<String, List<String>> alleles = new LinkedHashMap<>();
        genome.loci().forEach(locus -> alleles.put(locus.locus().id(), ids(locus.locus())));
        return model(seed, random, rules, masks -> {
            ModelBuilder builder = start("random.whole" + seed, seasonal ? SEASONS : List.of(), rules);
            genome.addTo(builder);
            builder.population(
                    "even",
                    population -> alleles.forEach((locus, ids) -> {
                        long sum = ids.size() * (ids.size() + 1L) / 2;
                        for (int i = 0; i < ids.size(); i++) {
                            population.frequency(locus, ids.get(i), Probability.of(i + 1L, sum));
                        }
                    }));
            return finish(builder, seed, alleles, rules, masks);
        });
    }

    private static List<String> ids(RandomLocus locus) {
        return locus.alleles().stream().map(Allele::id).toList();
    }

    private static Model model(
            long seed, SplittableRandom random, RandomRules rules, Function<List<Mask>, Model> build) {
        // Masks that exclude each other or agree need no order; whether these do is for the model to say.
        List<Mask> masks = rules.masks();
        if (random.nextInt(3) == 0) {
            try {
                return build.apply(masks);
            } catch (ProblemsException conflict) {
                boolean only = conflict.problems().stream()
                        .allMatch(problem -> problem.code().equals("mask-conflict"));
                if (!only) {
                    throw conflict;
                }
            }
        }
        return build.apply(rules.ordered(masks, new SplittableRandom(seed + 1)));
    }

    /**
     * Returns a genotype that covers every locus.
     *
     * @param model a model
     * @param seed any number
     * @return each pair equally likely at each locus
     */
    public static Genotype genotype(Model model, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<AllelePair> pairs = new ArrayList<>();
        model.loci()
                .values()
                .forEach(locus ->
                        pairs.add(locus.pairs().get(random.nextInt(locus.pairs().size()))));
        return Genotype.of(model, pairs);
    }

    /**
     * Writes a genotype as {@link BruteForce} does.
     *
     * @param genotype a genotype
     * @return {@code a/b} by locus, allele ids in declared order, or {@code a}, or nothing
     */
    public static Map<String, String> plain(Genotype genotype) {
        Map<String, String> plain = new LinkedHashMap<>();
        genotype.pairs()
                .forEach((locus, pair) -> plain.put(
                        locus,
                        String.join("/", pair.alleles().stream().map(Allele::id).toList())));
        return plain;
    }

    /**
     * Reads a genotype as {@link BruteForce} writes it.
     *
     * @param model its model
     * @param plain {@code a/b} by locus, by allele ids, or {@code a}, or nothing
     * @return the genotype
     */
    public static Genotype genotype(Model model, Map<String, String> plain) {
        List<AllelePair> pairs = new ArrayList<>();
        plain.forEach((locus, pair) -> {
            int slash = pair.indexOf('/');
            pairs.add(
                    pair.isEmpty()
                            ? model.locus(locus).of()
                            : slash < 0
                                    ? model.locus(locus).hemizygous(pair)
                                    : model.locus(locus).pair(pair.substring(0, slash), pair.substring(slash + 1)));
        });
        return Genotype.of(model, pairs);
    }

    private static ModelBuilder start(String id, List<String> seasons, RandomRules rules) {
        Catalogue.Builder catalogue =
                Catalogue.builder("random.traits", "1.0.0").seasons(seasons.toArray(String[]::new));
        rules.visibleStates().forEach((trait, states) -> catalogue.trait(trait, states.toArray(String[]::new)));
        ModelBuilder builder = Model.builder(id, "1.0.0", catalogue.build());
        builder.evidence(Evidence.of("practice", Grade.PRACTICE, "Drawn at random."));
        builder.evidence(Evidence.of("study", Grade.ONE_STUDY, "Drawn at random.", "A random source"));
        return builder;
    }

    private static Model finish(
            ModelBuilder builder, long seed, Map<String, List<String>> alleles, RandomRules rules, List<Mask> masks) {
        SplittableRandom random = new SplittableRandom(seed + 2);
        rules.addTo(builder);
        masks.forEach(builder::mask);
        int populations = random.nextInt(1, 3);
        for (int p = 1; p <= populations; p++) {
            builder.population(
                    "population " + p,
                    population -> alleles.forEach((locus, ids) -> {
                        List<Integer> weights = new ArrayList<>();
                        int sum = 0;
                        for (int a = 0; a < ids.size(); a++) {
                            // An allele may be absent, but not all of them.
                            int weight = random.nextInt(a == 0 ? 1 : 0, 6);
                            weights.add(weight);
                            sum += weight;
                        }
                        for (int a = 0; a < weights.size(); a++) {
                            population.frequency(locus, ids.get(a), Probability.of(weights.get(a), sum));
                        }
                    }));
        }
        return builder.build();
    }
}
