package org.geneticsrules.inference;

import java.util.List;

/**
 * Averages of the chances of states over the rounds of several chains, with their standard errors, and whether the chains agree.
 *
 * <p><b>Standard error</b>: rounds of a chain depend on one another, so they are put together in batches, so long that the means of batches
 * hardly do, and the means are compared (Geyer 1992, Stat. Sci. 7:473; Flegal, Haran &amp; Jones 2008, Stat. Sci. 23:250, both from memory).
 * Batches grow with the run: there are 8 to 16 of each chain.
 *
 * <p><b>Agreement</b>: the variance between the means of chains is compared with that within them (Gelman &amp; Rubin 1992, Stat. Sci. 7:457,
 * from memory). If chains are of different mind, the ratio is large however sure each is of itself.
 */
final class Tally {

    /** When each chain has so many batches, two each are put together. */
    private static final int MOST_BATCHES = 16;

    /** With fewer batches of each chain nothing is said. */
    private static final int FEWEST_BATCHES = 8;

    /** The largest ratio of agreement; 1.1 is usual. */
    private static final double MOST_RATIO = 1.05;

    /** Means of chains that differ less are the same but for rounding. */
    private static final double ROUNDING = 1e-7;

    private final int chains;

    /** For each variable, in how many blocks it is drawn. */
    private final int[] times;

    /** For each variable, where the numbers of its states begin. */
    private final int[] from;

    private final int numbers;

    /** For each chain and number, the sums of each batch. */
    private final double[][] batches;

    /** For each chain, the sums of each number over all rounds. */
    private final double[][] sums;

    /** For each number, the sum of squares over all rounds and chains. */
    private final double[] squares;

    private int full;
    private int length = 1;
    private int filled;
    private int rounds;

    Tally(Narrowed graph, List<Block> blocks, int chains) {
        this.chains = chains;
        this.times = new int[graph.size()];
        this.from = new int[graph.size() + 1];
        for (int v = 0; v < times.length; v++) {
            for (Block block : blocks) {
                times[v] += block.draws(v) ? 1 : 0;
            }
            from[v + 1] = from[v] + (graph.size(v) == 1 ? 0 : graph.size(v));
        }
        this.numbers = from[times.length];
        this.batches = new double[chains][numbers * MOST_BATCHES];
        this.sums = new double[chains][numbers];
        this.squares = new double[numbers];
    }

    /** Adds one round: for each chain and variable the sums of the chances of states over the blocks with it. */
    void add(double[][][] ofChains) {
        for (int c = 0; c < chains; c++) {
            for (int v = 0; v < times.length; v++) {
                for (int i = from[v]; i < from[v + 1]; i++) {
                    double value = ofChains[c][v][i - from[v]] / times[v];
                    batches[c][i * MOST_BATCHES + full] += value;
                    sums[c][i] += value;
                    squares[i] += value * value;
                }
            }
        }
        rounds++;
        if (++filled == length) {
            filled = 0;
            full++;
        }
    }

    /** Whether all rounds so far are in whole batches, and these are many enough and divide evenly. */
    boolean isWhole() {
        return filled == 0 && full >= FEWEST_BATCHES && full % (FEWEST_BATCHES / 2) == 0;
    }

    /** Puts batches together if there is no room for more. */
    void makeRoom() {
        if (full < MOST_BATCHES) {
            return;
        }
        for (double[] chain : batches) {
            for (int i = 0; i < numbers; i++) {
                int from = i * MOST_BATCHES;
                for (int b = 0; b < MOST_BATCHES; b++) {
                    chain[from + b] = b < MOST_BATCHES / 2 ? chain[from + 2 * b] + chain[from + 2 * b + 1] : 0;
                }
            }
        }
        full = MOST_BATCHES / 2;
        length *= 2;
    }

    /** The rounds of each chain. */
    int rounds() {
        return rounds;
    }

    /** The mean of the chance of a state over all rounds and chains. */
    double mean(int variable, int state) {
        double sum = 0;
        for (double[] chain : sums) {
            sum += chain[from[variable] + state];
        }
        return sum / ((double) chains * rounds);
    }

    /** The standard error of a mean; infinite as long as there are too few rounds. */
    double error(int variable, int state) {
        if (full < FEWEST_BATCHES) {
            return Double.POSITIVE_INFINITY;
        }
        int count = chains * full;
        int first = (from[variable] + state) * MOST_BATCHES;
        double mean = 0;
        for (double[] chain : batches) {
            for (int b = first; b < first + full; b++) {
                mean += chain[b] / length / count;
            }
        }
        double spread = 0;
        for (double[] chain : batches) {
            for (int b = first; b < first + full; b++) {
                double difference = chain[b] / length - mean;
                spread += difference * difference;
            }
        }
        return Math.sqrt(spread / count / (count - 1));
    }

    /** Whether the chains agree on the chance of a state. */
    boolean agrees(int variable, int state) {
        int number = from[variable] + state;
        double mean = mean(variable, state);
        double between = 0; // variance of the means of chains
        double within = squares[number]; // variance of rounds about the mean of their chain
        for (double[] chain : sums) {
            double ofChain = chain[number] / rounds;
            between += (ofChain - mean) * (ofChain - mean) / (chains - 1);
            within -= ofChain * ofChain * rounds;
        }
        if (between < ROUNDING * ROUNDING) {
            return true;
        }
        within = Math.max(0, within) / ((double) chains * (rounds - 1));
        return within * (rounds - 1) / rounds + between <= MOST_RATIO * MOST_RATIO * within;
    }
}
