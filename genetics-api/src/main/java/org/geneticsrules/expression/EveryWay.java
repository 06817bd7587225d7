package org.geneticsrules.expression;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.TooLargeException;

/**
 * Goes through every way in which the draws of an animal may turn out, one after another: each way is a list of choices, and the next
 * one changes the last choice that has an alternative left. Draws that a way does not reach are not gone through.
 */
final class EveryWay implements Chooser {

    private static final int MOST = 100_000;

    private record Choice(List<String> left, Probability chance, Distribution<String> chances) {}

    private final List<Choice> choices = new ArrayList<>();
    private int made;

    private EveryWay() {}

    /** The chances of what comes of the draws. */
    static <T> Distribution<T> of(Function<Chooser, T> outcomeOf) {
        EveryWay way = new EveryWay();
        Map<T, Probability> chances = new LinkedHashMap<>();
        int ways = 0;
        do {
            if (ways++ == MOST) {
                throw new TooLargeException(
                        "ways in which chance may decide", ways, MOST, "ask about fewer traits at a time.");
            }
            way.made = 0;
            T outcome = outcomeOf.apply(way);
            chances.merge(outcome, way.chance(), Probability::plus);
        } while (way.next());
        return Distribution.of(chances);
    }

    /** The same where some draws are known; these add nothing to the chances. */
    static <T> Distribution<T> of(Map<String, String> known, Function<Chooser, T> outcomeOf) {
        return of(way -> outcomeOf.apply((pointer, chances) -> {
            String outcome = known.get(pointer);
            return outcome == null ? way.choose(pointer, chances) : outcome;
        }));
    }

    @Override
    public String choose(String pointer, Distribution<String> chances) {
        if (made == choices.size()) {
            choices.add(choice(new ArrayList<>(chances.outcomes()), chances));
        }
        return choices.get(made++).left().get(0);
    }

    private static Choice choice(List<String> left, Distribution<String> chances) {
        return new Choice(left, chances.probability(left.get(0)), chances);
    }

    private Probability chance() {
        Probability all = Probability.ONE;
        for (Choice choice : choices) {
            all = all.times(choice.chance());
        }
        return all;
    }

    private boolean next() {
        while (!choices.isEmpty()) {
            Choice last = choices.remove(choices.size() - 1);
            if (last.left().size() > 1) {
                choices.add(choice(
                        new ArrayList<>(last.left().subList(1, last.left().size())), last.chances()));
                return true;
            }
        }
        return false;
    }
}
