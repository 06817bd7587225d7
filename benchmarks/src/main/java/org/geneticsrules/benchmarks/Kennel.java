package org.geneticsrules.benchmarks;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Population;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/**
 * Pedigrees for measuring, drawn with a seed: genotypes are handed down from founders of a population, and the looks of a share of the
 * animals are recorded. Models are such that nothing is linked, nothing is a matter of chance, and sex makes no difference.
 */
final class Kennel {

    private static final int KITS = 4;

    private final int kitsOfLitter;

    private final Model model;
    private final CompiledModel compiled;
    private final Population population;
    private final double recorded;
    private final SplittableRandom random;
    private final PedigreeBuilder builder;
    private final List<Map<String, int[]>> genotypes = new ArrayList<>();
    private final List<Sex> sexes = new ArrayList<>();
    private final Map<Genotype, Phenotype> looks = new HashMap<>();

    /** Millions of animals are drawn sooner if each genotype is looked at once. */
    private boolean remembering;

    private int litters;

    private Kennel(CompiledModel compiled, int kitsOfLitter, double recorded, long seed) {
        this.kitsOfLitter = kitsOfLitter;
        this.compiled = compiled;
        this.model = compiled.model();
        this.population = model.populations().values().iterator().next();
        this.recorded = recorded;
        this.random = new SplittableRandom(seed);
        this.builder = Pedigree.builder("kennel", "1");
    }

    /** A pedigree without loops: each litter has one parent of which nothing is known before, and one that was born in it and has no mate yet. */
    static Pedigree withoutLoops(CompiledModel compiled, int animals, double recorded, long seed) {
        Kennel kennel = new Kennel(compiled, KITS, recorded, seed);
        List<Integer> free = new ArrayList<>();
        free.add(kennel.founder(Sex.FEMALE));
        while (kennel.genotypes.size() < animals) {
            int parent = free.remove(kennel.random.nextInt(free.size()));
            Sex sex = kennel.sexes.get(parent);
            int mate = kennel.founder(sex.other());
            free.addAll(kennel.litter(sex == Sex.FEMALE ? mate : parent, sex == Sex.FEMALE ? parent : mate));
        }
        return kennel.builder.build();
    }

    /** A kennel of overlapping generations: each litter has parents drawn from the younger half of the animals. */
    static Pedigree inbred(CompiledModel compiled, int animals, int founders, double recorded, long seed) {
        Kennel kennel = new Kennel(compiled, KITS, recorded, seed);
        for (int i = 0; i < founders; i++) {
            kennel.founder(i % 2 == 0 ? Sex.FEMALE : Sex.MALE);
        }
        int each = Math.max(1, (animals - founders) / 10);
        int from = 0;
        int to = founders;
        while (kennel.genotypes.size() < animals) {
            int until = Math.min(animals, kennel.genotypes.size() + each);
            while (kennel.genotypes.size() < until) {
                kennel.litter(kennel.any(Sex.MALE, from, to), kennel.any(Sex.FEMALE, from, to));
            }
            from = to / 2;
            to = kennel.genotypes.size();
        }
        return kennel.builder.build();
    }

    /** One litter of two founders; all animals are recorded. */
    static Pedigree litter(CompiledModel compiled, int kits, long seed) {
        Kennel kennel = new Kennel(compiled, kits, 1, seed);
        kennel.litter(kennel.founder(Sex.MALE), kennel.founder(Sex.FEMALE));
        return kennel.builder.build();
    }

    /** Couples of founders with two litters each; all animals are recorded. */
    static Pedigree families(CompiledModel compiled, int litters, int kits, long seed) {
        Kennel kennel = new Kennel(compiled, kits, 1, seed);
        kennel.remembering = true;
        while (kennel.litters < litters) {
            int sire = kennel.founder(Sex.MALE);
            int dam = kennel.founder(Sex.FEMALE);
            kennel.litter(sire, dam);
            kennel.litter(sire, dam);
        }
        return kennel.builder.build();
    }

    private int any(Sex sex, int from, int to) {
        int found = from + random.nextInt(to - from);
        while (sexes.get(found) != sex) {
            found = found + 1 == to ? from : found + 1;
        }
        return found;
    }

    private int founder(Sex sex) {
        Map<String, int[]> genotype = new LinkedHashMap<>();
        for (Locus locus : model.loci().values()) {
            genotype.put(locus.id(), new int[] {allele(locus), allele(locus)});
        }
        return add(genotype, sex);
    }

    private int allele(Locus locus) {
        double left = random.nextDouble();
        int found = 0;
        for (Allele allele : locus.alleles().values()) {
            left -= Objects.requireNonNull(population.frequencies().get(locus.id()), locus.id())
                    .probability(allele.id())
                    .toDouble();
            if (left < 0) {
                return found;
            }
            found++;
        }
        return found - 1;
    }

    private List<Integer> litter(int sire, int dam) {
        List<Integer> kits = new ArrayList<>();
        String[] names = new String[kitsOfLitter];
        for (int k = 0; k < kitsOfLitter; k++) {
            Map<String, int[]> genotype = new LinkedHashMap<>();
            for (String locus : model.loci().keySet()) {
                genotype.put(locus, new int[] {passed(sire, locus), passed(dam, locus)});
            }
            kits.add(add(genotype, random.nextBoolean() ? Sex.FEMALE : Sex.MALE));
            names[k] = name(kits.get(k));
        }
        builder.add(Litter.of("litter " + litters++, name(dam), name(sire), names));
        return kits;
    }

    private int passed(int parent, String locus) {
        return Objects.requireNonNull(genotypes.get(parent).get(locus), locus)[random.nextInt(2)];
    }

    private int add(Map<String, int[]> genotype, Sex sex) {
        int number = genotypes.size();
        genotypes.add(genotype);
        sexes.add(sex);
        Individual individual = Individual.of(name(number), sex).from(population.id());
        if (random.nextDouble() < recorded) {
            List<AllelePair> pairs = new ArrayList<>();
            genotype.forEach((locus, at) ->
                    pairs.add(model.locus(locus).pair(Math.min(at[0], at[1]), Math.max(at[0], at[1]))));
            individual = individual.with(Observation.of(LifeStage.unstated(), look(Genotype.of(model, pairs))));
        }
        builder.add(individual);
        return number;
    }

    private Phenotype look(Genotype genotype) {
        return remembering ? looks.computeIfAbsent(genotype, this::worked) : worked(genotype);
    }

    private Phenotype worked(Genotype genotype) {
        return compiled.express(genotype, model.visibleTraits()).phenotype();
    }

    private static String name(int number) {
        return "animal " + number;
    }
}
