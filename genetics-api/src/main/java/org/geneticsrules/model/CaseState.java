package org.geneticsrules.model;

import com.google.common.collect.ImmutableMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.trait.Clock;

/**
 * What a case makes of a trait: a state, or a chance of states. All chance in a model lives here; it is drawn once for the life of an
 * animal, for each case by itself. Immutable and thread-safe.
 */
public sealed interface CaseState {

    /**
     * Returns the states that may come of it.
     *
     * @return states of positive chance
     */
    Set<String> states();

    /**
     * One state for certain.
     *
     * @param state the state
     */
    record Certain(String state) implements CaseState {
        @Override
        public Set<String> states() {
            return Set.of(state);
        }

        /** Returns the state. */
        @Override
        public String toString() {
            return state;
        }
    }

    /**
     * A state by chance: incomplete penetrance or variable expressivity.
     *
     * @param chances the chance of each state
     */
    record Chance(Distribution<String> chances) implements CaseState {
        @Override
        public Set<String> states() {
            return chances.outcomes();
        }

        /** Returns the states with their chances: {@code by chance none (1/10), low (6/10) or high (3/10)}. */
        @Override
        public String toString() {
            return "by chance " + CaseWords.of(chances);
        }
    }

    /**
     * A state that changes with age: a Markov chain that starts at birth and steps with a clock.
     *
     * @param clock what a step is
     * @param start the chance of each state at count 0
     * @param step by state, the chance of each state one step later; a state not named stays as it is
     * @param monotone whether the model holds that no step leads to a state declared earlier
     */
    record Progression(
            Clock clock, Distribution<String> start, Map<String, Distribution<String>> step, boolean monotone)
            implements CaseState {
        /**
         * Copies the steps.
         *
         * @param clock what a step is
         * @param start chances at count 0
         * @param step chances one step later
         * @param monotone whether steps never lead back
         */
        public Progression {
            step = ImmutableMap.copyOf(step);
        }

        /**
         * Returns the chances one step after a state.
         *
         * @param state a state
         * @return the chances
         */
        public Distribution<String> after(String state) {
            Distribution<String> next = step.get(state);
            return next == null ? Distribution.certain(state) : next;
        }

        /**
         * Returns the chances at a count.
         *
         * @param count number of steps since birth, at least 0
         * @return the chance of each state
         */
        public Distribution<String> at(int count) {
            Distribution<String> now = start;
            for (int i = 0; i < count; i++) {
                now = now.flatMap(this::after);
            }
            return now;
        }

        @Override
        public Set<String> states() {
            Set<String> reached = new LinkedHashSet<>(start.outcomes());
            int before;
            do {
                before = reached.size();
                for (String state : new LinkedHashSet<>(reached)) {
                    reached.addAll(after(state).outcomes());
                }
            } while (reached.size() > before);
            return reached;
        }

        /** Returns the start and the steps: {@code few (3/4) or half (1/4) at moult 0; with each moult few becomes ..}. */
        @Override
        public String toString() {
            return CaseWords.of(this);
        }
    }

    /**
     * A state by the sum of many small effects: doses of several loci and a residual class, cut into states (Wright 1934, Genetics
     * 19:506, for the idea of a threshold).
     *
     * @param doses by locus, the dose of each expression; expressions not named have dose 0
     * @param residual the chance of each residual amount, independent of the loci
     * @param below the state of sums below the least cut
     * @param cuts by state, the least sum that shows it, in ascending order
     */
    record Threshold(
            Map<String, Map<String, Integer>> doses,
            Distribution<Integer> residual,
            String below,
            Map<String, Integer> cuts)
            implements CaseState {
        /**
         * Copies the maps.
         *
         * @param doses doses by locus and expression
         * @param residual chances of residual amounts
         * @param below the state below the least cut
         * @param cuts least sums by state
         */
        public Threshold {
            ImmutableMap.Builder<String, Map<String, Integer>> copy = ImmutableMap.builder();
            doses.forEach((locus, dose) -> copy.put(locus, ImmutableMap.copyOf(dose)));
            doses = copy.buildOrThrow();
            cuts = ImmutableMap.copyOf(cuts);
        }

        /**
         * Returns the state of a sum.
         *
         * @param sum sum of the doses and the residual
         * @return the state of the greatest cut not above it
         */
        public String state(int sum) {
            String state = below;
            for (Map.Entry<String, Integer> cut : cuts.entrySet()) {
                state = sum >= cut.getValue() ? cut.getKey() : state;
            }
            return state;
        }

        @Override
        public Set<String> states() {
            Set<String> all = new LinkedHashSet<>(cuts.keySet());
            all.add(below);
            return all;
        }

        /** Returns the cuts and the doses: {@code by the sum of doses low below 2, high from 2; ..}. */
        @Override
        public String toString() {
            return CaseWords.of(this);
        }
    }
}
