package org.geneticsrules.explanation;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.trait.Phenotype;

/**
 * A locus that cannot be read off an animal: another genotype there would look the same.
 *
 * @param locus id of the locus
 * @param phenotype the look behind which it is hidden
 * @param alternatives the pairs that may lie behind that look, in declared order
 * @param chances how likely each is, where that is known
 * @param causes why they look the same
 */
public record Hidden(
        String locus,
        Phenotype phenotype,
        List<AllelePair> alternatives,
        Optional<Distribution<AllelePair>> chances,
        List<Cause> causes) {

    /**
     * Copies the lists.
     *
     * @param locus id of the locus
     * @param phenotype the look
     * @param alternatives the pairs
     * @param chances how likely each is
     * @param causes why they look the same
     */
    public Hidden {
        alternatives = ImmutableList.copyOf(alternatives);
        causes = ImmutableList.copyOf(causes);
    }
}
