package org.geneticsrules.expression;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.problem.TooLargeException;

/**
 * Which states the progressions of one clock can be in at one and the same count.
 *
 * <p>The possible states after a step follow from those before it, so the sequence runs, sooner or later, in a circle; it is followed
 * until it does.
 */
final class Phases {

    private static final int MOST = 1_000;

    /**
     * What can be at some counts.
     *
     * @param count the first count
     * @param states the possible states by the pointer of the case
     */
    record Phase(int count, Map<String, Set<String>> states) {

        /** Whether all that can be in another phase can be in this one too. */
        boolean covers(Phase other) {
            return states.entrySet().stream()
                    .allMatch(one -> one.getValue().containsAll(other.states.getOrDefault(one.getKey(), Set.of())));
        }
    }

    private final ImmutableList<Phase> all;
    private final int recurring;

    /**
     * Follows progressions.
     *
     * @param chains progressions of one clock, by the pointer of their case
     */
    Phases(Map<String, CaseState.Progression> chains) {
        Map<Map<String, Set<String>>, Integer> counts = new LinkedHashMap<>();
        Map<String, Set<String>> now = new LinkedHashMap<>();
        chains.forEach((pointer, chain) ->
                now.put(pointer, new LinkedHashSet<>(chain.start().outcomes())));
        Map<String, Set<String>> states = now;
        while (!counts.containsKey(states)) {
            if (counts.size() == MOST) {
                throw new TooLargeException(
                        "combinations of states of progressing traits",
                        MOST + 1.0,
                        MOST,
                        "let fewer progressions go on for ever: " + String.join(", ", chains.keySet()) + ".");
            }
            counts.put(states, counts.size());
            states = after(states, chains);
        }
        this.recurring = counts.getOrDefault(states, 0);
        List<Phase> found = new ArrayList<>();
        counts.forEach((possible, count) -> found.add(new Phase(count, possible)));
        this.all = ImmutableList.copyOf(found);
    }

    private static Map<String, Set<String>> after(
            Map<String, Set<String>> states, Map<String, CaseState.Progression> chains) {
        Map<String, Set<String>> next = new LinkedHashMap<>();
        chains.forEach((pointer, chain) -> {
            Set<String> reached = new LinkedHashSet<>();
            states.getOrDefault(pointer, Set.of())
                    .forEach(state -> reached.addAll(chain.after(state).outcomes()));
            next.put(pointer, reached);
        });
        return next;
    }

    /** One phase for each count until they recur. */
    ImmutableList<Phase> all() {
        return all;
    }

    /** Whether a phase comes again and again. */
    boolean recurs(Phase phase) {
        return phase.count() >= recurring;
    }

    /** Phases that together allow all that any phase allows. */
    ImmutableList<Phase> widest() {
        List<Phase> kept = new ArrayList<>();
        for (Phase phase : all) {
            if (kept.stream().noneMatch(other -> other.covers(phase))) {
                kept.removeIf(phase::covers);
                kept.add(phase);
            }
        }
        return ImmutableList.copyOf(kept);
    }
}
