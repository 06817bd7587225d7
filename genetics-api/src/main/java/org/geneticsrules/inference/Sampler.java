package org.geneticsrules.inference;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * Estimates the chances of the states of each variable of a connected graph by drawing block after block ({@link Block}), each exactly and
 * given all else.
 *
 * <ol>
 *   <li><b>Starts</b>: combinations that are possible, the first any, each further one with a state of some variable that none before could
 *       have, until each state that elimination leaves was seen, or is shown to be impossible ({@link Starts}).
 *   <li><b>Meeting</b>: chains from all starts get the same random numbers until they are in the same states at the same time (compare
 *       Johnson 1996, J. Am. Stat. Assoc. 91:154, from memory). Any draw of a block may be taken back by another, so then each start leads
 *       to each other, which no agreement between chains alone could show. If they do not meet, no number is given.
 *   <li><b>Rounds</b>: chains from different starts, each with its own random numbers. The first rounds, twice as many as the meeting took,
 *       are left out. In each round of all blocks the chances of each state, given what is not in the block, are averaged (Gelfand &amp;
 *       Smith 1990, J. Am. Stat. Assoc. 85:398, from memory).
 *   <li><b>End</b>: when each number has a standard error that is small enough and the chains agree on it ({@link Tally}), or when the work
 *       allowed is used up.
 * </ol>
 *
 * <p>Chains that agree may all have missed a part of what is possible that is seldom entered. In as many rounds as the meeting took, a chain
 * forgets where it was, so n times that is n looks, and what n looks missed has a chance of about 1/n (Laplace's rule of succession). That is
 * counted with the standard error, unless all is one block.
 */
final class Sampler {

    /** So many searches for a start at most. */
    private static final int MOST_SEARCHES = 64;

    /** So many starts at most. */
    private static final int MOST_STARTS = 24;

    /** Starts and meeting may take these shares of the work. */
    private static final double SHARE_TO_START = 0.25;

    private static final double SHARE_TO_MEET = 0.5;

    /** The rounds left out, in times of what the meeting took. */
    private static final int LEFT_OUT = 2;

    /** What may lie in a class that no chain came to may be this share of the standard error. */
    private static final double SHARE_UNSEEN = 0.25;

    /** Chances need messages downwards, too: so many times the work of drawing. */
    private static final int WITH_CHANCES = 2;

    /** With less work in a round, chains are not worth running beside one another. */
    private static final double WORTH_SHARING = 1e5;

    private final Sampling how;
    private final Runnable watch;
    private final SplittableRandom random;
    private final Narrowed graph;
    private final List<Block> blocks;

    /** The work of drawing all blocks once. */
    private final double round;

    /** Whether each state was seen, or is shown to be impossible. */
    private final boolean[][] settled;

    private final Tally tally;

    /** How many rounds it took chains from all starts to meet. */
    private int meeting;

    private double work;

    private Sampler(FactorGraph whole, Elimination left, Sampling how, long seed, Runnable watch) {
        this.watch = watch;
        this.how = how;
        this.random = new SplittableRandom(seed);
        this.graph = new Narrowed(whole, left);
        this.blocks = Blocks.of(graph, how.blockCells(), random.split(), watch);
        this.round = blocks.stream().mapToDouble(Block::entries).sum();
        this.tally = new Tally(graph, blocks, how.chains());
        this.settled = new boolean[graph.size()][];
        for (int v = 0; v < settled.length; v++) {
            settled[v] = new boolean[graph.size(v)];
        }
    }

    /**
     * Estimates.
     *
     * @param graph a graph whose variables are connected
     * @param how the limits
     * @param seed where the random numbers start
     * @param watch is called before each round, and may throw
     */
    static Sampled of(FactorGraph graph, Sampling how, long seed, Runnable watch) {
        Elimination left = Elimination.of(graph, (variable, factor) -> watch.run());
        if (left.emptied() >= 0) {
            return Sampled.without(Fit.CONTRADICTS, graph.size());
        }
        return new Sampler(graph, left, how, seed, watch).run(graph);
    }

    private Sampled run(FactorGraph whole) {
        List<int[]> starts = new ArrayList<>();
        boolean hasRoom = !blocks.isEmpty() || graph.open() == 0;
        Fit fit = hasRoom ? start(starts) : Fit.UNDECIDED;
        if (fit != Fit.FITS) {
            return Sampled.without(fit, graph.size());
        }
        meeting = meeting(starts);
        if (meeting < 0) {
            return Sampled.without(Fit.UNDECIDED, graph.size());
        }
        Chain[] chains = new Chain[how.chains()];
        SplittableRandom[] own = new SplittableRandom[chains.length];
        for (int c = 0; c < chains.length; c++) {
            chains[c] = new Chain(graph, blocks, starts.get(c));
            own[c] = random.split();
        }
        for (int r = 0; r < LEFT_OUT * meeting && isAllowed(chains.length * round, 1); r++) {
            beside(chains.length, c -> chains[c].draw(own[c]));
        }
        double[][][] found = new double[chains.length][][];
        boolean done = false;
        while (!done && isAllowed(WITH_CHANCES * chains.length * round, 1)) {
            beside(chains.length, c -> found[c] = chains[c].count(own[c]));
            tally.add(found);
            if (tally.isWhole()) {
                done = unseen() <= SHARE_UNSEEN * how.mostStandardError() && isDone();
                if (!done) {
                    tally.makeRoom();
                }
            }
        }
        boolean lost = false;
        for (Chain chain : chains) {
            lost |= chain.isLost();
        }
        return lost ? Sampled.without(Fit.UNDECIDED, graph.size()) : result(whole);
    }

    /** The chance of what all chains may have missed. */
    private double unseen() {
        boolean inOne = blocks.stream().allMatch(block -> block.size() == graph.open());
        return inOne ? 0 : meeting / ((double) how.chains() * tally.rounds());
    }

    private double error(int variable, int state) {
        double sampled = tally.error(variable, state);
        double missed = unseen();
        return Math.sqrt(sampled * sampled + missed * missed);
    }

    /** Counts some work, if it is allowed. */
    private boolean isAllowed(double more, double share) {
        watch.run();
        if (work + more > share * how.work()) {
            return false;
        }
        work += more;
        return true;
    }

    private interface Task {
        void run(int chain);
    }

    private void beside(int count, Task task) {
        IntStream all = IntStream.range(0, count);
        (round > WORTH_SHARING ? all.parallel() : all).forEach(task::run);
    }

    /** Looks for starts, at least one for each chain. */
    private Fit start(List<int[]> starts) {
        Starts search = new Starts(graph, random.split(), watch);
        boolean[][] givenUp = new boolean[graph.size()][];
        for (int v = 0; v < givenUp.length; v++) {
            givenUp[v] = new boolean[graph.size(v)];
        }
        double searched = 0;
        for (int s = 0; s < MOST_SEARCHES && starts.size() < MOST_STARTS; s++) {
            int[] target = target(givenUp);
            if (target.length == 0 && starts.size() >= how.chains()) {
                return Fit.FITS;
            }
            Starts.Found found = starts.isEmpty() || target.length == 0
                    ? search.any(settled)
                    : search.with(settled, target[0], target[1]);
            if (found.fit() == Fit.FITS) {
                starts.add(found.states());
                see(found.states());
            } else if (starts.isEmpty() || target.length == 0) {
                return found.fit();
            } else if (found.fit() == Fit.CONTRADICTS) {
                settled[target[0]][target[1]] = true;
            } else {
                givenUp[target[0]][target[1]] = true;
            }
            work += search.work() - searched;
            searched = search.work();
            if (!isAllowed(WITH_CHANCES * round, SHARE_TO_START)) {
                break;
            }
        }
        return starts.size() < how.chains() ? Fit.UNDECIDED : Fit.FITS;
    }

    /** A state that was not seen yet, any of them; nothing if there is none. */
    private int[] target(boolean[][] givenUp) {
        int[] target = {};
        int count = 0;
        for (int v = 0; v < settled.length; v++) {
            for (int s = 0; s < settled[v].length; s++) {
                if (!settled[v][s] && !givenUp[v][s] && random.nextInt(++count) == 0) {
                    target = new int[] {v, s};
                }
            }
        }
        return target;
    }

    /** Notes the states of a start, and those that one round from it could have come to. */
    private void see(int[] start) {
        for (int v = 0; v < start.length; v++) {
            settled[v][start[v]] = true;
        }
        see(new Chain(graph, blocks, start).count(random.split()));
    }

    private void see(double[][] chances) {
        for (int v = 0; v < chances.length; v++) {
            for (int s = 0; s < chances[v].length; s++) {
                settled[v][s] |= chances[v][s] > 0;
            }
        }
    }

    /** How many rounds it takes chains from all starts to meet; -1 if they do not. */
    private int meeting(List<int[]> starts) {
        List<Chain> chains = new ArrayList<>();
        starts.forEach(start -> chains.add(new Chain(graph, blocks, start)));
        int rounds = 0;
        while (chains.size() > 1) {
            if (!isAllowed(chains.size() * round, SHARE_TO_MEET)) {
                return -1;
            }
            long seed = random.nextLong();
            beside(chains.size(), c -> chains.get(c).draw(new SplittableRandom(seed)));
            for (int c = chains.size() - 1; c > 0; c--) {
                if (chains.get(c).isLost()) {
                    return -1;
                }
                for (int other = 0; other < c; other++) {
                    if (chains.get(c).isWith(chains.get(other))) {
                        chains.remove(c);
                        break;
                    }
                }
            }
            rounds++;
        }
        return rounds;
    }

    /** Whether nothing would be gained by more rounds. */
    private boolean isDone() {
        for (int v = 0; v < graph.size(); v++) {
            if (!isSure(v)) {
                return false;
            }
        }
        return true;
    }

    private boolean isSure(int variable) {
        for (int s = 0; s < graph.size(variable) && graph.size(variable) > 1; s++) {
            if (!(error(variable, s) <= how.mostStandardError()) || !tally.agrees(variable, s)) {
                return false;
            }
        }
        return true;
    }

    /** Whether each state of a variable was seen, or is shown to be impossible. */
    private boolean isSettled(int variable) {
        for (int s = 0; s < graph.size(variable); s++) {
            if (!settled[variable][s] && !(tally.mean(variable, s) > 0)) {
                return false;
            }
        }
        return true;
    }

    private Sampled result(FactorGraph whole) {
        double[][] chances = new double[graph.size()][];
        double[][] errors = new double[graph.size()][];
        boolean[] converged = new boolean[graph.size()];
        for (int v = 0; v < chances.length; v++) {
            chances[v] = new double[whole.states(v)];
            errors[v] = new double[whole.states(v)];
            converged[v] = isSure(v) && isSettled(v);
            boolean certain = graph.size(v) == 1;
            for (int s = 0; s < graph.size(v) && converged[v]; s++) {
                chances[v][graph.state(v, s)] = certain ? 1 : tally.mean(v, s);
                errors[v][graph.state(v, s)] = certain ? 0 : error(v, s);
            }
        }
        return new Sampled(Fit.FITS, chances, errors, converged);
    }
}
