package org.geneticsrules.inference;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Deque;
import java.util.PriorityQueue;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;

/**
 * Looks for combinations of states to which no factor gives the weight 0, as different from one another as possible.
 *
 * <p>One variable after another is given a state, the one with the fewest states left first, and after each what no longer fits a neighbour
 * is struck out (Haralick &amp; Elliott 1980, Artif. Intell. 14:263; Sabin &amp; Freuder 1994, ECAI, from memory). Where none is left, the
 * last choice is taken back. After a number of failures the search begins anew in another random order; if it comes to an end before, there
 * is no such combination.
 */
final class Starts {

    /** After so many failures a search begins anew. */
    private static final int MOST_FAILURES = 100;

    /** So often a search begins anew. */
    private static final int TRIES = 5;

    private final Narrowed graph;
    private final SplittableRandom random;
    private final Runnable watch;

    private final boolean[][] left;
    private final int[] counts;

    /** What was struck out: variables and their states. */
    private int[] struck = new int[64];

    private int strikes;

    private final PriorityQueue<Waiting> waiting = new PriorityQueue<>();
    private final ArrayDeque<Integer> queue = new ArrayDeque<>();
    private final BitSet queued = new BitSet();
    private double work;

    Starts(Narrowed graph, SplittableRandom random, Runnable watch) {
        this.watch = watch;
        this.graph = graph;
        this.random = random;
        this.left = new boolean[graph.size()][];
        this.counts = new int[graph.size()];
        for (int v = 0; v < counts.length; v++) {
            left[v] = new boolean[graph.size(v)];
            Arrays.fill(left[v], true);
            counts[v] = left[v].length;
        }
    }

    /** A variable to be given a state. */
    private record Waiting(int count, int tie, int variable) implements Comparable<Waiting> {
        @Override
        public int compareTo(Waiting other) {
            int byCount = Integer.compare(count, other.count);
            int byTie = byCount != 0 ? byCount : Integer.compare(tie, other.tie);
            return byTie != 0 ? byTie : Integer.compare(variable, other.variable);
        }
    }

    /** A choice of a state: those that may still be tried, the next last, and how much was struck out before. */
    private static final class Choice {
        private final int variable;
        private final Deque<Integer> states;
        private final int strikes;

        Choice(int variable, Deque<Integer> states, int strikes) {
            this.variable = variable;
            this.states = states;
            this.strikes = strikes;
        }
    }

    /** What a search came to; states only if they fit. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    record Found(Fit fit, int[] states) {}

    /** The cells of tables that were looked at. */
    double work() {
        return work;
    }

    /** Looks for any combination. */
    Found any() {
        return search(null, -1, -1);
    }

    /** Looks for any combination, with states that are wanted where that is possible. */
    Found any(boolean[][] seen) {
        return search(seen, -1, -1);
    }

    /** Looks for a combination with a state of a variable. */
    Found with(boolean[][] seen, int variable, int state) {
        return search(seen, variable, state);
    }

    private Found search(boolean @Nullable [][] seen, int variable, int state) {
        Fit fit = Fit.UNDECIDED;
        for (int attempt = 0; attempt < TRIES && fit == Fit.UNDECIDED; attempt++) {
            // what is wanted leads astray if it is wanted too much
            fit = attempt(attempt == 0 ? seen : null, variable, state);
        }
        int[] states = new int[counts.length];
        if (fit == Fit.FITS) {
            for (int v = 0; v < states.length; v++) {
                while (!left[v][states[v]]) {
                    states[v]++;
                }
            }
        }
        takeBack(0);
        return new Found(fit, states);
    }

    private Fit attempt(boolean @Nullable [][] seen, int variable, int state) {
        takeBack(0);
        waiting.clear();
        if (variable >= 0 && !choose(variable, state)) {
            return Fit.CONTRADICTS;
        }
        for (int v = 0; v < counts.length; v++) {
            push(v);
        }
        ArrayDeque<Choice> choices = new ArrayDeque<>();
        int failures = 0;
        while (true) {
            watch.run();
            int next = next();
            if (next < 0) {
                return Fit.FITS;
            }
            choices.push(new Choice(next, shuffled(next, seen), strikes));
            while (!advance(choices.element())) {
                if (++failures > MOST_FAILURES) {
                    return Fit.UNDECIDED;
                }
                while (choices.element().states.isEmpty()) {
                    choices.pop();
                    if (choices.isEmpty()) {
                        return Fit.CONTRADICTS;
                    }
                }
            }
        }
    }

    /** Tries the next state of a choice. */
    private boolean advance(Choice choice) {
        takeBack(choice.strikes);
        push(choice.variable);
        return choose(choice.variable, choice.states.pop());
    }

    private void push(int v) {
        if (counts[v] > 1) {
            waiting.add(new Waiting(counts[v], random.nextInt(), v));
        }
    }

    private int next() {
        while (!waiting.isEmpty()) {
            Waiting head = waiting.remove();
            if (counts[head.variable()] == head.count()) {
                return head.variable();
            }
        }
        return -1;
    }

    /** The states left of a variable in random order, those not seen yet first. */
    private Deque<Integer> shuffled(int v, boolean @Nullable [][] seen) {
        int[] states = new int[counts[v]];
        int count = 0;
        for (int s = 0; s < left[v].length; s++) {
            if (left[v][s]) {
                int at = random.nextInt(count + 1);
                states[count++] = states[at];
                states[at] = s;
            }
        }
        Deque<Integer> order = new ArrayDeque<>();
        for (int s : states) {
            if (seen != null && !seen[v][s]) {
                order.addFirst(s);
            } else {
                order.addLast(s);
            }
        }
        return order;
    }

    /** Gives a variable a state; false if then nothing fits. */
    private boolean choose(int variable, int state) {
        for (int s = 0; s < left[variable].length; s++) {
            if (s != state && left[variable][s]) {
                strike(variable, s);
            }
        }
        queue.clear();
        queued.clear();
        enqueue(variable, -1);
        while (!queue.isEmpty()) {
            int factor = queue.remove();
            queued.clear(factor);
            if (!revise(factor)) {
                return false;
            }
        }
        return true;
    }

    private void enqueue(int variable, int but) {
        for (int factor : graph.touching(variable)) {
            if (factor != but && !queued.get(factor)) {
                queued.set(factor);
                queue.add(factor);
            }
        }
    }

    private void strike(int variable, int state) {
        if (2 * strikes == struck.length) {
            struck = Arrays.copyOf(struck, 2 * struck.length);
        }
        struck[2 * strikes] = variable;
        struck[2 * strikes + 1] = state;
        strikes++;
        left[variable][state] = false;
        counts[variable]--;
    }

    private void takeBack(int to) {
        while (strikes > to) {
            strikes--;
            int variable = struck[2 * strikes];
            left[variable][struck[2 * strikes + 1]] = true;
            counts[variable]++;
            push(variable);
        }
    }

    /** Strikes out what a factor no longer supports; false if it supports nothing. */
    private boolean revise(int factor) {
        int[] scope = graph.scope(factor);
        int[][] offsets = graph.offsets(factor);
        double[] table = graph.table(factor);
        boolean[][] supported = new boolean[scope.length][];
        int[][] here = new int[scope.length][];
        int[] at = new int[scope.length];
        int missing = 0;
        int cell = 0;
        for (int axis = 0; axis < scope.length; axis++) {
            supported[axis] = new boolean[left[scope[axis]].length];
            here[axis] = left(scope[axis]);
            missing += here[axis].length;
            cell += offsets[axis][here[axis][0]];
        }
        while (missing > 0) {
            work++;
            if (table[cell] > 0) {
                for (int axis = 0; axis < scope.length; axis++) {
                    int state = here[axis][at[axis]];
                    missing -= supported[axis][state] ? 0 : 1;
                    supported[axis][state] = true;
                }
            }
            int axis = scope.length - 1;
            for (; axis >= 0; axis--) {
                cell -= offsets[axis][here[axis][at[axis]]];
                at[axis] = at[axis] + 1 == here[axis].length ? 0 : at[axis] + 1;
                cell += offsets[axis][here[axis][at[axis]]];
                if (at[axis] > 0) {
                    break;
                }
            }
            if (axis < 0) {
                break;
            }
        }
        if (missing == 0) {
            return true;
        }
        for (int axis = 0; axis < scope.length; axis++) {
            int before = strikes;
            for (int state : here[axis]) {
                if (!supported[axis][state]) {
                    strike(scope[axis], state);
                }
            }
            if (counts[scope[axis]] == 0) {
                return false;
            }
            if (strikes > before) {
                push(scope[axis]);
                enqueue(scope[axis], factor);
            }
        }
        return true;
    }

    private int[] left(int variable) {
        int[] states = new int[counts[variable]];
        int next = 0;
        for (int s = 0; s < left[variable].length; s++) {
            if (left[variable][s]) {
                states[next++] = s;
            }
        }
        return states;
    }
}
