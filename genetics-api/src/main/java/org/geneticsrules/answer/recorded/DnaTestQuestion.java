package org.geneticsrules.answer.recorded;

import java.util.Optional;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;

/**
 * What would a DNA test of a recorded animal tell, and what would its error change?
 *
 * @param animal id of the animal
 * @param locus id of the locus tested
 * @param allele the allele of that locus that is asked about, if one is; else all genotypes count alike
 * @param error the chance that the test reports another genotype than the animal has, from 0 to less than 1
 */
public record DnaTestQuestion(String animal, String locus, Optional<HiddenAllele> allele, Probability error) {

    /**
     * Checks the error.
     *
     * @param animal id of the animal
     * @param locus id of the locus tested
     * @param allele the allele that is asked about
     * @param error the chance of a wrong report
     * @throws IllegalArgumentException if an error is certain, or the allele is of another locus
     */
    public DnaTestQuestion {
        if (error.isOne()) {
            throw new IllegalArgumentException("the chance of a wrong report must be less than 1");
        }
        allele.filter(one -> !one.locus().equals(locus)).ifPresent(one -> {
            throw new IllegalArgumentException(
                    "the allele asked about is of locus " + one.locus() + ", but the test is of locus " + locus);
        });
    }

    /**
     * Asks about the genotype at a locus, by a test that is never wrong.
     *
     * @param animal id of the animal
     * @param locus id of the locus tested
     * @return the question
     */
    public static DnaTestQuestion of(String animal, String locus) {
        return new DnaTestQuestion(animal, locus, Optional.empty(), Probability.ZERO);
    }

    /**
     * Asks whether the animal carries an allele, by a test of its locus that is never wrong.
     *
     * @param animal id of the animal
     * @param allele the allele
     * @return the question
     */
    public static DnaTestQuestion of(String animal, HiddenAllele allele) {
        return new DnaTestQuestion(animal, allele.locus(), Optional.of(allele), Probability.ZERO);
    }

    /**
     * Says how often the test is wrong.
     *
     * @param chance the chance of a wrong report, from 0 to less than 1
     * @return a copy
     * @throws IllegalArgumentException if an error is certain
     */
    public DnaTestQuestion wrongIn(Probability chance) {
        return new DnaTestQuestion(animal, locus, allele, chance);
    }

    /** The same question under another model. */
    DnaTestQuestion under(Model other) {
        return allele.map(one -> of(animal, one.under(other)).wrongIn(error)).orElse(this);
    }
}
