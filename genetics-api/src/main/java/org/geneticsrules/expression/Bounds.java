package org.geneticsrules.expression;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.trait.Clock;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;

/** Finds states that are seen in one sex, in some seasons or at some counts only. */
final class Bounds {

    private final Survey survey;

    Bounds(Survey survey) {
        this.survey = survey;
    }

    List<Completeness.Limited> find() {
        List<Completeness.Limited> found = new ArrayList<>();
        for (TraitRule rule : survey.model().rules().values()) {
            survey.nodes().charge(Pointer.of("traits", rule.trait()));
            int look = survey.look(rule.trait());
            BitSet reached = survey.reached(look);
            Map<Sex, BitSet> bySex = bySex(look);
            Map<String, BitSet> bySeason = bySeason(look);
            Map<Clock, List<BitSet>> byCount = new LinkedHashMap<>();
            for (Clock clock : Clock.values()) {
                byCount.put(clock, byCount(look, clock));
            }
            for (int state = 0; state < rule.states().size(); state++) {
                if (reached.get(state)) {
                    int one = state;
                    Optional<Sex> sex = bySex.size() < 2
                            ? Optional.empty()
                            : only(bySex.entrySet().stream()
                                    .filter(entry -> entry.getValue().get(one))
                                    .map(Map.Entry::getKey)
                                    .toList());
                    List<String> seasons = bySeason.entrySet().stream()
                            .filter(entry -> entry.getValue().get(one))
                            .map(Map.Entry::getKey)
                            .toList();
                    Completeness.Limited limited = new Completeness.Limited(
                            rule.trait(),
                            rule.states().get(state),
                            sex,
                            seasons.size() == bySeason.size() ? ImmutableList.of() : seasons,
                            stage(clock -> first(byCount.getOrDefault(clock, List.of()), one)),
                            stage(clock -> last(byCount.getOrDefault(clock, List.of()), one, clock)));
                    if (limited.isBound()) {
                        found.add(limited);
                    }
                }
            }
        }
        return found;
    }

    private static <T> Optional<T> only(List<T> values) {
        return values.size() == 1 ? Optional.of(values.get(0)) : Optional.empty();
    }

    private static LifeStage stage(Function<Clock, OptionalInt> count) {
        return new LifeStage(count.apply(Clock.WEEK), count.apply(Clock.MOULT), Optional.empty());
    }

    /** The first count at which a state is reached, if that is not from birth on. */
    private static OptionalInt first(List<BitSet> byCount, int state) {
        for (int count = 0; count < byCount.size(); count++) {
            if (byCount.get(count).get(state)) {
                return count == 0 ? OptionalInt.empty() : OptionalInt.of(count);
            }
        }
        return OptionalInt.empty();
    }

    /** The last count at which a state is reached, if there is one. */
    private OptionalInt last(List<BitSet> byCount, int state, Clock clock) {
        for (int count = byCount.size() - 1; count >= 0; count--) {
            if (byCount.get(count).get(state)) {
                Phases phases = survey.phases(clock);
                return phases.recurs(phases.all().get(count)) ? OptionalInt.empty() : OptionalInt.of(count);
            }
        }
        return OptionalInt.empty();
    }

    private Map<Sex, BitSet> bySex(int look) {
        Map<Sex, BitSet> found = new LinkedHashMap<>();
        for (Survey.Scope scope : survey.everywhere()) {
            BitSet states = found.computeIfAbsent(scope.sex(), sex -> new BitSet());
            Survey.add(scope.within().leaves(look), states);
        }
        return found;
    }

    /** None where the season makes no difference. */
    private Map<String, BitSet> bySeason(int look) {
        Map<String, BitSet> found = new LinkedHashMap<>();
        OptionalInt level = survey.axes().position(LifeStage.SEASON);
        if (level.isPresent() && survey.tested(look).get(level.getAsInt())) {
            for (String season : survey.axes().values(level.getAsInt())) {
                BitSet states = new BitSet();
                for (Restriction within : survey.in(season)) {
                    Survey.add(within.leaves(look), states);
                }
                found.put(season, states);
            }
        }
        return found;
    }

    /** None where no progression of a clock makes a difference. */
    private List<BitSet> byCount(int look, Clock clock) {
        boolean matters = survey.axes().chains().entrySet().stream()
                .filter(entry -> entry.getValue().clock() == clock)
                .map(entry -> survey.axes().position(entry.getKey()))
                .anyMatch(level -> level.isPresent() && survey.tested(look).get(level.getAsInt()));
        List<BitSet> found = new ArrayList<>();
        if (matters) {
            for (Phases.Phase phase : survey.phases(clock).all()) {
                BitSet states = new BitSet();
                for (Restriction within : survey.at(clock, phase)) {
                    Survey.add(within.leaves(look), states);
                }
                found.add(states);
            }
        }
        return found;
    }
}
