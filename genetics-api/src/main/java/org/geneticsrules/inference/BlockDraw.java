package org.geneticsrules.inference;

import java.util.List;
import java.util.SplittableRandom;
import org.geneticsrules.inference.Block.Clique;
import org.geneticsrules.inference.Block.Input;
import org.jspecify.annotations.Nullable;

/**
 * Draws the variables of a block together, given all others, and tells the exact chances of their states, given all others.
 *
 * <p>Upwards each clique sums its variable out; then states are drawn from the last variable back to the first. The chances come from
 * messages downwards, as in {@link CliqueTree}. Not thread-safe: the tables are used again and again.
 */
final class BlockDraw {

    /** A product is scaled after so many factors, so that those of a parent of thousands do not underflow. */
    private static final int OFTEN = 16;

    private final Narrowed graph;

    /** The weights of all entries, clique after clique. */
    private double[] table = new double[0];

    /** For each clique, where its entries begin. */
    private int[] begins = new int[0];

    /** What each clique says upwards. */
    private double[][] up = new double[0][];

    BlockDraw(Narrowed graph) {
        this.graph = graph;
    }

    /**
     * Draws a block anew.
     *
     * @param block the block
     * @param at a state of each variable, together possible; those of the block are drawn anew
     * @param random where chance comes from; as many numbers are taken whatever is drawn
     * @param chances for each variable, where the chances of its states are added; none if they are not needed
     * @return whether something was drawn; false if all weights were too small for the range of numbers, in which case nothing is changed
     */
    boolean draw(Block block, int[] at, SplittableRandom random, double @Nullable [][] chances) {
        List<Clique> cliques = block.cliques();
        if (!up(block, at)) {
            return false;
        }
        int[] before = at.clone();
        for (int i = up.length - 1; i >= 0; i--) {
            if (!drawOne(cliques.get(i), begins[i], at, new SplittableRandom(random.nextLong()))) {
                System.arraycopy(before, 0, at, 0, at.length);
                return false;
            }
        }
        if (chances != null) {
            down(cliques, chances);
        }
        return true;
    }

    private boolean up(Block block, int[] at) {
        List<Clique> cliques = block.cliques();
        if (table.length < block.entries()) {
            table = new double[block.entries()];
        }
        begins = new int[cliques.size()];
        up = new double[cliques.size()][];
        int begin = 0;
        for (int i = 0; i < up.length; i++) {
            Clique clique = cliques.get(i);
            product(clique, begin, at);
            double[] sums = new double[clique.rows().length];
            int[] starts = clique.starts();
            for (int row = 0; row < sums.length; row++) {
                double sum = 0;
                for (int entry = begin + starts[row]; entry < begin + starts[row + 1]; entry++) {
                    sum += table[entry];
                }
                sums[row] = sum;
            }
            if (scale(sums, 0, sums.length) == 0) {
                return false;
            }
            up[i] = sums;
            begins[i] = begin;
            begin += clique.entries();
        }
        return true;
    }

    /** Where a table begins, given the states of variables that are not in the block. */
    private static int given(Input input, int[] at) {
        int place = 0;
        for (int i = 0; i < input.given().length; i++) {
            place += input.distances()[i][at[input.given()[i]]];
        }
        return place;
    }

    /** Makes the weights of the entries of a clique: the products of its factors and of the messages to it. */
    private void product(Clique clique, int begin, int[] at) {
        int count = clique.entries();
        System.arraycopy(clique.weights(), 0, table, begin, count);
        int multiplied = 0;
        for (Input input : clique.inputs()) {
            double[] weights = input.child() < 0 ? input.table() : up[input.child()];
            int[] places = input.places();
            int given = given(input, at);
            for (int entry = 0; entry < count; entry++) {
                table[begin + entry] *= weights[given + places[entry]];
            }
            if (++multiplied % OFTEN == 0) {
                scale(table, begin, begin + count);
            }
        }
    }

    private void down(List<Clique> cliques, double[][] chances) {
        double[] @Nullable [] above = new double[cliques.size()][];
        for (int i = cliques.size() - 1; i >= 0; i--) {
            Clique clique = cliques.get(i);
            double[] message = above[i];
            int begin = begins[i];
            int[] starts = clique.starts();
            double total = 0;
            for (int row = 0; row < clique.rows().length; row++) {
                double from = message == null ? 1 : message[row];
                for (int entry = begin + starts[row]; entry < begin + starts[row + 1]; entry++) {
                    table[entry] *= from;
                    total += table[entry];
                }
            }
            above[i] = null; // it has been heard
            double[] into = chances[clique.variable()];
            for (int entry = 0; entry < clique.entries(); entry++) {
                into[clique.states()[entry]] += table[begin + entry] / total;
            }
            for (Input input : clique.inputs()) {
                if (input.child() >= 0) {
                    above[input.child()] = without(begin, input, up[input.child()]);
                }
            }
        }
    }

    /** What the entries of a clique say of the rows of a child, the child's own message taken out again. */
    private double[] without(int begin, Input child, double[] said) {
        double[] sums = new double[said.length];
        int[] places = child.places();
        for (int entry = 0; entry < places.length; entry++) {
            sums[places[entry]] += table[begin + entry];
        }
        for (int row = 0; row < sums.length; row++) {
            // where nothing came up, nothing depends on what goes down
            sums[row] = said[row] == 0 ? 0 : sums[row] / said[row];
        }
        scale(sums, 0, sums.length);
        return sums;
    }

    /**
     * Draws the variable of a clique, given those that are drawn already: a state is proposed, all being as likely, and accepted with the
     * chance of its weight divided by the largest, else another is proposed. Two chains that get the same numbers so mostly accept the same
     * proposal, even if their weights differ.
     *
     * @return false if all weights are 0
     */
    private boolean drawOne(Clique clique, int begin, int[] at, SplittableRandom random) {
        double[] weights = new double[graph.size(clique.variable())];
        int row = clique.row(at);
        int from = row < 0 ? 0 : clique.starts()[row];
        int to = row < 0 ? 0 : clique.starts()[row + 1];
        for (int entry = from; entry < to; entry++) {
            weights[clique.states()[entry]] = table[begin + entry];
        }
        if (scale(weights, 0, weights.length) == 0) {
            return false;
        }
        while (true) {
            int state = (int) (uniform(random) * weights.length);
            if (uniform(random) < weights[state]) {
                at[clique.variable()] = state;
                return true;
            }
        }
    }

    /** A random number from 0 to below 1. */
    private static double uniform(SplittableRandom random) {
        return (random.nextLong() >>> 11) * 0x1.0p-53;
    }

    /** Divides by the largest weight, and returns it. */
    private static double scale(double[] weights, int from, int to) {
        double most = 0;
        for (int i = from; i < to; i++) {
            most = Math.max(most, weights[i]);
        }
        if (most > 0) {
            for (int i = from; i < to; i++) {
                weights[i] /= most;
            }
        }
        return most;
    }
}
