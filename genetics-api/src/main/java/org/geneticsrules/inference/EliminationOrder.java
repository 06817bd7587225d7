package org.geneticsrules.inference;

import java.util.Arrays;
import java.util.PriorityQueue;

/**
 * An order in which variables are summed out, with the tables that this takes, found before any table is made.
 *
 * <p>Of the variables left, that one is next whose table is smallest, or whose neighbours lack the fewest links among them (Kjaerulff
 * 1990, "Triangulation of graphs: algorithms giving small total state space"). Both are tried, and the cheaper order is taken.
 */
@SuppressWarnings("ArrayRecordComponent") // read in the inner loops, never compared
record EliminationOrder(int[] order, int[][] neighbours, double cells, double largest) {

    /** How the next variable is chosen. */
    private enum Rule {
        SMALLEST_TABLE,
        FEWEST_LINKS
    }

    /**
     * Finds an order.
     *
     * @param sizes number of states of each variable
     * @param scopes the variables of each factor
     * @param budget more cells in all tables together than this need not be counted exactly
     * @param watch is called before each choice, and may throw
     */
    static EliminationOrder of(int[] sizes, int[][] scopes, double budget, Runnable watch) {
        EliminationOrder first = new Search(sizes, scopes, Rule.SMALLEST_TABLE, budget).run(watch);
        EliminationOrder second =
                new Search(sizes, scopes, Rule.FEWEST_LINKS, Math.min(budget, first.cells())).run(watch);
        return second.cells() < first.cells() ? second : first;
    }

    private record Waiting(double score, int variable, int version) implements Comparable<Waiting> {
        @Override
        public int compareTo(Waiting other) {
            int byScore = Double.compare(score, other.score);
            return byScore != 0 ? byScore : Integer.compare(variable, other.variable);
        }
    }

    private static final class Search {
        private final int[] sizes;
        private final Rule rule;
        private final double budget;

        /** Neighbours that are not summed out yet, without order. */
        private final int[][] next;

        private final int[] degree;
        private final int[] version;
        private final int[] mark;
        private int stamp;
        private final PriorityQueue<Waiting> queue = new PriorityQueue<>();

        Search(int[] sizes, int[][] scopes, Rule rule, double budget) {
            this.sizes = sizes;
            this.rule = rule;
            this.budget = budget;
            this.next = new int[sizes.length][4];
            this.degree = new int[sizes.length];
            this.version = new int[sizes.length];
            this.mark = new int[sizes.length];
            for (int[] scope : scopes) {
                connect(scope, scope.length);
            }
        }

        EliminationOrder run(Runnable watch) {
            for (int v = 0; v < sizes.length; v++) {
                push(v);
            }
            int[] order = new int[sizes.length];
            int[][] neighbours = new int[sizes.length][];
            double cells = 0;
            double largest = 0;
            int count = 0;
            while (count < order.length && cells <= budget) {
                watch.run();
                Waiting head = queue.remove();
                int v = head.variable();
                if (version[v] != head.version()) {
                    continue;
                }
                version[v] = -1;
                order[count++] = v;
                int[] around = Arrays.copyOf(next[v], degree[v]);
                neighbours[v] = around;
                double table = table(v);
                cells += table;
                largest = Math.max(largest, table);
                for (int other : around) {
                    remove(other, v);
                }
                connect(around, around.length);
                for (int other : around) {
                    version[other]++;
                    push(other);
                }
            }
            return new EliminationOrder(order, neighbours, cells, largest);
        }

        private void push(int v) {
            double table = table(v);
            double score = rule == Rule.SMALLEST_TABLE ? table : missing(v) + 1e-3 * Math.log(table);
            queue.add(new Waiting(score, v, version[v]));
        }

        private double table(int v) {
            double product = sizes[v];
            for (int i = 0; i < degree[v]; i++) {
                product *= sizes[next[v][i]];
            }
            return product;
        }

        /** How many pairs of neighbours are not linked. */
        private double missing(int v) {
            double linked = 0;
            for (int i = 0; i < degree[v]; i++) {
                mark[next[v][i]] = ++stamp;
            }
            int first = stamp - degree[v] + 1;
            for (int i = 0; i < degree[v]; i++) {
                int other = next[v][i];
                for (int j = 0; j < degree[other]; j++) {
                    linked += mark[next[other][j]] >= first ? 1 : 0;
                }
            }
            return ((double) degree[v] * (degree[v] - 1) - linked) / 2;
        }

        private void remove(int from, int v) {
            int[] around = next[from];
            for (int i = 0; i < degree[from]; i++) {
                if (around[i] == v) {
                    around[i] = around[--degree[from]];
                    return;
                }
            }
        }

        /** Links each of some variables with all others of them. */
        private void connect(int[] variables, int count) {
            for (int i = 0; i < count; i++) {
                int v = variables[i];
                stamp++;
                mark[v] = stamp;
                for (int j = 0; j < degree[v]; j++) {
                    mark[next[v][j]] = stamp;
                }
                for (int j = 0; j < count; j++) {
                    int other = variables[j];
                    if (mark[other] != stamp) {
                        if (degree[v] == next[v].length) {
                            next[v] = Arrays.copyOf(next[v], 2 * degree[v]);
                        }
                        next[v][degree[v]++] = other;
                    }
                }
            }
        }
    }
}
