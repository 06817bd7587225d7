package org.geneticsrules.explanation;

import org.geneticsrules.model.AllelePair;
import org.geneticsrules.probability.Distribution;

/**
 * What happens at one locus: what each parent may carry there, what a kit receives, and what that shows as.
 *
 * @param locus id of the locus
 * @param sire the father's pair, or the chances of what it may be
 * @param dam the mother's pair, or the chances of what it may be
 * @param kits the chances of a kit's pair: each parent passes on either of its alleles with chance 1/2
 * @param expressions the chances of what a kit's pair shows as
 */
public record Segregation(
        String locus,
        Distribution<AllelePair> sire,
        Distribution<AllelePair> dam,
        Distribution<AllelePair> kits,
        Distribution<String> expressions) {}
