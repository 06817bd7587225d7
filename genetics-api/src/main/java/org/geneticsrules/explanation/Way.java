package org.geneticsrules.explanation;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;

/**
 * One way in which an animal comes to show a phenotype.
 *
 * @param phenotype the phenotype shown
 * @param parents number of the {@link ParentsCase} or {@link AnimalCase} it belongs to
 * @param expressions what it needs: expressions by locus, outcomes of chance by the pointer of their statement, and perhaps the sex; all
 *     else makes no difference
 * @param factors the chance of what is needed: by locus, by the pointer of a linkage group of which several loci are needed together,
 *     or by the pointer of the statement whose chance it is
 * @param probability the chance of the case times all factors, divided by the share of such animals that is counted
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
