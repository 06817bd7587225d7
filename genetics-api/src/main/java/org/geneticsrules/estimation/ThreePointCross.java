package org.geneticsrules.estimation;

import java.util.OptionalDouble;
import org.geneticsrules.probability.Probability;

/**
 * How three loci lie to one another, by the young of a triple heterozygote of known phase with a triple recessive.
 *
 * <p>The classes are counted in pairs, each class with its reciprocal one. The locus whose switch turns the parental classes into the rarest
 * pair is the middle one.
 *
 * @param parental young without a crossover
 * @param first young with a crossover between the first and the middle locus only
 * @param second young with a crossover between the middle and the last locus only
 * @param both young with crossovers in both intervals
 */
public record ThreePointCross(long parental, long first, long second, long both) {

    /**
     * Checks the counts.
     *
     * @param parental young without a crossover
     * @param first young with a crossover in the first interval only
     * @param second young with a crossover in the second interval only
     * @param both young with crossovers in both
     * @throws IllegalArgumentException if a count is negative or all are 0
     */
    public ThreePointCross {
        if (parental < 0 || first < 0 || second < 0 || both < 0 || parental + first + second + both < 1) {
            throw new IllegalArgumentException("counts are 0 or more and not all 0, but were " + parental + ", " + first
                    + ", " + second + ", " + both);
        }
    }

    /**
     * Returns how many young were counted.
     *
     * @return the total, at least 1
     */
    public long young() {
        return parental + first + second + both;
    }

    /**
     * Returns the young as recombinants between the first and the middle locus, or not.
     *
     * @return the cross of two loci
     */
    public TestCross firstInterval() {
        return new TestCross(first + both, young());
    }

    /**
     * Returns the young as recombinants between the middle and the last locus, or not.
     *
     * @return the cross of two loci
     */
    public TestCross secondInterval() {
        return new TestCross(second + both, young());
    }

    /**
     * Returns the young as recombinants between the outer loci, or not. Two crossovers bring them together again.
     *
     * @return the cross of two loci
     */
    public TestCross outer() {
        return new TestCross(first + second, young());
    }

    /**
     * Returns the coefficient of coincidence: double crossovers observed, as a share of those expected if crossovers were independent.
     *
     * @return both n / (r1 n r2 n); below 1 if one crossover keeps others away; empty if none are expected
     */
    public OptionalDouble coincidence() {
        double expected =
                (double) firstInterval().recombinants() * secondInterval().recombinants();
        return expected == 0 ? OptionalDouble.empty() : OptionalDouble.of(both * (double) young() / expected);
    }

    /**
     * Returns the interference, one less the coincidence.
     *
     * @return 0 if crossovers are independent, 1 if one excludes the other; empty if none are expected
     */
    public OptionalDouble interference() {
        OptionalDouble found = coincidence();
        return found.isPresent() ? OptionalDouble.of(1 - found.getAsDouble()) : found;
    }

    /**
     * Returns the share of young with crossovers in both intervals, exactly.
     *
     * @return doubles as a share of all
     */
    public Probability doubles() {
        return Probability.of(both, young());
    }

    /**
     * Tells whether the order is doubtful: the pair of double crossovers is not the rarest.
     *
     * @return true if some other pair is rarer, or as rare
     */
    public boolean isOrderDoubtful() {
        return both >= Math.min(parental, Math.min(first, second));
    }
}
