package org.geneticsrules.benchmarks;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import cc.mallet.grmm.inference.VariableElimination;
import cc.mallet.grmm.types.Assignment;
import cc.mallet.grmm.types.Factor;
import cc.mallet.grmm.types.Variable;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.comparison.ModelComparison;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.inference.Conclusions;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Approximation;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Phenotype;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A comparison of times means something only between ways that give the same answer. */
@Tag("default-jdk")
class SameAnswersTest {

    @ParameterizedTest
    @ValueSource(
            strings = {
                "visible 2",
                "visible 3",
                "visible 4",
                "visible 5",
                "visible 6",
                "visible 8",
                "visible 10",
                "chain 2",
                "chain 3",
                "chain 4",
                "chain 5",
                "chain 6",
                "chain 8",
                "chain 10",
                "coat"
            })
    void allWaysGiveTheSameChances(String mating) {
        Contest contest = Contest.of(mating);
        assertEquals(contest, contest.checked());
    }

    @Test
    void aNetworkOfAPedigreeGivesTheSameChances() {
        CompiledModel compiled = CompiledModel.of(Models.epistasis());
        for (Pedigree pedigree :
                List.of(Kennel.withoutLoops(compiled, 60, 0.5, 1), Kennel.inbred(compiled, 30, 6, 0.5, 2))) {
            NetworkPedigree network = new NetworkPedigree(compiled, pedigree);
            Conclusions found = Inference.of(compiled, pedigree).conclude();
            for (String animal : pedigree.order().subList(0, 20)) {
                for (String locus : List.of("C", "B")) {
                    double[] expected = compiled.model().locus(locus).pairs().stream()
                            .mapToDouble(pair ->
                                    found.at(animal, locus).orElseThrow().chance(pair))
                            .toArray();
                    assertArrayEquals(expected, network.query(animal, locus.equals("C") ? 0 : 1), 1e-12);
                }
            }
        }
    }

    @Test
    void anOutsideLibraryGivesTheSameChancesOfAPedigree() {
        CompiledModel compiled = CompiledModel.of(Models.epistasis());
        Pedigree pedigree = Kennel.withoutLoops(compiled, 30, 0.5, 1);
        NetworkPedigree network = new NetworkPedigree(compiled, pedigree);
        String asked = pedigree.order().get(0);
        List<Variable> variable = new ArrayList<>();
        Factor weights =
                new VariableElimination().unnormalizedMarginal(network.outside(variable, asked, 0), variable.get(0));
        double[] expected = network.query(asked, 0);
        for (int state = 0; state < expected.length; state++) {
            Assignment at = new Assignment(variable.get(0), state);
            assertEquals(expected[state], weights.value(at) / weights.sum(), 1e-9);
        }
    }

    @Test
    void allWaysGiveTheSameChancesOfLitters() {
        LitterBenchmark litters = new LitterBenchmark();
        litters.draw();
        double expected = litters.byLocus();
        assertEquals(expected, litters.jointly(), 1e-9);
        assertEquals(expected, litters.engine(), 1e-9);
    }

    /** Two litters of a couple are one, and how many kits of each sex there are is as likely as heads and tails. */
    @Test
    void listsOfGenotypesGiveTheSameChancesOfFamilies() {
        CompiledModel compiled = CompiledModel.of(Models.recordedCoat());
        Pedigree pedigree = Kennel.families(compiled, 20, 6, 3);
        Map<List<String>, List<Phenotype>> kits = new LinkedHashMap<>();
        for (Litter litter : pedigree.litters().values()) {
            List<Phenotype> looks = kits.computeIfAbsent(
                    List.of(litter.sires().males().get(0), litter.dam().orElseThrow()), key -> new ArrayList<>());
            litter.kits().forEach(kit -> looks.add(look(pedigree, kit)));
        }
        double expected = 0;
        for (Map.Entry<List<String>, List<Phenotype>> couple : kits.entrySet()) {
            Phenotype sire = look(pedigree, couple.getKey().get(0));
            Phenotype dam = look(pedigree, couple.getKey().get(1));
            expected += Math.log(new ListedLitter(compiled, sire, dam, couple.getValue()).byLocus())
                    - Math.log(new ListedLitter(compiled, sire, dam, List.of()).byLocus())
                    + couple.getValue().size() * Math.log(0.5);
        }
        assertEquals(10, kits.size());
        assertEquals(
                expected,
                ModelComparison.of(List.of(Candidate.of(compiled)), pedigree)
                        .compare()
                        .log(0),
                1e-9);
    }

    private static Phenotype look(Pedigree pedigree, String animal) {
        return pedigree.individual(animal)
                .observations()
                .get(0)
                .looks()
                .iterator()
                .next();
    }

    @Test
    void aWrongBaselineIsNoticed() {
        Contest right = Contest.of("visible 2");
        Contest wrong = new Contest(
                right.compiled(),
                right.sire(),
                right.dam(),
                new StringSquare("AaBb", "AaBb", genotype -> genotype.startsWith("aa") ? "aaB-" : "A-B-"),
                right.product(),
                right.network(),
                right.word(),
                right.code());
        assertThrows(IllegalStateException.class, wrong::checked);
    }

    /** The dihybrid ratio 9 : 3 : 3 : 1 (G. Mendel 1866, Versuche ueber Pflanzen-Hybriden). */
    @Test
    void theBaselinesGiveMendelsDihybridRatio() {
        Contest dihybrid = Contest.of("visible 2");
        assertEquals(
                Map.of("A-B-", 9, "A-bb", 3, "aaB-", 3, "aabb", 1),
                dihybrid.square().count());
        assertArrayEquals(new long[] {9, 3, 3, 1}, dihybrid.product().count());
    }

    /** A recessive that hides the other locus turns 9 : 3 : 3 : 1 into 9 : 3 : 4. */
    @Test
    void theBaselinesGiveTheRatioOfRecessiveEpistasis() {
        Contest epistasis = Contest.of("chain 2");
        assertEquals(Map.of("A-B-", 9, "A-bb", 3, "aa", 4), epistasis.square().count());
        assertArrayEquals(new long[] {4, 3, 9}, epistasis.product().count());
    }

    @Test
    void theCoatModelHasAsManyPhenotypesAsItIsSaidToHave() {
        Contest coat = Contest.of("coat");
        assertEquals(
                434,
                coat.compiled()
                        .diagram(coat.compiled().model().visibleTraits())
                        .outcomes()
                        .size());
        assertEquals(218, coat.engine().outcomes().size());
    }

    /** The chance to pass 47 loci in the dominant and fail the 48th is (3/4)^47 times 1/4. */
    @Test
    void aLongChainStaysExact() {
        ScalingBenchmark scaling = new ScalingBenchmark();
        scaling.mating = "chain 48";
        scaling.setUp();
        Distribution<Phenotype> answer = scaling.cross().phenotypes();
        assertEquals(49, answer.outcomes().size());
        Probability last = answer.probabilityOf(
                phenotype -> phenotype.state("trait 47").equals(java.util.Optional.of(Models.RECESSIVE)));
        assertEquals(
                Probability.of(
                        BigInteger.valueOf(3).pow(47), BigInteger.valueOf(4).pow(48)),
                last);
    }

    /** Exact fractions and floating point agree on every mating that only the engine is timed on. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "visible 10",
                "chain 31",
                "chain 32",
                "chain 100",
                "threshold 10",
                "threshold 40",
                "group 3",
                "group 12"
            })
    void floatingPointGivesTheSameChances(String mating) {
        ScalingBenchmark scaling = new ScalingBenchmark();
        scaling.mating = mating;
        scaling.setUp();
        Distribution<Phenotype> exact = scaling.cross().phenotypes();
        Approximation<Phenotype> close = scaling.doubles();
        assertEquals(List.copyOf(exact.outcomes()), close.outcomes());
        exact.asMap()
                .forEach((phenotype, chance) -> assertEquals(
                        chance.toDouble(), close.chance(phenotype), 1e-12 * chance.toDouble(), phenotype::toString));
        assertTrue(close.relativeError() < 1e-12);
    }

    /** Each of the 2n alleles passed on adds one with chance 1/2, so the sum is binomial (R. A. Fisher 1918, Trans. R. Soc. Edinb. 52). */
    @Test
    void aThresholdTraitOfHeterozygotesCutsABinomialDistribution() {
        ScalingBenchmark scaling = new ScalingBenchmark();
        scaling.mating = "threshold 40";
        scaling.setUp();
        BigInteger small = BigInteger.ZERO;
        BigInteger ways = BigInteger.ONE;
        for (int sum = 0; sum < 2 * 40 / 3; sum++) {
            small = small.add(ways);
            ways = ways.multiply(BigInteger.valueOf(80 - sum)).divide(BigInteger.valueOf(sum + 1));
        }
        assertEquals(
                Probability.of(small, BigInteger.TWO.pow(80)),
                scaling.cross().phenotypes().probability(Phenotype.of("size", "small")));
    }

    /** Coupling intercross: the double recessive has chance ((1 - r) / 2) squared, here 81/400; a single one 1/4 less that. */
    @Test
    void linkedLociKeepTheTextbookShareOfDoubleRecessives() {
        Model model = Models.group(2);
        Genotype parent = Models.coupled(model);
        Distribution<Phenotype> kits = Cross.of(model, parent, parent).phenotypes();
        Phenotype single = Phenotype.parse("trait 0: dark, trait 1: pale");
        assertEquals(Probability.of(19, 400), kits.probability(single));
    }
}
