package org.geneticsrules.expression;

import java.math.BigInteger;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Lets chances in floating point flow through a diagram, along with the hidden states of linked loci: the companion of {@link
 * ExactFlow}.
 *
 * <p>The chances of each level sum to 1, so nothing is multiplied in on the way past levels that are not tested. No chance but 0 can
 * become 0: a number that becomes very small carries a power of two of its own from there on.
 */
final class DoubleFlow {

    /** Of two numbers of at least this the product is still far from underflow. */
    private static final double SMALL = 0x1p-500;

    private static final int MANY_BITS = 10_000;

    /** Roundings of a fraction made from whole numbers, and of a product with it. */
    private static final int OF_A_PRODUCT = 5;

    /** Half the distance between neighbouring numbers at 1: the relative error of one operation. */
    private static final double ROUNDING = 0x1p-53;

    /** Chances of one level by state and value, or by state and next state. */
    @SuppressWarnings("ArrayRecordComponent") // read in the inner loops, never compared
    private record Chances(double[][] numbers, int[][] exponents) {

        static Chances of(BigInteger[][] rows) {
            Chances chances = new Chances(new double[rows.length][], new int[rows.length][]);
            for (int i = 0; i < rows.length; i++) {
                BigInteger total = Matrices.sum(rows[i]);
                chances.numbers[i] = new double[rows[i].length];
                chances.exponents[i] = new int[rows[i].length];
                for (int j = 0; j < rows[i].length; j++) {
                    chances.set(i, j, rows[i][j], digits(total), shift(total));
                }
            }
            return chances;
        }

        private void set(int i, int j, BigInteger part, double total, int totalShift) {
            if (part.signum() > 0) {
                double ratio = digits(part) / total;
                int power = shift(part) - totalShift;
                double whole = power == 0 ? ratio : Math.scalb(ratio, power);
                boolean small = whole <= SMALL; // then it needs a power of its own
                numbers[i][j] = small ? ratio : whole;
                exponents[i][j] = small ? power : 0;
            }
        }

        private static int shift(BigInteger number) {
            return Math.max(0, number.bitLength() - Long.SIZE + 1);
        }

        private static double digits(BigInteger number) {
            int shift = shift(number);
            return (double) (shift == 0 ? number : number.shiftRight(shift)).longValue();
        }

        /** The least power of two, its sign left off, that no positive chance is below; more than enough where one has a power of its own. */
        int bits() {
            int most = 0;
            for (int i = 0; i < numbers.length; i++) {
                for (int j = 0; j < numbers[i].length; j++) {
                    if (numbers[i][j] > 0) {
                        most = Math.max(most, exponents[i][j] == 0 ? -Math.getExponent(numbers[i][j]) : MANY_BITS);
                    }
                }
            }
            return most;
        }

        /** The product of two steps, each in range. */
        Chances times(Chances next) {
            int states = next.numbers[0].length;
            Chances product = new Chances(new double[numbers.length][states], new int[numbers.length][states]);
            for (int i = 0; i < numbers.length; i++) {
                for (int j = 0; j < next.numbers.length; j++) {
                    for (int k = 0; k < states; k++) {
                        add(
                                product.numbers[i],
                                product.exponents[i],
                                k,
                                numbers[i][j] * next.numbers[j][k],
                                exponents[i][j] + next.exponents[j][k]);
                    }
                }
            }
            return product;
        }
    }

    private final CompactNodes nodes;
    private final List<Layer> layers;
    private final Chances[] shows;
    private final Chances[] enter;
    private final @Nullable Chances[] next;
    private final Map<Long, Chances> moves = new LinkedHashMap<>();
    private final double error;

    /** Whether all chances are so large that no product along any way underflows. */
    private final boolean large;

    DoubleFlow(CompactNodes nodes, List<Layer> layers) {
        this.nodes = nodes;
        this.layers = layers;
        int depth = layers.size();
        this.shows = new Chances[depth];
        this.enter = new Chances[depth];
        this.next = new Chances[depth];
        double operations = nodes.additions();
        int bits = 0;
        for (int l = 0; l < depth; l++) {
            Layer layer = layers.get(l);
            shows[l] = Chances.of(layer.shows());
            operations += OF_A_PRODUCT + layer.states();
            if (layer.start() != null) {
                enter[l] = Chances.of(new BigInteger[][] {layer.start()});
            } else {
                enter[l] = enter[l - 1].times(Objects.requireNonNull(next[l - 1]));
            }
            if (layer.next() != null) {
                next[l] = Chances.of(layer.next());
                operations += 2 * (OF_A_PRODUCT + layer.states());
            }
        }
        for (Chances[] kind : List.of(shows, enter, next)) {
            for (Chances chances : kind) {
                bits += chances == null ? 0 : chances.bits();
            }
        }
        this.large = bits < -Math.getExponent(SMALL);
        this.error = operations * ROUNDING;
    }

    /** What the relative error of each chance is at most. */
    double error() {
        return error;
    }

    /** The chances of the leaves, each times a power of two. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    record Leaves(double[] numbers, int[] exponents) {}

    /** The same for loci that are independent of one another. */
    static Leaves weigh(CompactNodes nodes, LocusWeights[] levels) {
        double[] flow = new double[nodes.size() + nodes.leaves()];
        flow[nodes.root()] = 1;
        for (int l = 0; l < levels.length; l++) {
            int first = nodes.start(l);
            int count = nodes.start(l + 1) - first;
            int[] targets = nodes.targets(l);
            for (int value = 0, edge = 0; edge < targets.length; value++) {
                double chance = (double) levels[l].shares[value] / levels[l].total;
                for (int node = 0; node < count; node++, edge++) {
                    flow[targets[edge]] += flow[first + node] * chance;
                }
            }
        }
        return new Leaves(Arrays.copyOfRange(flow, nodes.size(), flow.length), new int[nodes.leaves()]);
    }

    /** What the relative error of each chance is at most where loci are independent. */
    static double errorOf(CompactNodes nodes) {
        return (nodes.additions() + 2.0 * nodes.depth()) * ROUNDING;
    }

    /** Whether the chances of independent loci are so large that none of their products underflows. */
    static boolean isSafe(LocusWeights[] levels) {
        double bits = 0;
        for (LocusWeights level : levels) {
            bits += Math.getExponent((double) level.total) + 1;
        }
        return bits < -Math.getExponent(SMALL);
    }

    Leaves weigh() {
        return large ? weighLarge() : weighAny();
    }

    /** Numbers alone, in one array. */
    private Leaves weighLarge() {
        int size = nodes.size();
        int[] at = new int[size + nodes.leaves() + 1];
        for (int place = 0; place + 1 < at.length; place++) {
            at[place + 1] =
                    at[place] + (place < size ? layers.get(nodes.level(place)).states() : 1);
        }
        double[] flow = new double[at[at.length - 1]];
        enter(nodes.root(), 1, flow, at);
        for (int node = 0; node < size; node++) {
            int level = nodes.level(node);
            double[][] seen = shows[level].numbers();
            for (int value = 0; value < nodes.width(level); value++) {
                int target = nodes.target(node, value);
                if (isSameRun(level, nodes.level(target))) {
                    double[][] moved = moves(level, nodes.level(target)).numbers();
                    for (int s = 0; s < seen.length; s++) {
                        double leaving = flow[at[node] + s] * seen[s][value];
                        for (int to = 0; leaving > 0 && to < moved[s].length; to++) {
                            flow[at[target] + to] += leaving * moved[s][to];
                        }
                    }
                } else {
                    double leaving = 0;
                    for (int s = 0; s < seen.length; s++) {
                        leaving += flow[at[node] + s] * seen[s][value];
                    }
                    enter(target, leaving, flow, at);
                }
            }
        }
        return new Leaves(Arrays.copyOfRange(flow, at[size], flow.length), new int[nodes.leaves()]);
    }

    private void enter(int place, double number, double[] flow, int[] at) {
        if (place >= nodes.size()) {
            flow[at[place]] += number;
        } else {
            double[] states = enter[nodes.level(place)].numbers()[0];
            for (int s = 0; s < states.length; s++) {
                flow[at[place] + s] += number * states[s];
            }
        }
    }

    private Leaves weighAny() {
        int places = nodes.size() + nodes.leaves();
        double[][] flow = new double[places][];
        int[][] powers = new int[places][];
        for (int place = 0; place < places; place++) {
            int states = place < nodes.size() ? layers.get(nodes.level(place)).states() : 1;
            flow[place] = new double[states];
            powers[place] = new int[states];
        }
        arrive(nodes.root(), 1, 0, flow, powers);
        for (int node = 0; node < nodes.size(); node++) {
            if (Arrays.stream(flow[node]).anyMatch(here -> here > 0)) {
                leave(node, flow, powers);
            }
        }
        double[] numbers = new double[nodes.leaves()];
        int[] exponents = new int[nodes.leaves()];
        for (int leaf = 0; leaf < numbers.length; leaf++) {
            numbers[leaf] = flow[nodes.size() + leaf][0];
            exponents[leaf] = powers[nodes.size() + leaf][0];
        }
        return new Leaves(numbers, exponents);
    }

    private void leave(int node, double[][] flow, int[][] powers) {
        int level = nodes.level(node);
        int states = flow[node].length;
        double[] leaving = new double[states];
        int[] power = new int[states];
        for (int value = 0; value < nodes.width(level); value++) {
            int target = nodes.target(node, value);
            boolean stays = isSameRun(level, nodes.level(target));
            Chances moved = stays ? moves(level, nodes.level(target)) : null;
            for (int s = 0; s < states; s++) {
                leaving[s] = flow[node][s] * shows[level].numbers()[s][value];
                power[s] = powers[node][s] + shows[level].exponents()[s][value];
                if (leaving[s] == 0) {
                    continue;
                }
                if (leaving[s] < SMALL) {
                    int up = Math.getExponent(leaving[s]);
                    leaving[s] = Math.scalb(leaving[s], -up);
                    power[s] += up;
                }
                if (moved == null) {
                    arrive(target, leaving[s], power[s], flow, powers);
                } else {
                    for (int to = 0; to < moved.numbers()[s].length; to++) {
                        add(
                                flow[target],
                                powers[target],
                                to,
                                leaving[s] * moved.numbers()[s][to],
                                power[s] + moved.exponents()[s][to]);
                    }
                }
            }
        }
    }

    /** Enters a run, or a leaf. */
    private void arrive(int place, double number, int power, double[][] flow, int[][] powers) {
        if (place >= nodes.size()) {
            add(flow[place], powers[place], 0, number, power);
        } else {
            Chances states = enter[nodes.level(place)];
            for (int s = 0; s < states.numbers()[0].length; s++) {
                add(flow[place], powers[place], s, number * states.numbers()[0][s], power + states.exponents()[0][s]);
            }
        }
    }

    private static void add(double[] sums, int[] powers, int at, double number, int power) {
        if (number == 0) {
            return;
        }
        if (power == 0 && powers[at] == 0 && number > SMALL) {
            sums[at] += number;
            return;
        }
        int up = Math.getExponent(number);
        double brought = Math.scalb(number, -up);
        int all = power + up;
        if (sums[at] == 0) {
            sums[at] = brought;
            powers[at] = all;
        } else if (all <= powers[at]) {
            sums[at] += Math.scalb(brought, all - powers[at]);
        } else {
            sums[at] = Math.scalb(sums[at], powers[at] - all) + brought;
            powers[at] = all;
        }
    }

    private boolean isSameRun(int from, int to) {
        if (to == layers.size()) {
            return false;
        }
        for (int l = from; l < to; l++) {
            if (layers.get(l).next() == null) {
                return false;
            }
        }
        return true;
    }

    private Chances moves(int from, int to) {
        return moves.computeIfAbsent((long) from << 32 | to, key -> {
            Chances product = Objects.requireNonNull(next[from]);
            for (int l = from + 1; l < to; l++) {
                product = product.times(Objects.requireNonNull(next[l]));
            }
            return product;
        });
    }
}
