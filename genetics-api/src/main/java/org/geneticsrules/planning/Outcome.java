package org.geneticsrules.planning;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Map;

/**
 * What a step may find, and how likely each model holds that.
 *
 * @param found what is found of how many animals: looks, with the sex in front of it where kits are counted by sex, or genotypes reported, in
 *     the order of the catalogue or the locus; what is found of none is left out
 * @param chances for each candidate, the chance to find just that, given all records held; 0 where the model excludes it
 */
public record Outcome(Map<String, Integer> found, List<Double> chances) {

    /**
     * Copies the collections.
     *
     * @param found what is found
     * @param chances how likely it is
     * @throws IllegalArgumentException if a chance is negative, or no number
     */
    public Outcome {
        found = ImmutableMap.copyOf(found);
        chances = ImmutableList.copyOf(chances);
        if (!chances.stream().allMatch(one -> one >= 0 && Double.isFinite(one))) {
            throw new IllegalArgumentException("a chance is a number from 0 to 1, but they were " + chances);
        }
    }
}
