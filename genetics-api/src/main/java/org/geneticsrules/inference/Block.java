package org.geneticsrules.inference;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Some variables that are drawn together, given the states of all others: a tree of cliques as in {@link CliqueTree}, laid out once and used
 * with many states of the others.
 *
 * <p>Each variable of the block has a clique of its own: itself and those of its neighbours in the block that are summed out later. Of the
 * combinations of their states only those are listed to which some states of the others give a weight: few, since a pair of parents has few
 * kinds of kits.
 */
final class Block {

    /**
     * The clique of one variable, and the combinations of states that may have a weight, ordered by the states of the others.
     *
     * @param variable the variable
     * @param others its neighbours in the block that are summed out later
     * @param strides for each of them how far its next state lies in the numbers of rows
     * @param rows the combinations of states of the others, by number
     * @param starts for each row where its entries begin, and where the last ends
     * @param states for each entry the state of the variable
     * @param weights for each entry the product of the factors that are about variables of the block only
     * @param inputs what else is multiplied
     */
    @SuppressWarnings("ArrayRecordComponent") // read in the inner loops, never compared
    record Clique(
            int variable,
            int[] others,
            int[] strides,
            int[] rows,
            int[] starts,
            int[] states,
            double[] weights,
            List<Input> inputs) {

        int entries() {
            return states.length;
        }

        /** The place of the row of given states among the rows. */
        int row(int[] at) {
            int number = 0;
            for (int i = 0; i < others.length; i++) {
                number += strides[i] * at[others[i]];
            }
            return Arrays.binarySearch(rows, number);
        }
    }

    /**
     * A factor, or what an earlier clique says.
     *
     * @param child which clique says it; -1 for a factor
     * @param table the weights of a factor
     * @param places for each entry of the clique the place in the table
     * @param given the variables of a factor that are not in the block
     * @param distances for each of these how far its states move the place
     */
    @SuppressWarnings("ArrayRecordComponent") // read in the inner loops, never compared
    record Input(int child, double[] table, int[] places, int[] given, int[][] distances) {}

    private final List<Clique> cliques;
    private final boolean[] drawn;
    private final int entries;

    private Block(List<Clique> cliques, boolean[] drawn) {
        this.cliques = cliques;
        this.drawn = drawn;
        this.entries = cliques.stream().mapToInt(Clique::entries).sum();
    }

    /**
     * Lays out a block.
     *
     * @param graph the whole graph
     * @param order the variables of the block, as they are summed out
     * @param later for each of them, its neighbours in the block that are summed out later
     */
    static Block of(Narrowed graph, int[] order, int[][] later) {
        int[] when = new int[graph.size()];
        Arrays.fill(when, -1);
        boolean[] drawn = new boolean[graph.size()];
        List<List<Listing.Source>> sources = new ArrayList<>();
        for (int i = 0; i < order.length; i++) {
            when[order[i]] = i;
            drawn[order[i]] = true;
            sources.add(new ArrayList<>());
        }
        for (int f = 0; f < graph.factors(); f++) {
            int first = -1;
            for (int v : graph.scope(f)) {
                first = when[v] >= 0 && (first < 0 || when[v] < first) ? when[v] : first;
            }
            if (first >= 0) {
                sources.get(first).add(new Listing.OfFactor(graph, f, drawn));
            }
        }
        List<Clique> cliques = new ArrayList<>();
        for (int i = 0; i < order.length; i++) {
            Clique clique = new Listing(graph, order[i], later[i], sources.get(i)).clique();
            sources.set(i, List.of()); // they take more room than what is made of them
            cliques.add(clique);
            if (later[i].length > 0) {
                int next = Arrays.stream(later[i]).map(v -> when[v]).min().getAsInt();
                sources.get(next).add(new Listing.OfChild(i, clique));
            }
        }
        return new Block(cliques, drawn);
    }

    /** The cliques as they are summed out. */
    List<Clique> cliques() {
        return cliques;
    }

    /** Whether a variable is in the block. */
    boolean draws(int variable) {
        return drawn[variable];
    }

    /** The number of variables in the block. */
    int size() {
        return cliques.size();
    }

    /** The entries of all cliques together. */
    int entries() {
        return entries;
    }
}
