package org.geneticsrules.planning;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import org.geneticsrules.comparison.SharedRecords.Dropped;
import org.geneticsrules.simulation.Randomness;
import org.geneticsrules.statistics.BinomialInterval;
import org.geneticsrules.statistics.Interval;

/**
 * How often records of planned litters told the true model from its rivals, of so many sets of litters that were drawn.
 *
 * <p>A running likelihood ratio is looked at after every litter, as {@link org.geneticsrules.comparison.ComparedModels} does. It has reached the
 * bar once it stood there after any litter.
 *
 * @param truth number of the model from which litters were drawn
 * @param bar what a likelihood ratio has to reach
 * @param sets how many sets of litters were drawn
 * @param reachedAfter for each number of litters from 1 on, in how many sets the true model had reached the bar against every rival by then
 * @param misled in how many sets some rival reached the bar against the true model
 * @param neither in how many sets neither happened
 * @param rivals how it went against each rival
 * @param traits the traits that were compared
 * @param dropped what was planned to be recorded and is left out, since not every model speaks of it
 * @param randomness where chance came from
 */
public record EstimatedPower(
        int truth,
        double bar,
        int sets,
        List<Integer> reachedAfter,
        int misled,
        int neither,
        List<AgainstRival> rivals,
        Set<String> traits,
        List<Dropped> dropped,
        Randomness randomness) {

    /** How surely intervals hold what they are of: 95 in 100. */
    public static final double USUAL_LEVEL = 0.95;

    /**
     * How the true model stood against one rival.
     *
     * @param rival number of the rival
     * @param reached in how many sets the true model reached the bar against it
     * @param atTheEnd in how many sets the ratio stood at the bar or above after all litters
     * @param misled in how many sets the rival reached the bar against the true model
     */
    public record AgainstRival(int rival, int reached, int atTheEnd, int misled) {}

    /**
     * Copies the collections.
     *
     * @param truth number of the true model
     * @param bar what a ratio has to reach
     * @param sets how many sets
     * @param reachedAfter in how many sets the bar was reached by then
     * @param misled in how many sets a rival reached it
     * @param neither in how many sets neither happened
     * @param rivals how it went against each rival
     * @param traits the traits that were compared
     * @param dropped what was left out
     * @param randomness where chance came from
     */
    public EstimatedPower {
        reachedAfter = ImmutableList.copyOf(reachedAfter);
        rivals = ImmutableList.copyOf(rivals);
        traits = ImmutableSet.copyOf(traits);
        dropped = ImmutableList.copyOf(dropped);
    }

    /**
     * Returns in how many sets the true model reached the bar against every rival.
     *
     * @return a number from 0 to {@link #sets}
     */
    public int reached() {
        return reachedAfter.get(reachedAfter.size() - 1);
    }

    /**
     * Returns the share of the sets that a number of them is.
     *
     * @param count a number of sets
     * @return a share from 0 to 1
     */
    public double share(int count) {
        return (double) count / sets;
    }

    /**
     * Returns how far the true chance may be from a share of the sets (Clopper and Pearson 1934, exact).
     *
     * @param count a number of sets
     * @return the interval that holds the chance, in at least 95 of 100 such estimates
     */
    public Interval interval(int count) {
        return BinomialInterval.clopperPearson(count, sets, USUAL_LEVEL);
    }

    /**
     * Returns how many litters it took until a part of the sets had reached the bar.
     *
     * @param part a share above 0; 0.5 for the median
     * @return a number of litters; none if less than this part reached it with all of them
     * @throws IllegalArgumentException if the part is not above 0 and at most 1
     */
    public OptionalInt littersUntil(double part) {
        if (!(part > 0 && part <= 1)) {
            throw new IllegalArgumentException("a part of the sets is above 0 and at most 1, but was " + part);
        }
        for (int t = 0; t < reachedAfter.size(); t++) {
            if (share(reachedAfter.get(t)) >= part) {
                return OptionalInt.of(t + 1);
            }
        }
        return OptionalInt.empty();
    }
}
