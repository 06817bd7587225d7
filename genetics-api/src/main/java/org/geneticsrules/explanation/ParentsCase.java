package org.geneticsrules.explanation;

import com.google.common.collect.ImmutableMap;
import java.util.Map;
import org.geneticsrules.probability.Probability;

/**
 * One case of what the parents may be, within which their loci are independent, and what they then pass on.
 *
 * <p>Parents of known genotype are one case of chance 1.
 *
 * @param number its number, from 0, by which ways refer to it
 * @param probability the chance of this case among all cases
 * @param loci what happens at each locus read, by locus
 */
public record ParentsCase(int number, Probability probability, Map<String, Segregation> loci) implements Reason {

    /**
     * Copies the map.
     *
     * @param number its number
     * @param probability its chance
     * @param loci what happens at each locus
     */
    public ParentsCase {
        loci = ImmutableMap.copyOf(loci);
    }
}
