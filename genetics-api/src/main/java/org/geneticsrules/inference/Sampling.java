package org.geneticsrules.inference;

/**
 * How chances are estimated where relations form so many loops that the exact calculation does not fit.
 *
 * <pre>{@code
 * Inference.of(compiled, pedigree).sampling(Sampling.seeded(1)).conclude();
 * }</pre>
 *
 * <p>The same seed and limits give the same numbers on any machine: work is limited, not time.
 *
 * <p>Immutable and thread-safe.
 *
 * @param seed where the random numbers start
 * @param chains how many independent chains are compared with one another, 2 to 64
 * @param mostStandardError a number counts when its standard error is no larger, above 0 and below 1/2
 * @param work the cells of tables that may be gone through for one part of the pedigree, all chains together; some 10^8 take a second
 * @param blockCells the cells of the largest table of one block, at least 1; an animal alone always makes a block
 */
public record Sampling(long seed, int chains, double mostStandardError, double work, int blockCells) {

    /** How many chains are compared unless stated otherwise. */
    public static final int USUAL_CHAINS = 4;

    /** The standard error of a number that counts unless stated otherwise. */
    public static final double USUAL_STANDARD_ERROR = 0.005;

    /** The cells that may be gone through unless stated otherwise. */
    public static final double USUAL_WORK = 2e10;

    /** The cells of the largest table of a block unless stated otherwise. */
    public static final int USUAL_BLOCK_CELLS = 1 << 12;

    private static final int MOST_CHAINS = 64;

    /**
     * Checks the limits.
     *
     * @param seed where the random numbers start
     * @param chains how many chains
     * @param mostStandardError the standard error of a number that counts
     * @param work the cells that may be gone through
     * @param blockCells the cells of the largest table of a block
     * @throws IllegalArgumentException if a limit is outside its range
     */
    public Sampling {
        require(chains >= 2 && chains <= MOST_CHAINS, "2 to " + MOST_CHAINS + " chains", chains);
        require(
                mostStandardError > 0 && mostStandardError < 0.5,
                "a standard error above 0 and below 0.5",
                mostStandardError);
        require(work >= 0, "work of 0 cells or more", work);
        require(blockCells >= 1, "blocks of at least 1 cell", blockCells);
    }

    private static void require(boolean met, String expected, Object found) {
        if (!met) {
            throw new IllegalArgumentException("expected " + expected + ", found " + found);
        }
    }

    /**
     * Returns the usual way of sampling.
     *
     * @param seed where the random numbers start
     * @return sampling with the usual limits
     */
    public static Sampling seeded(long seed) {
        return new Sampling(seed, USUAL_CHAINS, USUAL_STANDARD_ERROR, USUAL_WORK, USUAL_BLOCK_CELLS);
    }

    /**
     * Returns the same with another number of chains.
     *
     * @param number how many chains are compared, 2 to 64
     * @return a copy
     * @throws IllegalArgumentException if there are fewer or more
     */
    public Sampling withChains(int number) {
        return new Sampling(seed, number, mostStandardError, work, blockCells);
    }

    /**
     * Returns the same with another standard error.
     *
     * @param most the standard error of a number that counts, above 0 and below 1/2
     * @return a copy
     * @throws IllegalArgumentException if it is outside that range
     */
    public Sampling withStandardError(double most) {
        return new Sampling(seed, chains, most, work, blockCells);
    }

    /**
     * Returns the same with another limit of work.
     *
     * @param cells the cells that may be gone through for one part, 0 or more
     * @return a copy
     * @throws IllegalArgumentException if it is negative
     */
    public Sampling withWork(double cells) {
        return new Sampling(seed, chains, mostStandardError, cells, blockCells);
    }

    /**
     * Returns the same with larger or smaller blocks: larger ones need fewer rounds that take longer.
     *
     * @param cells the cells of the largest table of a block, at least 1
     * @return a copy
     * @throws IllegalArgumentException if there is not even one
     */
    public Sampling withBlocks(int cells) {
        return new Sampling(seed, chains, mostStandardError, work, cells);
    }
}
