package org.geneticsrules.model;

import com.google.common.collect.ImmutableMap;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.probability.Distribution;

/**
 * A named set of assumed allele frequencies for animals of unknown origin.
 *
 * <p>Frequencies are assumptions. A weighted answer names the population it used, and assumes Hardy-Weinberg proportions within a
 * locus and independence between loci.
 *
 * @param id its name
 * @param title words for it
 * @param frequencies the distribution of alleles, by allele id, for each locus it covers
 * @param evidence id of its evidence, if stated
 */
public record Population(
        String id, Optional<String> title, Map<String, Distribution<String>> frequencies, Optional<String> evidence) {

    /**
     * Copies the frequencies.
     *
     * @param id its name
     * @param title words for it
     * @param frequencies the distribution of alleles by locus
     * @param evidence id of its evidence
     */
    public Population {
        frequencies = ImmutableMap.copyOf(frequencies);
    }
}
