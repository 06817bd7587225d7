package org.geneticsrules.inference;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.apache.commons.statistics.inference.KolmogorovSmirnovTest;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.Once;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/**
 * What is said to have a chance of 30 % happens three times in ten: 1,000 pedigrees are drawn by a simulation of its own that shares
 * nothing with the engine, and what is concluded from their records is held to what the animals truly carried.
 *
 * <p>Two measures. Reliability: animals said to be carriers with a chance near p are carriers in a share near p. Rank: the place of the true
 * genotype among all, at random within its own chance, is even from 0 to 1 (the randomised probability integral transform: Czado, Gneiting
 * &amp; Held 2009, Biometrics 65:1254; for checking software by simulation Cook, Gelman &amp; Rubin 2006, J. Comput. Graph. Stat. 15:675).
 * The same measures find out an engine that is told wrong frequencies.
 */
@Once
class CalibrationTest {

    private static final int SIMULATIONS = 1000;
    private static final double ALBINO = 0.3;
    private static final double BROWN = 0.4;
    private static final double TEST_ERROR = 0.1;

    private static Model model(Probability albino) {
        return Model.builder(
                        "calibration",
                        "1",
                        Catalogue.builder("calibration.traits", "1")
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
                        "founders",
                        population -> population
                                .frequency("C", "C", albino.complement())
                                .frequency("C", "c", albino)
                                .frequency("B", "B", Probability.of(3, 5))
                                .frequency("B", "b", Probability.of(2, 5)))
                .build();
    }

    /** A pedigree and how many recessive alleles each animal truly has. */
    private record Drawn(Pedigree pedigree, List<int[]> recessives) {}

    /** Draws a pedigree with a loop: cousins have kits, and their grandparents are shared. */
    private static Drawn draw(SplittableRandom random) {
        // sire and dam of each animal, -1 for founders; even numbers are female
        int[][] parents = {
            {-1, -1}, {-1, -1}, {-1, -1}, {-1, -1}, {1, 0}, {1, 0}, {5, 2}, {3, 4}, {7, 6}, {7, 6}, {1, 0}, {9, 8}
        };
        List<boolean[][]> genotypes =
                new ArrayList<>(); // by animal: locus C then B, from the sire then the dam, whether recessive
        PedigreeBuilder builder = Pedigree.builder("drawn", "1");
        List<int[]> recessives = new ArrayList<>();
        for (int i = 0; i < parents.length; i++) {
            boolean[][] own = new boolean[2][2];
            for (int locus = 0; locus < 2; locus++) {
                for (int strand = 0; strand < 2; strand++) {
                    int parent = parents[i][strand];
                    own[locus][strand] = parent < 0
                            ? random.nextDouble() < (locus == 0 ? ALBINO : BROWN)
                            : genotypes.get(parent)[locus][random.nextInt(2)];
                }
            }
            genotypes.add(own);
            recessives.add(new int[] {count(own[0]), count(own[1])});
            builder.add(recorded(i, recessives.get(i), random));
            if (parents[i][0] >= 0) {
                builder.add(Litter.of("litter " + i, id(parents[i][1]), id(parents[i][0]), id(i)));
            }
        }
        return new Drawn(builder.build(), recessives);
    }

    private static int count(boolean[] strands) {
        return (strands[0] ? 1 : 0) + (strands[1] ? 1 : 0);
    }

    private static String id(int animal) {
        return "animal " + animal;
    }

    private static final Model TRUE = model(Probability.of(3, 10));

    private static Individual recorded(int number, int[] recessives, SplittableRandom random) {
        Individual one = Individual.of(id(number), number % 2 == 0 ? Sex.FEMALE : Sex.MALE)
                .from("founders");
        if (random.nextDouble() < 0.5) {
            String hue = recessives[0] == 2 ? "white" : recessives[1] == 2 ? "brown" : "black";
            one = one.with(Observation.of(LifeStage.unstated(), Phenotype.of("hue", hue)));
        }
        if (random.nextDouble() < 0.15) {
            int told = recessives[0];
            if (random.nextDouble() < TEST_ERROR) {
                told = (told + 1 + random.nextInt(2)) % 3; // either of the two others
            }
            AllelePair pair = TRUE.locus("C").pair(told == 2 ? "c" : "C", told == 0 ? "C" : "c");
            one = one.with(GenotypeTest.of(pair, Probability.of(1, 10)));
        }
        return one;
    }

    /** How far 1,000 simulations are from what was concluded. */
    private record Distance(double reliability, double rank, int middling) {}

    private static Distance distance(Model assumed) {
        CompiledModel compiled = CompiledModel.of(assumed);
        double[] stated = new double[10];
        double[] variance = new double[10];
        double[] seen = new double[10];
        int middling = 0;
        List<Double> ranks = new ArrayList<>();
        for (int seed = 0; seed < SIMULATIONS; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            Drawn drawn = draw(random);
            Conclusions found = Inference.of(compiled, drawn.pedigree()).conclude();
            // one animal and locus of each pedigree, so that what is counted is independent
            int animal = random.nextInt(drawn.recessives().size());
            int locus = random.nextInt(2);
            Posterior posterior = found.at(id(animal), locus == 0 ? "C" : "B").orElseThrow();
            int truth = drawn.recessives().get(animal)[locus];
            double[] chances = new double[3];
            posterior.chances().forEach((pair, chance) -> chances[recessives(pair)] += chance);
            double carries = chances[1] + chances[2];
            int bin = (int) Math.min(9, carries * 10);
            stated[bin] += carries;
            variance[bin] += carries * (1 - carries);
            seen[bin] += truth > 0 ? 1 : 0;
            middling += carries > 0.1 && carries < 0.9 ? 1 : 0;
            double below = 0;
            for (int recessives = 0; recessives < truth; recessives++) {
                below += chances[recessives];
            }
            ranks.add(below + random.nextDouble() * chances[truth]);
        }
        double squares = 0;
        for (int bin = 0; bin < 10; bin++) {
            // the certain are held to it in any case
            squares += variance[bin] > 0 ? Math.pow(seen[bin] - stated[bin], 2) / variance[bin] : 0;
        }
        double even = KolmogorovSmirnovTest.withDefaults()
                .test(ranks.stream().mapToDouble(one -> one).toArray(), x -> Math.max(0, Math.min(1, x)))
                .getPValue();
        return new Distance(squares, even, middling);
    }

    private static int recessives(AllelePair pair) {
        return (int) pair.alleles().stream()
                .map(Allele::id)
                .filter(id -> ImmutableList.of("c", "b").contains(id))
                .count();
    }

    @Test
    void what_is_stated_is_how_often_it_happens() {
        Distance found = distance(TRUE);
        assertTrue(found.middling() > SIMULATIONS / 3, () -> "too few are uncertain: " + found);
        // 10 bins: chi-squared with 10 degrees of freedom is above 29.59 in 1 of 1,000 (NIST/SEMATECH, Table of
        // critical values)
        assertTrue(found.reliability() < 29.59, found::toString);
        assertTrue(found.rank() > 0.001, found::toString);
    }

    @Test
    void wrong_frequencies_are_found_out() {
        Distance found = distance(model(Probability.of(3, 100)));
        assertTrue(found.reliability() > 29.59, found::toString);
        assertTrue(found.rank() < 0.001, found::toString);
    }
}
