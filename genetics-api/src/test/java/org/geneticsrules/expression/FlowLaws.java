package org.geneticsrules.expression;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Approximation;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.RandomModels;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/**
 * The quick ways through a diagram give what the general one gives, which is held to the enumeration of animals elsewhere: weights
 * that fit longs, weights that do not, and floating point.
 */
class FlowLaws {

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 400)
    void weights_of_any_size_flow_alike(@ForAll("seeds") long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Model model = RandomModels.model(random.nextLong(), RandomModels.Size.FULL);
        Diagram<Phenotype> diagram = CompiledModel.of(model).diagram();
        int bits = List.of(2, 40, 60, 60).get(random.nextInt(4));
        LocusWeights[] weights = weights(diagram, bits, random);
        Map<Phenotype, Probability> expected = exact(diagram, weights);
        assertEquals(Distribution.of(expected), diagram.distribution(weights));
        Approximation<Phenotype> close = diagram.approximate(weights);
        for (Phenotype outcome : diagram.outcomes()) {
            assertClose(expected.getOrDefault(outcome, Probability.ZERO), close, outcome);
        }
        double size = Arrays.stream(weights)
                .mapToDouble(level -> Math.log((double) level.total) / Math.log(2))
                .sum();
        Statistics.label("total")
                .collect(size < 62 ? "fits a long" : size < 120 ? "two digits" : "more digits")
                .coverage(sizes -> {
                    sizes.check("fits a long").percentage(share -> share > 10);
                    sizes.check("two digits").percentage(share -> share > 2);
                    sizes.check("more digits").percentage(share -> share > 0.7);
                });
    }

    private static LocusWeights[] weights(Diagram<?> diagram, int bits, SplittableRandom random) {
        List<LocusWeights> weights = new ArrayList<>();
        for (Level level : diagram.levels()) {
            long[] shares = new long[level.values().size()];
            for (int i = 0; i < shares.length; i++) {
                shares[i] = random.nextInt(3) == 0 ? 0 : random.nextLong(1L << bits) / shares.length;
            }
            shares[random.nextInt(shares.length)] += 1;
            weights.add(LocusWeights.of(shares));
        }
        return weights.toArray(LocusWeights[]::new);
    }

    private static Map<Phenotype, Probability> exact(Diagram<Phenotype> diagram, LocusWeights[] weights) {
        List<Chain> chains = new ArrayList<>();
        for (int l = 0; l < weights.length; l++) {
            chains.add(Chain.single(
                    diagram.loci().get(l),
                    Arrays.stream(weights[l].shares)
                            .mapToObj(BigInteger::valueOf)
                            .toArray(BigInteger[]::new)));
        }
        Weights flow = diagram.weigh(KitLaw.of(Sex.FEMALE, chains));
        Map<Phenotype, Probability> chances = new LinkedHashMap<>();
        for (int i = 0; i < flow.shares().length; i++) {
            chances.put(diagram.outcomes().get(i), Probability.of(flow.shares()[i], flow.total()));
        }
        return chances;
    }

    private static <T> void assertClose(Probability exact, Approximation<T> close, T outcome) {
        assertEquals(!exact.isZero(), close.isPossible(outcome), () -> outcome + " in " + close);
        assertTrue(close.relativeError() < 1e-12, () -> "error " + close.relativeError());
        assertEquals(exact.toDouble(), close.chance(outcome), 1e-12 * exact.toDouble(), () -> outcome + " in " + close);
    }

    /** Ten to the minus three hundred at each of three loci is far below what floating point holds, and still not impossible. */
    @Property(tries = 1)
    void what_is_very_improbable_stays_possible() {
        Model model = Model.builder("deep", "1.0.0", catalogue())
                .locus(
                        "A",
                        at -> at.alleles("A", "a")
                                .dominant("A", "a")
                                .shows("A", "dark")
                                .shows("a", "pale"))
                .locus(
                        "B",
                        at -> at.alleles("B", "b")
                                .dominant("B", "b")
                                .shows("B", "dark")
                                .shows("b", "pale"))
                .locus(
                        "C",
                        at -> at.alleles("C", "c")
                                .dominant("C", "c")
                                .shows("C", "dark")
                                .shows("c", "pale"))
                .trait(
                        "one",
                        rule -> rule.when(
                                        Condition.where("A", "pale")
                                                .and("B", Allowed.only("pale"))
                                                .and("C", Allowed.only("pale")),
                                        "pale")
                                .otherwise("dark"))
                .build();
        Diagram<Phenotype> diagram = CompiledModel.of(model).diagram();
        BigInteger rest = BigInteger.TEN.pow(300).subtract(BigInteger.ONE);
        List<Chain> chains = new ArrayList<>();
        for (String locus : diagram.loci()) {
            chains.add(Chain.single(locus, new BigInteger[] {rest, BigInteger.ONE}));
        }
        Approximation<Phenotype> close = diagram.approximate(KitLaw.of(Sex.FEMALE, chains));
        Phenotype pale = Phenotype.of("one", "pale");
        assertTrue(close.isPossible(pale));
        assertEquals(0, close.chance(pale));
        assertEquals(-900 * Math.log(10), close.log(pale), 1e-9);
        assertEquals(1, close.chance(Phenotype.of("one", "dark")));
        assertFalse(close.isPossible(Phenotype.of("one", "grey")));
        assertEquals(Double.NEGATIVE_INFINITY, close.log(Phenotype.of("one", "grey")));
        assertEquals(0, close.missing());
    }

    private static Catalogue catalogue() {
        return Catalogue.builder("deep.traits", "1.0.0")
                .trait("one", "dark", "pale")
                .build();
    }
}
