package org.geneticsrules.trait;

import com.google.common.collect.ImmutableSet;
import java.util.Collection;
import java.util.List;
import java.util.Set;

/**
 * A record of what one animal looked like at one stage of its life: one look, or one of several where whoever wrote it down was not sure.
 *
 * @param stage when it was looked at
 * @param looks what it showed was one of these; all name the same traits
 */
public record Reading(LifeStage stage, Set<Phenotype> looks) {

    /**
     * Checks the looks.
     *
     * @param stage when it was looked at
     * @param looks the looks
     * @throws IllegalArgumentException if there is no look, or two name different traits
     */
    public Reading {
        looks = ImmutableSet.copyOf(looks);
        if (looks.stream()
                        .map(Phenotype::traits)
                        .map(ImmutableSet::copyOf)
                        .distinct()
                        .count()
                != 1) {
            throw new IllegalArgumentException(
                    "expected one look, or several that name the same traits, but found " + looks);
        }
    }

    /**
     * Returns the record of a sighting.
     *
     * @param seen what was seen
     * @return the record of one look
     */
    public static Reading of(Sighting seen) {
        return new Reading(seen.stage(), ImmutableSet.of(seen.look()));
    }

    /**
     * Returns the traits that it is about.
     *
     * @return trait ids
     */
    public List<String> traits() {
        return looks.iterator().next().traits().stream().toList();
    }

    /**
     * Returns records of sightings.
     *
     * @param seen what was seen
     * @return one record for each, in the same order
     */
    public static List<Reading> ofAll(Collection<Sighting> seen) {
        return seen.stream().map(Reading::of).toList();
    }
}
