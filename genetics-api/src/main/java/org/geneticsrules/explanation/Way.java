package org.geneticsrules.explanation;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;

/**
 * One way in which a kit comes to show a phenotype.
 *
 * @param phenotype the phenotype shown
 * @param parents number of the {@link ParentsCase} it belongs to
 * @param expressions the expressions it needs, by locus; other loci make no difference
 * @param factors for each locus named, the chance that a kit has one of the expressions needed
 * @param probability the chance of the case of parents times all factors
 * @param masks the masks that decide what is seen on this way
 */
public record Way(
        Phenotype phenotype,
        int parents,
        Condition expressions,
        Map<String, Probability> factors,
        Probability probability,
        List<String> masks)
        implements Reason {

    /**
     * Copies the collections.
     *
     * @param phenotype the phenotype shown
     * @param parents number of the case of parents
     * @param expressions the expressions it needs
     * @param factors the chance at each locus
     * @param probability their product
     * @param masks the deciding masks
     */
    public Way {
        factors = ImmutableMap.copyOf(factors);
        masks = ImmutableList.copyOf(masks);
    }
}
