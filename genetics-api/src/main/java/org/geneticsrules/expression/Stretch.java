package org.geneticsrules.expression;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The part of a diagram from one place down to some level, laid out so that weights that fit longs flow through it without a search,
 * an object or a division.
 *
 * <p>Places are numbered anew: the tests of each level together, the ends after all tests. What arrives at a place is weighed over the
 * product of the totals of the levels above it.
 */
final class Stretch {

    private final int top;
    private final int nodes;
    private final int ends;

    /** For each level from the top on, where its tests begin; one more at the end. */
    private final int[] starts;

    /** For each level the places to which its tests lead, test by test. */
    private final int[][] targets;

    /** For each level, which of the skips each target is; empty where all targets are on the next level. */
    private final int[][] skips;

    /** Level after which a skip begins, and the level it leads to. */
    private final int[] from;

    private final int[] to;

    /**
     * Lays out a part of a diagram.
     *
     * @param whole the diagram
     * @param root the place where the part begins
     * @param cut the level at which it ends; tests of this level and later ones are ends
     * @param places the places where it ends, in the order in which they are to be numbered
     */
    Stretch(CompactNodes whole, int root, int cut, int[] places) {
        this.top = Math.min(whole.level(root), cut);
        this.ends = places.length;
        List<List<Integer>> byLevel = reached(whole, root, cut);
        int depth = byLevel.size();
        this.starts = new int[depth + 1];
        int[] number = new int[whole.size() + whole.leaves()];
        for (int l = 0; l < depth; l++) {
            starts[l + 1] = starts[l] + byLevel.get(l).size();
            for (int i = 0; i < byLevel.get(l).size(); i++) {
                number[byLevel.get(l).get(i)] = starts[l] + i;
            }
        }
        this.nodes = starts[depth];
        for (int i = 0; i < places.length; i++) {
            number[places[i]] = nodes + i;
        }
        this.targets = new int[depth][];
        this.skips = new int[depth][];
        List<int[]> skipped = new ArrayList<>();
        skipped.add(new int[] {0, 1});
        for (int l = 0; l < depth; l++) {
            int width = byLevel.get(l).isEmpty() ? 0 : whole.width(top + l);
            int count = byLevel.get(l).size();
            targets[l] = new int[width * count];
            int[] skip = new int[width * count];
            boolean straight = true;
            for (int at = 0; at < width * count; at++) {
                int target = whole.target(byLevel.get(l).get(at / width), at % width);
                targets[l][at] = number[target];
                if (whole.level(target) > top + l + 1) {
                    straight = false;
                    skip[at] = skip(skipped, top + l, whole.level(target));
                }
            }
            skips[l] = straight ? new int[0] : skip;
        }
        this.from = skipped.stream().mapToInt(skip -> skip[0]).toArray();
        this.to = skipped.stream().mapToInt(skip -> skip[1]).toArray();
    }

    private static List<List<Integer>> reached(CompactNodes whole, int root, int cut) {
        int top = Math.min(whole.level(root), cut);
        List<List<Integer>> byLevel = new ArrayList<>();
        for (int level = top; level < cut; level++) {
            byLevel.add(new ArrayList<>());
        }
        if (whole.level(root) >= cut) {
            return byLevel;
        }
        boolean[] seen = new boolean[whole.size() + whole.leaves()];
        byLevel.get(0).add(root);
        for (int l = 0; l < byLevel.size(); l++) {
            for (int node : byLevel.get(l)) {
                for (int value = 0; value < whole.width(top + l); value++) {
                    int target = whole.target(node, value);
                    if (whole.level(target) < cut && !seen[target]) {
                        seen[target] = true;
                        byLevel.get(whole.level(target) - top).add(target);
                    }
                }
            }
        }
        return byLevel;
    }

    private static int skip(List<int[]> skips, int from, int to) {
        for (int i = skips.size() - 1; i > 0; i--) {
            if (skips.get(i)[0] == from && skips.get(i)[1] == to) {
                return i;
            }
        }
        skips.add(new int[] {from, to});
        return skips.size() - 1;
    }

    /** The number of places before the ends: where the ends begin in what {@link #flow} returns. */
    int nodes() {
        return nodes;
    }

    int ends() {
        return ends;
    }

    /** A measure of the work. */
    int edges() {
        return Arrays.stream(targets).mapToInt(level -> level.length).sum();
    }

    /**
     * Lets a weight flow from the top to the ends.
     *
     * @param weight the weight that enters
     * @param shares the weight of each value of each level
     * @param above for each level, the product of the totals of all levels before it
     * @return what arrives at each place, the ends last
     */
    long[] flow(long weight, long[][] shares, long[] above) {
        long[] flow = new long[nodes + ends];
        flow[0] = weight;
        long[] factors = factors(above);
        for (int l = 0; l < targets.length; l++) {
            long[] here = shares[top + l];
            int[] to = targets[l];
            int[] skip = skips[l];
            int at = 0;
            for (int node = starts[l]; node < starts[l + 1]; node++, at += here.length) {
                long arriving = flow[node];
                if (arriving != 0) {
                    for (int value = 0; value < here.length; value++) {
                        long leaving = arriving * here[value];
                        flow[to[at + value]] += skip.length == 0 ? leaving : leaving * factors[skip[at + value]];
                    }
                }
            }
        }
        return flow;
    }

    /** For each skip the product of the totals of the levels in between. */
    private long[] factors(long[] above) {
        long[] factors = new long[from.length];
        factors[0] = 1;
        for (int i = 1; i < factors.length; i++) {
            long before = above[from[i] + 1];
            long all = above[to[i]];
            factors[i] = Long.bitCount(all) == 1
                    ? 1L << (Long.numberOfTrailingZeros(all) - Long.numberOfTrailingZeros(before))
                    : all / before;
        }
        return factors;
    }
}
