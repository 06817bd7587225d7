package org.geneticsrules.expression;

import com.google.common.collect.ImmutableList;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.TooLargeException;

/**
 * The ways in which a progressing trait may run through its states, as far as they show at some counts of its clock.
 *
 * <p>Steps between two counts are taken at once, by a power of the matrix of steps over one common denominator.
 */
final class Paths {

    private static final int MOST = 10_000;

    private final ImmutableList<Integer> counts;
    private final List<int[]> states = new ArrayList<>();
    private final Distribution<String> chances;

    /**
     * Finds the paths.
     *
     * @param chain the chances of start and steps
     * @param named the states in declared order
     * @param counts counts of the clock at which the animal is looked at
     */
    Paths(CaseState.Progression chain, List<String> named, Collection<Integer> counts) {
        this.counts = ImmutableList.copyOf(new TreeSet<>(counts));
        BigInteger[] start = whole(named, chain.start(), denominator(List.of(chain.start())));
        List<Distribution<String>> rows = named.stream().map(chain::after).toList();
        BigInteger denominator = denominator(rows);
        BigInteger[][] step = new BigInteger[named.size()][];
        Arrays.setAll(step, state -> whole(named, rows.get(state), denominator));
        List<BigInteger[][]> between = new ArrayList<>();
        int before = 0;
        for (int count : this.counts) {
            between.add(power(step, count - before));
            before = count;
        }
        Map<String, BigInteger> weights = new LinkedHashMap<>();
        follow(named, Matrices.times(start, between.get(0)), between, new int[0], weights);
        this.chances = Distribution.ofWeights(weights);
    }

    /** The chance of each path, its states joined; in declared order of the states. */
    Distribution<String> chances() {
        return chances;
    }

    /** Position of the state at a count, on each path. */
    int[] at(int count) {
        int position = counts.indexOf(count);
        return states.stream().mapToInt(path -> path[position]).toArray();
    }

    private void follow(
            List<String> named,
            BigInteger[] next,
            List<BigInteger[][]> between,
            int[] path,
            Map<String, BigInteger> weights) {
        int done = path.length + 1;
        for (int state = 0; state < next.length; state++) {
            if (next[state].signum() > 0) {
                int[] longer = Arrays.copyOf(path, done);
                longer[path.length] = state;
                if (done < between.size()) {
                    follow(named, Matrices.times(between.get(done)[state], next[state]), between, longer, weights);
                } else {
                    add(named, longer, next[state], weights);
                }
            }
        }
    }

    private void add(List<String> named, int[] path, BigInteger weight, Map<String, BigInteger> weights) {
        if (states.size() == MOST) {
            throw new TooLargeException(
                    "paths of a progressing trait", MOST + 1.0, MOST, "look at it at fewer stages.");
        }
        String name =
                String.join(" then ", Arrays.stream(path).mapToObj(named::get).toList());
        while (weights.containsKey(name)) {
            name += "'"; // states whose own names contain the joining word
        }
        weights.put(name, weight);
        states.add(path);
    }

    private static BigInteger denominator(List<Distribution<String>> rows) {
        BigInteger common = BigInteger.ONE;
        for (Distribution<String> row : rows) {
            for (Probability chance : row.asMap().values()) {
                BigInteger other = chance.denominator();
                common = common.divide(common.gcd(other)).multiply(other);
            }
        }
        return common;
    }

    private static BigInteger[] whole(List<String> named, Distribution<String> row, BigInteger denominator) {
        BigInteger[] weights = new BigInteger[named.size()];
        Arrays.setAll(weights, state -> {
            Probability chance = row.probability(named.get(state));
            return denominator.divide(chance.denominator()).multiply(chance.numerator());
        });
        return weights;
    }

    /** A power by repeated squaring. */
    private static BigInteger[][] power(BigInteger[][] matrix, int exponent) {
        BigInteger[][] result = new BigInteger[matrix.length][matrix.length];
        for (int i = 0; i < matrix.length; i++) {
            Arrays.fill(result[i], BigInteger.ZERO);
            result[i][i] = BigInteger.ONE;
        }
        BigInteger[][] square = matrix;
        for (int left = exponent; left > 0; left >>= 1) {
            if ((left & 1) == 1) {
                result = Matrices.times(result, square);
            }
            square = left > 1 ? Matrices.times(square, square) : square;
        }
        return result;
    }
}
