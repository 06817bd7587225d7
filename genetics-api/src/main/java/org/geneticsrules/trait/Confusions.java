package org.geneticsrules.trait;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.geneticsrules.probability.Probability;

/**
 * A sparse list of naming errors; whatever is not on it never happens.
 *
 * <p>Traits are named independently of one another. Immutable and thread-safe.
 *
 * @param all the confusions
 */
public record Confusions(List<Confusion> all) {

    /**
     * Checks that what is read adds up.
     *
     * @param all the confusions
     * @throws IllegalArgumentException if those of one state that may happen at one stage have chances that sum to more than 1
     */
    public Confusions {
        all = ImmutableList.copyOf(all);
        for (LifeStage stage : stages(all)) {
            for (Confusion one : all) {
                Probability sum = Probability.ZERO;
                for (Confusion other : all) {
                    if (other.trait().equals(one.trait())
                            && other.shown().equals(one.shown())
                            && other.appliesAt(stage)) {
                        if (sum.complement().compareTo(other.chance()) < 0) {
                            throw new IllegalArgumentException("trait " + one.trait() + " shown as \"" + one.shown()
                                    + "\" is confused with chances that sum to more than 1");
                        }
                        sum = sum.plus(other.chance());
                    }
                }
            }
        }
    }

    /** Stages of every kind that the confusions tell apart: any age, moult and season that is stated, together with any other. */
    private static List<LifeStage> stages(List<Confusion> all) {
        Set<OptionalInt> weeks = new LinkedHashSet<>(List.of(OptionalInt.empty()));
        Set<OptionalInt> moults = new LinkedHashSet<>(List.of(OptionalInt.empty()));
        Set<Optional<String>> seasons = new LinkedHashSet<>(List.of(Optional.empty()));
        for (Confusion one : all) {
            one.stage().ifPresent(stage -> {
                weeks.add(stage.weeks());
                moults.add(stage.moult());
                seasons.add(stage.season());
            });
        }
        List<LifeStage> stages = new ArrayList<>();
        weeks.forEach(week ->
                moults.forEach(moult -> seasons.forEach(season -> stages.add(new LifeStage(week, moult, season)))));
        return stages;
    }

    /**
     * Returns a list of naming errors.
     *
     * @param all the confusions
     * @return the list
     */
    public static Confusions of(Collection<Confusion> all) {
        return new Confusions(ImmutableList.copyOf(all));
    }

    /**
     * Returns no naming errors.
     *
     * @return the empty list: what is read is what is shown
     */
    public static Confusions none() {
        return new Confusions(ImmutableList.of());
    }

    /**
     * Tells how often a state is recorded when another, or the same, is shown.
     *
     * @param trait id of the trait
     * @param shown the state shown
     * @param read the state recorded
     * @param stage when the animal was looked at
     * @return the chance; for the state shown, what the confusions leave
     */
    public Probability chance(String trait, String shown, String read, LifeStage stage) {
        Probability same = Probability.ONE;
        for (Confusion one : all) {
            if (one.trait().equals(trait) && one.shown().equals(shown) && one.appliesAt(stage)) {
                if (one.read().equals(read)) {
                    return one.chance();
                }
                same = same.minus(one.chance());
            }
        }
        return shown.equals(read) ? same : Probability.ZERO;
    }
}
