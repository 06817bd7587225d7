package org.geneticsrules.hypothesis;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.geneticsrules.expression.Census;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Clock;
import org.geneticsrules.trait.LifeStage;

/**
 * The moments at which two models have to be compared so that they agree at all if they agree at these.
 *
 * <p>All that progresses with a clock is, together, one Markov chain of so many states; what is seen at a count is a linear function of
 * its distribution. A sequence of such numbers satisfies a linear recurrence of as many terms (Cayley and Hamilton), the difference of
 * two models' sequences one of the sum of both. So it is 0 at every count if it is 0 at that many counts from birth on.
 */
final class Moments {

    private static final int MOST_STAGES = 256;

    private Moments() {}

    static List<Moment> of(Model before, Model after, List<String> traits, Optional<LifeStage> stated) {
        List<Census> counted = new ArrayList<>(List.of(Census.BORN));
        if (losesLater(before) || losesLater(after)) {
            counted.add(Census.SCORED);
        }
        List<LifeStage> stages =
                stated.map(List::of).orElseGet(() -> stages(before, Cone.of(before, traits), Cone.of(after, traits)));
        ImmutableList.Builder<Moment> moments = ImmutableList.builder();
        stages.forEach(stage -> counted.forEach(census -> moments.add(new Moment(stage, census))));
        return moments.build();
    }

    private static boolean losesLater(Model model) {
        return model.viability().values().stream().anyMatch(one -> !one.scored().isOne());
    }

    private static List<LifeStage> stages(Model model, Cone before, Cone after) {
        List<String> seasons = model.catalogue().seasons();
        boolean bySeason = before.readsSeason() || after.readsSeason();
        double count = bySeason ? seasons.size() : 1;
        for (Clock clock : Clock.values()) {
            count *= counts(clock, before, after);
        }
        if (count > MOST_STAGES) {
            throw new TooLargeException("stages of life", count, MOST_STAGES, "state the stage to compare at.");
        }
        List<LifeStage> stages = new ArrayList<>();
        for (int moult = 0; moult < counts(Clock.MOULT, before, after); moult++) {
            for (int week = 0; week < counts(Clock.WEEK, before, after); week++) {
                LifeStage stage = new LifeStage(
                        stated(Clock.WEEK, week, before, after),
                        stated(Clock.MOULT, moult, before, after),
                        Optional.empty());
                if (bySeason) {
                    seasons.forEach(season -> stages.add(stage.in(season)));
                } else {
                    stages.add(stage);
                }
            }
        }
        return stages;
    }

    private static double counts(Clock clock, Cone before, Cone after) {
        return before.reads(clock) || after.reads(clock) ? before.states(clock) + after.states(clock) : 1;
    }

    private static OptionalInt stated(Clock clock, int count, Cone before, Cone after) {
        return before.reads(clock) || after.reads(clock) ? OptionalInt.of(count) : OptionalInt.empty();
    }
}
