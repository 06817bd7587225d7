package org.geneticsrules.linkage;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Sex;

/** How often neighbouring loci of a linkage group are separated when gametes are made. Immutable and thread-safe. */
public sealed interface Recombination {

    /**
     * Recombination fractions, one for each interval between neighbours; intervals recombine independently (no interference), so a
     * gamete is a Markov chain along the group.
     *
     * @param female the fractions in eggs, each from 0 to 1/2
     * @param male the fractions in sperm
     */
    record Fractions(List<Probability> female, List<Probability> male) implements Recombination {
        /**
         * Copies the lists.
         *
         * @param female the fractions in eggs
         * @param male the fractions in sperm
         */
        public Fractions {
            female = ImmutableList.copyOf(female);
            male = ImmutableList.copyOf(male);
        }

        /**
         * Returns fractions that are the same in both sexes.
         *
         * @param both one fraction per interval
         * @return the fractions
         */
        public static Fractions of(List<Probability> both) {
            return new Fractions(both, both);
        }

        /**
         * Returns the fractions of the gametes of one sex.
         *
         * @param sex sex of the parent
         * @return one fraction per interval
         */
        public List<Probability> of(Sex sex) {
            return sex == Sex.FEMALE ? female : male;
        }
    }

    /**
     * The chance of each pattern of crossovers, which may interfere with one another; the same in both sexes.
     *
     * @param patterns chance by pattern: the names of the intervals that recombine, in order, separated by spaces, or {@code none}; an
     *     interval is named by its two loci, {@code B-W}. The chances sum to 1.
     */
    record Crossovers(Map<String, Probability> patterns) implements Recombination {
        /**
         * Copies the map.
         *
         * @param patterns chance by pattern
         */
        public Crossovers {
            patterns = ImmutableMap.copyOf(patterns);
        }
    }
}
