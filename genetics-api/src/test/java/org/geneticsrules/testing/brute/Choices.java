package org.geneticsrules.testing.brute;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.geneticsrules.probability.Probability;

/**
 * A source of chance that is run through all it can do: a process asks it to choose, again and again, and is run once for every
 * sequence of choices.
 */
public final class Choices {

    /** What is chosen at each place, and out of how many; places not reached so far are added at the end. */
    private final List<int[]> path;

    private int place;
    private Probability chance = Probability.ONE;

    private Choices(List<int[]> path) {
        this.path = path;
    }

    /** A source that is never asked. */
    static Choices none() {
        return new Choices(List.of());
    }

    /**
     * Runs a process once for every way in which chance may decide.
     *
     * @param process asks for choices and returns an outcome; the same choices must lead to the same outcome
     * @param <T> type of outcomes
     * @return the chance of each outcome, in the order in which outcomes were first met
     */
    public static <T> Map<T, Probability> all(Function<Choices, T> process) {
        Map<T, Probability> found = new LinkedHashMap<>();
        List<int[]> path = new ArrayList<>();
        do {
            Choices run = new Choices(path);
            T outcome = process.apply(run);
            found.merge(outcome, run.chance, Probability::plus);
        } while (advance(path));
        return found;
    }

    /** Counts on like an odometer whose last place turns fastest. */
    private static boolean advance(List<int[]> path) {
        while (!path.isEmpty()) {
            int[] last = path.get(path.size() - 1);
            if (++last[0] < last[1]) {
                return true;
            }
            path.remove(path.size() - 1);
        }
        return false;
    }

    /**
     * Chooses one of several outcomes.
     *
     * @param outcomes the chance of each, those of chance 0 being never chosen
     * @param <T> type of outcomes
     * @return the outcome of this run
     */
    public <T> T among(Map<T, Probability> outcomes) {
        List<T> open = new ArrayList<>();
        outcomes.forEach((outcome, share) -> {
            if (!share.isZero()) {
                open.add(outcome);
            }
        });
        if (place == path.size()) {
            path.add(new int[] {0, open.size()});
        }
        T chosen = open.get(path.get(place++)[0]);
        chance = chance.times(outcomes.get(chosen));
        return chosen;
    }

    /**
     * Chooses one of several outcomes that are equally likely.
     *
     * @param outcomes distinct outcomes
     * @param <T> type of outcomes
     * @return the outcome of this run
     */
    public <T> T evenly(List<T> outcomes) {
        Map<T, Probability> shares = new LinkedHashMap<>();
        outcomes.forEach(outcome -> shares.put(outcome, Probability.of(1, outcomes.size())));
        return among(shares);
    }

    /**
     * Decides whether something happens.
     *
     * @param chance how likely it is
     * @return true if it happens in this run
     */
    public boolean happens(Probability chance) {
        Map<Boolean, Probability> shares = new LinkedHashMap<>();
        shares.put(true, chance);
        shares.put(false, chance.complement());
        return among(shares);
    }
}
