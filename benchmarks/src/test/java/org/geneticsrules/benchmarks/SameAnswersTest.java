package org.geneticsrules.benchmarks;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigInteger;
import java.util.Map;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Phenotype;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A comparison of times means something only between ways that give the same answer. */
class SameAnswersTest {

    @ParameterizedTest
    @ValueSource(
            strings = {
                "visible 2",
                "visible 3",
                "visible 4",
                "visible 5",
                "visible 6",
                "chain 2",
                "chain 3",
                "chain 4",
                "chain 5",
                "chain 6",
                "coat"
            })
    void allThreeWaysGiveTheSameChances(String mating) {
        Contest contest = Contest.of(mating);
        assertEquals(contest, contest.checked());
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
        Distribution<Phenotype> answer = scaling.answer();
        assertEquals(49, answer.outcomes().size());
        Probability last = answer.probabilityOf(
                phenotype -> phenotype.state("trait 47").equals(java.util.Optional.of(Models.RECESSIVE)));
        assertEquals(
                Probability.of(
                        BigInteger.valueOf(3).pow(47), BigInteger.valueOf(4).pow(48)),
                last);
    }
}
