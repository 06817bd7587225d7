package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableList;
import java.util.Collection;
import java.util.List;
import org.geneticsrules.answer.HiddenAllele;

/**
 * Do the records of a registry fit one another, and which are to be looked at again?
 *
 * @param carrying alleles of which it is told how likely each animal is to carry them; may be empty
 * @param sets how many of the smallest sets of records to look at again are listed for each group of relatives, at least 1
 */
public record RegistryQuestion(List<HiddenAllele> carrying, int sets) {

    private static final int USUAL_SETS = 5;

    /**
     * Copies the alleles.
     *
     * @param carrying alleles asked about
     * @param sets how many sets are listed
     * @throws IllegalArgumentException if no set is to be listed
     */
    public RegistryQuestion {
        carrying = ImmutableList.copyOf(carrying);
        if (sets < 1) {
            throw new IllegalArgumentException("at least one set has to be listed, but " + sets + " were asked for");
        }
    }

    /**
     * Asks about all records, and about no allele.
     *
     * @return the question
     */
    public static RegistryQuestion ofRecords() {
        return new RegistryQuestion(ImmutableList.of(), USUAL_SETS);
    }

    /**
     * Asks about alleles too.
     *
     * @param alleles what animals may carry
     * @return a copy
     */
    public RegistryQuestion carrying(Collection<HiddenAllele> alleles) {
        return new RegistryQuestion(ImmutableList.copyOf(alleles), sets);
    }
}
