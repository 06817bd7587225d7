package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Phenotype;

/**
 * What the next litter of two recorded animals may show, by all records of them and their relatives.
 *
 * @param sire id of the sire
 * @param dam id of the dam
 * @param look the look that is counted, if one is
 * @param kits in a litter of how many it is counted
 * @param inbreeding the coefficient of inbreeding of the kits as far back as is recorded; empty if they have too many ancestors
 * @param courses one for each origin of founders; none if frequencies are missing
 */
public record NextLitter(
        String sire,
        String dam,
        Optional<Phenotype> look,
        int kits,
        Optional<Probability> inbreeding,
        List<Course> courses)
        implements Finding {

    /**
     * Copies the list.
     *
     * @param sire id of the sire
     * @param dam id of the dam
     * @param look the look that is counted
     * @param kits in a litter of how many
     * @param inbreeding the coefficient of inbreeding of the kits
     * @param courses one for each origin
     */
    public NextLitter {
        courses = ImmutableList.copyOf(courses);
    }

    /**
     * What is probable for one origin of founders.
     *
     * @param origin where founders are taken to come from
     * @param looks how likely the next kit is to have each look, the impossible ones left out; the look without traits is that for which the
     *     model makes no claim
     * @param counts how likely 0, 1, 2, .. kits of the litter are to show the look that is counted; empty if none is. Kits are not
     *     independent while it is not known what the parents carry, and this takes it into account
     * @param independent how likely none of them would show it if kits were independent, for comparison; empty if no look is counted
     */
    public record Course(
            Origin origin, Map<Phenotype, Chance> looks, List<Chance> counts, Optional<Chance> independent) {
        /**
         * Copies the collections.
         *
         * @param origin where founders come from
         * @param looks how likely each look is
         * @param counts how likely each number of kits is
         * @param independent how likely none would be if kits were independent
         */
        public Course {
            looks = ImmutableMap.copyOf(looks);
            counts = ImmutableList.copyOf(counts);
        }
    }
}
