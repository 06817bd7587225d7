package org.geneticsrules.estimation;

/**
 * The young of one parent who is heterozygous at two loci, sorted by whether they got its alleles as they lie in one of its two phases.
 *
 * @param name what the family is called
 * @param recombinants young that are recombinant in the phase stated, or in the first of two phases if it is not known
 * @param others young that are not
 * @param phaseKnown whether the phase follows from the grandparents; if not, both are taken to be as likely
 */
public record LinkageFamily(String name, long recombinants, long others, boolean phaseKnown) {

    /**
     * Checks the counts.
     *
     * @param name what the family is called
     * @param recombinants young that are recombinant
     * @param others young that are not
     * @param phaseKnown whether the phase is known
     * @throws IllegalArgumentException if a count is negative
     */
    public LinkageFamily {
        if (recombinants < 0 || others < 0) {
            throw new IllegalArgumentException("counts are 0 or more, but family \"" + name + "\" has " + recombinants
                    + " recombinants and " + others + " others");
        }
    }

    /**
     * Returns the log-likelihood of a recombination fraction: of the phase that is known, or the mean over both.
     *
     * @param r the fraction, from 0 to 1/2
     * @return the natural logarithm of the chance of these young in this order
     * @throws IllegalArgumentException if the fraction is outside its range
     */
    public double logLikelihood(double r) {
        Terms.requireFraction(r);
        double first = Terms.log(recombinants, r) + Terms.log(others, 1 - r);
        if (phaseKnown) {
            return first;
        }
        return Terms.sum(first, Terms.log(others, r) + Terms.log(recombinants, 1 - r)) - Math.log(2);
    }

    /**
     * Tells whether the family says anything of linkage.
     *
     * @return false without young, and for a single one where the phase is not known
     */
    public boolean isInformative() {
        return recombinants + others > (phaseKnown ? 0 : 1);
    }
}
