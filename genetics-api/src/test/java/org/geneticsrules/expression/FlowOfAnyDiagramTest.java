package org.geneticsrules.expression;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Weights that flow through diagrams of any shape, against a walk along every way: below a head of three levels hang parts that are
 * alike but for their leaves, and parts that differ from those in one edge, in one level or in how tests are shared.
 */
class FlowOfAnyDiagramTest {

    private static final int HEAD = 3;
    private static final int DEPTH = 8;

    /** A diagram, and the weights of the values of its levels. */
    private static final class Trial {
        private final SplittableRandom random;
        private final int[] widths = new int[DEPTH];
        private final Nodes nodes;
        private final int root;
        private final int leaves;
        private final LocusWeights[] weights = new LocusWeights[DEPTH];

        Trial(long seed, int bits) {
            this.random = new SplittableRandom(seed);
            Arrays.setAll(widths, level -> 2 + random.nextInt(2));
            this.nodes = new Nodes(widths, 1 << 16, "a trial", "ask for less.");
            List<Part> shapes = shapes();
            int places = widths[0] * widths[1] * widths[2];
            int used = 0;
            int[] parts = new int[places];
            for (int i = 0; i < places; i++) {
                Part shape = shapes.get(random.nextInt(shapes.size()));
                int[] names = new int[shape.ends];
                for (int end : shape.reached()) {
                    // some leaves are reached from several parts
                    boolean old = used > 0 && random.nextInt(6) == 0;
                    names[end] = old ? random.nextInt(used) : used++;
                }
                parts[i] = shape.under(nodes, names);
            }
            this.leaves = used;
            this.root = head(0, parts, 0, places);
            for (int level = 0; level < DEPTH; level++) {
                weights[level] = shares(widths[level], bits);
            }
        }

        private int head(int level, int[] parts, int from, int to) {
            if (level == HEAD) {
                return parts[from];
            }
            int[] next = new int[widths[level]];
            int each = (to - from) / next.length;
            for (int value = 0; value < next.length; value++) {
                next[value] = head(level + 1, parts, from + value * each, from + (value + 1) * each);
            }
            return nodes.node(level, next);
        }

        private LocusWeights shares(int width, int bits) {
            long[] shares = new long[width];
            for (int value = 0; value < width; value++) {
                shares[value] = random.nextInt(8) == 0 ? 0 : 1 + random.nextLong(1L << bits);
            }
            shares[0]++;
            if (random.nextBoolean()) {
                // a total that is a power of two, where factors are found by shifting
                long total = Arrays.stream(shares).sum();
                shares[width - 1] += (Long.highestOneBit(total) << (Long.bitCount(total) == 1 ? 0 : 1)) - total;
            }
            return LocusWeights.of(shares);
        }

        /** Some parts, each of which differs a little from one before. */
        private List<Part> shapes() {
            List<Part> shapes = new ArrayList<>(List.of(Part.any(widths, random)));
            for (int i = 0; i < 3; i++) {
                shapes.add(shapes.get(random.nextInt(shapes.size())).changed(widths, random));
            }
            return shapes;
        }

        CompactNodes compact() {
            return new CompactNodes(nodes, root, DEPTH, leaves);
        }

        /** The weight of each leaf over the product of all totals, way by way. */
        BigInteger[] byHand() {
            BigInteger[] found = new BigInteger[leaves];
            Arrays.fill(found, BigInteger.ZERO);
            follow(root, 0, BigInteger.ONE, found);
            return found;
        }

        private void follow(int node, int level, BigInteger weight, BigInteger[] found) {
            if (level == DEPTH) {
                found[Nodes.value(node)] = found[Nodes.value(node)].add(weight);
                return;
            }
            for (int value = 0; value < widths[level]; value++) {
                int next = nodes.level(node) == level ? nodes.child(node, value) : node;
                follow(next, level + 1, weight.multiply(BigInteger.valueOf(weights[level].shares[value])), found);
            }
        }

        BigInteger total(int from, int to) {
            BigInteger product = BigInteger.ONE;
            for (int level = from; level < to; level++) {
                product = product.multiply(BigInteger.valueOf(weights[level].total));
            }
            return product;
        }
    }

    /** Tests below the head: each of a level, leading on to tests listed later or, as -1-n, to end n. */
    private static final class Part {
        private final int[] levels;
        private final int[][] next;
        private final int ends;

        private Part(int[] levels, int[][] next, int ends) {
            this.levels = levels;
            this.next = next;
            this.ends = ends;
        }

        static Part any(int[] widths, SplittableRandom random) {
            int tests = 2 + random.nextInt(6);
            int[] levels = new int[tests];
            for (int test = 0; test < tests; test++) {
                levels[test] = HEAD + random.nextInt(DEPTH - HEAD);
            }
            Arrays.sort(levels);
            int[][] next = new int[tests][];
            int ends = 2 + random.nextInt(4);
            for (int test = 0; test < tests; test++) {
                next[test] = new int[widths[levels[test]]];
                for (int value = 0; value < next[test].length; value++) {
                    next[test][value] = target(levels, test, ends, random);
                }
            }
            return new Part(levels, next, ends);
        }

        private static int target(int[] levels, int test, int ends, SplittableRandom random) {
            int other = test + 1 + random.nextInt(3);
            return other < levels.length && levels[other] > levels[test] && random.nextInt(4) > 0
                    ? other
                    : -1 - random.nextInt(ends);
        }

        /** The same with one edge or one level changed. */
        Part changed(int[] widths, SplittableRandom random) {
            int[][] edges = Arrays.stream(next).map(int[]::clone).toArray(int[][]::new);
            int[] places = levels.clone();
            int test = random.nextInt(levels.length);
            int after = places[test] + 1;
            boolean free = after < DEPTH && widths[after] == widths[places[test]];
            for (int target : edges[test]) {
                free &= target < 0 || places[target] > after;
            }
            if (free && random.nextBoolean()) {
                places[test] = after;
            } else {
                int value = random.nextInt(edges[test].length);
                edges[test][value] = target(places, test, ends, random);
            }
            return new Part(places, edges, ends);
        }

        /** The ends that some way leads to. */
        Set<Integer> reached() {
            Set<Integer> tests = new TreeSet<>(Set.of(0));
            Set<Integer> found = new TreeSet<>();
            for (int test = 0; test < levels.length; test++) {
                if (tests.contains(test)) {
                    for (int target : next[test]) {
                        (target < 0 ? found : tests).add(target < 0 ? -1 - target : target);
                    }
                }
            }
            return found;
        }

        int under(Nodes nodes, int[] names) {
            int[] made = new int[levels.length];
            for (int test = levels.length - 1; test >= 0; test--) {
                int[] targets = new int[next[test].length];
                for (int value = 0; value < targets.length; value++) {
                    int target = next[test][value];
                    targets[value] = target < 0 ? Nodes.leaf(names[-1 - target]) : made[target];
                }
                made[test] = nodes.node(levels[test], targets);
            }
            return made[0];
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 5})
    void of_weights_that_fit_a_long(int bits) {
        for (long seed = 0; seed < 300; seed++) {
            Trial trial = new Trial(seed, bits);
            long[] above = new long[DEPTH + 1];
            Arrays.setAll(above, level -> trial.total(0, level).longValueExact());
            long[] found = SplitFlow.of(trial.compact())
                    .weigh(Arrays.stream(trial.weights).map(one -> one.shares).toArray(long[][]::new), above);
            BigInteger[] expected = trial.byHand();
            for (int leaf = 0; leaf < expected.length; leaf++) {
                assertEquals(expected[leaf].longValueExact(), found[leaf], "leaf " + leaf + " of trial " + seed);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 17, 31, 40, 58})
    void of_weights_of_any_size(int bits) {
        int skipped = 0;
        for (long seed = 0; seed < 200; seed++) {
            Trial trial = new Trial(seed, bits);
            long most = Arrays.stream(trial.weights)
                    .mapToLong(one -> one.total)
                    .max()
                    .orElseThrow();
            WideFlow wide = new WideFlow(trial.compact(), most);
            assertTrue(wide.holds(trial.weights));
            long[] flow = wide.weigh(trial.weights);
            BigInteger[] expected = trial.byHand();
            for (int leaf = 0; leaf < expected.length; leaf++) {
                BigInteger below = trial.total(wide.level(leaf), DEPTH);
                assertEquals(
                        expected[leaf], wide.weight(flow, leaf).multiply(below), "leaf " + leaf + " of trial " + seed);
                assertEquals(expected[leaf].signum() > 0, wide.isPositive(flow, leaf));
                skipped += wide.level(leaf) < DEPTH ? 1 : 0;
            }
        }
        assertTrue(skipped > 1000, skipped + " leaves end above the last level");
    }
}
