package org.geneticsrules.explanation;

import java.util.Optional;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Phase;
import org.geneticsrules.probability.Distribution;

/**
 * What happens at one locus: what each parent may carry there, what a kit receives, and what that shows as.
 *
 * @param locus id of the locus
 * @param sire the father's pair, or the chances of what it may be
 * @param sireStrands the father's alleles strand by strand, where the locus is linked to others and that is known
 * @param dam the mother's pair, or the chances of what it may be
 * @param damStrands the mother's alleles strand by strand, where that is known
 * @param kits the chances of a kit's pair: each parent passes on either of its alleles with chance 1/2, changed by mutation where the
 *     model states any
 * @param expressions the chances of what a kit's pair shows as
 */
public record Segregation(
        String locus,
        Distribution<AllelePair> sire,
        Optional<Phase.Strands> sireStrands,
        Distribution<AllelePair> dam,
        Optional<Phase.Strands> damStrands,
        Distribution<AllelePair> kits,
        Distribution<String> expressions) {}
