package org.geneticsrules.explanation;

import com.google.common.collect.ImmutableMap;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Sex;

/**
 * One kind of parents that there may be, with the chances of what they pass on to a kit; where daughters and sons may differ, to a kit
 * of one sex.
 *
 * @param number its number, by which ways refer to it
 * @param sire which of the males that may be the sire it is, counted from 0
 * @param kit the sex of the kit, where daughters and sons are told apart
 * @param probability how likely the parents are of this kind, and a kit conceived of this sex
 * @param counted the share of the kits of these parents that are counted, daughters and sons together; less than 1 where some are lost
 * @param loci what is passed on at each locus that matters
 */
public record ParentsCase(
        int number,
        int sire,
        Optional<Sex> kit,
        Probability probability,
        Probability counted,
        Map<String, Segregation> loci)
        implements Reason {

    /**
     * Copies the map.
     *
     * @param number its number
     * @param sire which of the males
     * @param kit the sex of the kit
     * @param probability how likely the parents are of this kind
     * @param counted the share of the kits that are counted
     * @param loci what is passed on
     */
    public ParentsCase {
        loci = ImmutableMap.copyOf(loci);
    }
}
