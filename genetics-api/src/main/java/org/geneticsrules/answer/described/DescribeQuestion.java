package org.geneticsrules.answer.described;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;

/**
 * Asks what was seen of an animal, and whether it can all be one animal.
 *
 * @param sightings what was seen, look by look, in the order of time as far as it is known
 * @param sex its sex, if known
 */
public record DescribeQuestion(List<Sighting> sightings, Optional<Sex> sex) {

    /**
     * Copies the looks.
     *
     * @param sightings what was seen
     * @param sex its sex
     * @throws IllegalArgumentException if nothing was seen
     */
    public DescribeQuestion {
        sightings = ImmutableList.copyOf(sightings);
        if (sightings.stream().allMatch(seen -> seen.look().traits().isEmpty())) {
            throw new IllegalArgumentException("a description needs at least one trait that was looked at");
        }
    }
}
