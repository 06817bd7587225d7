package org.geneticsrules.explanation;

import com.google.common.collect.ImmutableMap;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Sex;

/**
 * One animal whose genotype is known at every locus that matters, so that chance alone decides what it shows.
 *
 * @param number its number, by which ways refer to it
 * @param sex its sex, where that matters
 * @param pairs what it carries at each locus that matters
 * @param expressions what each of these loci shows as
 * @param counted the chance that such an animal shows all that was seen of it before; 1 if nothing was
 */
public record AnimalCase(
        int number,
        Optional<Sex> sex,
        Map<String, AllelePair> pairs,
        Map<String, String> expressions,
        Probability counted)
        implements Reason {

    /**
     * Copies the maps.
     *
     * @param number its number
     * @param sex its sex
     * @param pairs what it carries
     * @param expressions what its loci show as
     * @param counted the chance of what was seen before
     */
    public AnimalCase {
        pairs = ImmutableMap.copyOf(pairs);
        expressions = ImmutableMap.copyOf(expressions);
    }
}
