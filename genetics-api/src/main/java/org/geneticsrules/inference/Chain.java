package org.geneticsrules.inference;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;

/** A walk through possible combinations of states, all blocks drawn in turn. Not thread-safe, but chains may run beside one another. */
final class Chain {

    private final Narrowed graph;
    private final List<Block> blocks;
    private final BlockDraw draw;
    private final int[] at;
    private boolean lost;

    /**
     * Begins a chain.
     *
     * @param graph the graph
     * @param blocks its blocks
     * @param start a state of each variable, together possible
     */
    Chain(Narrowed graph, List<Block> blocks, int[] start) {
        this.graph = graph;
        this.blocks = blocks;
        this.draw = new BlockDraw(graph);
        this.at = start.clone();
    }

    /** Draws all blocks. */
    void draw(SplittableRandom random) {
        for (Block block : blocks) {
            lost |= !draw.draw(block, at, random, null);
        }
    }

    /**
     * Draws all blocks.
     *
     * @return for each variable, the sums of the chances of its states over the blocks with it, given what was not in the block
     */
    double[][] count(SplittableRandom random) {
        double[][] chances = new double[graph.size()][];
        for (int v = 0; v < chances.length; v++) {
            chances[v] = new double[graph.size(v)];
        }
        for (Block block : blocks) {
            lost |= !draw.draw(block, at, random, chances);
        }
        return chances;
    }

    /** Whether some block could not be drawn, its weights being too small. */
    boolean isLost() {
        return lost;
    }

    /** Whether it is where another chain is. */
    boolean isWith(Chain other) {
        return Arrays.equals(at, other.at);
    }
}
