package org.geneticsrules.simulation;

import org.geneticsrules.probability.Probability;

/**
 * A DNA test of one locus that is planned. An animal that has no allele there is not tested. A wrong report names each other genotype that an
 * animal of this sex may have equally often.
 *
 * @param locus id of the locus
 * @param error the chance that a report is wrong
 * @param share the chance that an animal is tested, each by itself
 * @param whom which animals are tested
 */
public record PlannedTest(String locus, Probability error, Probability share, Whom whom) {

    /**
     * Checks the chances.
     *
     * @param locus id of the locus
     * @param error the chance of a wrong report, below 1
     * @param share the chance of each animal to be tested, above 0
     * @param whom which animals
     * @throws IllegalArgumentException if a chance is out of range
     */
    public PlannedTest {
        if (error.isOne() || share.isZero()) {
            throw new IllegalArgumentException("a test at " + locus
                    + " is right and made at least sometimes, but its error was " + error + " and its share " + share);
        }
    }

    /**
     * Makes a test of animals of all kinds.
     *
     * @param locus id of the locus
     * @param error the chance of a wrong report, below 1
     * @param share the chance of each animal to be tested, above 0
     * @throws IllegalArgumentException if a chance is out of range
     */
    public PlannedTest(String locus, Probability error, Probability share) {
        this(locus, error, share, Whom.ALL);
    }

    /**
     * Returns a test of every animal that is never wrong.
     *
     * @param locus id of the locus
     * @return the test
     */
    public static PlannedTest at(String locus) {
        return new PlannedTest(locus, Probability.ZERO, Probability.ONE);
    }

    /**
     * Returns this test with errors.
     *
     * @param chance the chance that a report is wrong, below 1
     * @return a copy
     * @throws IllegalArgumentException if it is 1
     */
    public PlannedTest withError(Probability chance) {
        return new PlannedTest(locus, chance, share, whom);
    }

    /**
     * Returns this test of only a part of the animals.
     *
     * @param part the chance of each animal to be tested, above 0
     * @return a copy
     * @throws IllegalArgumentException if it is 0
     */
    public PlannedTest ofShare(Probability part) {
        return new PlannedTest(locus, error, part, whom);
    }

    /**
     * Returns this test of some kind of animals only.
     *
     * @param animals which
     * @return a copy
     */
    public PlannedTest of(Whom animals) {
        return new PlannedTest(locus, error, share, animals);
    }
}
