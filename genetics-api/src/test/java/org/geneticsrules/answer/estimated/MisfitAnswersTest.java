package org.geneticsrules.answer.estimated;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.geneticsrules.estimation.HardyWeinberg;
import org.geneticsrules.estimation.IntercrossLinkage;
import org.geneticsrules.estimation.LinkageFamily;
import org.geneticsrules.estimation.Penetrance;
import org.geneticsrules.estimation.TestCross;
import org.geneticsrules.estimation.ThreePointCross;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.render.EstimateText;
import org.geneticsrules.statistics.Counts;
import org.junit.jupiter.api.Test;

/** What is told of counts that go badly with every value of a number. */
class MisfitAnswersTest {

    private static final CountedAnswers COUNTED = CountedAnswers.at(0.95);
    private static final Probability QUARTER = Probability.of(1, 4);

    /** The counts are coupling: in repulsion the fraction would be 1/2, and they are 10^31 times less likely. */
    @Test
    void a_phase_in_which_counts_are_far_likelier_is_told() {
        Counts counts = Counts.of(284, 21, 21, 55);
        EstimateAnswer wrong = COUNTED.intercross(new IntercrossLinkage(counts, IntercrossLinkage.Phase.REPULSION));
        assertTrue(
                wrong.verdict()
                        .startsWith("The other phase goes far better with these counts: in coupling they are more than"
                                + " 1000 times as likely, at a recombination fraction of about 0.128."),
                wrong.verdict());
        assertTrue(wrong.notices().toString().contains("10 to the power of 31.0 times"), wrong.notices()::toString);
        EstimateAnswer right = COUNTED.intercross(new IntercrossLinkage(counts, IntercrossLinkage.Phase.COUPLING));
        assertTrue(right.verdict().startsWith("The recombination fraction is about 0.128"), right.verdict());
        assertFalse(right.notices().toString().contains("as in the phase stated"));
        EstimateAnswer repulsed = COUNTED.intercross(
                new IntercrossLinkage(Counts.of(1997, 906, 904, 32), IntercrossLinkage.Phase.COUPLING));
        assertTrue(repulsed.verdict().contains("in repulsion they are more than"), repulsed.verdict());
        EstimateAnswer open =
                COUNTED.intercross(new IntercrossLinkage(Counts.of(9, 3, 3, 1), IntercrossLinkage.Phase.COUPLING));
        assertFalse(open.verdict().contains("other phase"), open.verdict());
    }

    /** (1/4)^5 of the young of one locus are all recessive: 0.00098, twice that in both directions. */
    @Test
    void single_characters_that_are_not_three_to_one_are_told() {
        EstimateAnswer answer =
                COUNTED.intercross(new IntercrossLinkage(Counts.of(0, 0, 0, 5), IntercrossLinkage.Phase.COUPLING));
        assertTrue(
                answer.verdict()
                        .contains(
                                "The first character by itself goes badly with 3:1 (p 0.0020), and the second character"),
                answer.verdict());
        assertTrue(answer.verdict().contains("the interval does not rule it out"), answer.verdict());
        EstimateAnswer second =
                COUNTED.intercross(new IntercrossLinkage(Counts.of(30, 0, 10, 0), IntercrossLinkage.Phase.COUPLING));
        assertTrue(second.verdict().contains("The second character by itself goes badly"), second.verdict());
        assertFalse(second.verdict().contains("first character"), second.verdict());
    }

    /** So many or more of 10 at 1/2: 1/1024 for 10, 56/1024 for 8. */
    @Test
    void more_recombinants_than_unlinked_loci_have_go_with_no_fraction() {
        EstimateAnswer all = COUNTED.testCross(new TestCross(10, 10));
        assertTrue(
                all.verdict()
                        .startsWith("10 of 10 young are recombinant, more than half, which goes badly with every"
                                + " recombination fraction (p 0.0010)."),
                all.verdict());
        assertEquals(1 / 1024.0, all.tests().get(0).p(), 1e-12);
        String text = EstimateText.of(all);
        assertFalse(text.contains("0.5 to 0.5"), text);
        assertTrue(text.contains("no value goes with the records (Clopper-Pearson, exact, 95 %)"), text);
        assertTrue(COUNTED.testCross(new TestCross(8, 10)).verdict().startsWith("The recombination fraction is"));
        EstimateAnswer half = CountedAnswers.at(0.5).testCross(new TestCross(8, 10));
        assertTrue(half.verdict().contains("but no value of it goes with the records (1 in 2)"), half.verdict());
        EstimateAnswer several = COUNTED.families(List.of(
                new LinkageFamily("one", 5, 0, true),
                new LinkageFamily("two", 5, 0, true),
                new LinkageFamily("three", 5, 1, false)));
        assertTrue(several.verdict().startsWith("10 of 10 young are recombinant"), several.verdict());
        EstimateAnswer three = COUNTED.threePoint(new ThreePointCross(0, 0, 0, 10));
        assertTrue(three.verdict().startsWith("10 of 10 young are recombinant in the first interval"), three.verdict());
        assertFalse(three.verdict().contains("0.5"), three.verdict());
        EstimateAnswer swapped = COUNTED.threePoint(new ThreePointCross(1, 85, 183, 8));
        assertTrue(
                swapped.verdict().startsWith("191 of 277 young are recombinant in the second interval, more than half"),
                swapped.verdict());
        assertTrue(swapped.verdict().contains("268 of 277 young are recombinant between the outer"), swapped.verdict());
        assertTrue(swapped.verdict().endsWith("0.28 to 0.395 goes with the records (19 in 20)."), swapped.verdict());
        assertFalse(swapped.verdict().contains("That of the second interval"), swapped.verdict());
    }

    /** 20 of 20 at 1/4 have the chance 4^-20 at most; two matings were asked about. */
    @Test
    void matings_that_go_with_no_penetrance_are_told() {
        EstimateAnswer beyond = COUNTED.penetrance(
                List.of(new Penetrance.Mating(QUARTER, 3, 20), new Penetrance.Mating(QUARTER, 20, 20)));
        assertTrue(
                beyond.verdict().startsWith("20 of 20 young show it, though each has the genotype with the chance 1/4"),
                beyond.verdict());
        assertTrue(beyond.verdict().contains("go badly with every penetrance"), beyond.verdict());
        assertEquals(2 * Math.pow(0.25, 20), beyond.tests().get(0).p(), 1e-22);
        // by hand: 2 [15 ln(15/20) + 5 ln(5/20) + 5 ln(5/20) + 15 ln(15/20) - 40 ln(1/2)] = 10.465
        EstimateAnswer unlike = COUNTED.penetrance(
                List.of(new Penetrance.Mating(Probability.ONE, 15, 20), new Penetrance.Mating(Probability.ONE, 5, 20)));
        assertEquals(10.465, unlike.tests().get(0).statistic().orElseThrow(), 5e-4);
        assertEquals(1, unlike.tests().get(0).degreesOfFreedom().orElseThrow());
        assertTrue(unlike.verdict().contains("goes badly with the counts (p 0.0012)"), unlike.verdict());
        assertTrue(unlike.verdict().startsWith("The penetrance is about 0.5"), unlike.verdict());
        EstimateAnswer alike = COUNTED.penetrance(List.of(
                new Penetrance.Mating(QUARTER, 3, 20),
                new Penetrance.Mating(Probability.of(1, 2), 4, 12),
                new Penetrance.Mating(Probability.ZERO, 0, 5)));
        assertTrue(alike.verdict().contains("The matings go with one penetrance (p "), alike.verdict());
        assertEquals(1, alike.tests().get(0).degreesOfFreedom().orElseThrow());
        assertTrue(COUNTED.penetrance(List.of(new Penetrance.Mating(QUARTER, 3, 20)))
                .tests()
                .isEmpty());
    }

    @Test
    void proportions_of_one_allele_are_not_tested() {
        EstimateAnswer one = COUNTED.genotypes(new HardyWeinberg(5, 0, 0));
        assertFalse(one.verdict().contains("Hardy-Weinberg"), one.verdict());
        assertTrue(one.tests().isEmpty());
        assertTrue(one.notices().toString().contains("only one allele was met"), one.notices()::toString);
    }
}
