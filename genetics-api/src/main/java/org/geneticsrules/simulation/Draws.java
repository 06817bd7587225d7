package org.geneticsrules.simulation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.LifeStage;

/**
 * All that chance may decide in the life of an animal, numbered: each case by chance and each residual of a threshold is a draw; a trait that
 * progresses is a draw at each count of its clock at which it is looked at, given that before.
 */
final class Draws {

    private final Map<String, OfCase> cases = new LinkedHashMap<>();
    private int count;

    /** The draws of one case, of which the first has the number {@code first}. */
    sealed interface OfCase {
        int first();

        List<String> outcomes();
    }

    /** One draw. */
    @SuppressWarnings("ArrayRecordComponent") // a table that is read, never compared
    record Once(int first, List<String> outcomes, double[] sums) implements OfCase {}

    /**
     * A draw for each count.
     *
     * @param first the number of the draw at the first count
     * @param chain how the trait progresses
     * @param outcomes its states
     * @param counts the counts, ascending
     * @param start the sums of the chances of the states at the first count
     * @param between for each further count, by state at the count before, the sums of the chances of the states
     */
    @SuppressWarnings("ArrayRecordComponent") // tables that are read, never compared
    record Path(
            int first,
            CaseState.Progression chain,
            List<String> outcomes,
            int[] counts,
            double[] start,
            double[][][] between)
            implements OfCase {

        /** The place of the count of a stage among all. */
        int place(LifeStage stage) {
            int count = stage.count(chain.clock()).orElseThrow();
            return IntStream.range(0, counts.length)
                    .filter(place -> counts[place] == count)
                    .findFirst()
                    .orElseThrow();
        }

        /** The sums of the chances of the states at a place, given the state before. */
        double[] sums(int place, int before) {
            return place == 0 ? start : between[place - 1][before];
        }
    }

    Draws(Model model, List<PlannedLook> looks) {
        for (TraitRule rule : model.rules().values()) {
            for (Case one : rule.allCases()) {
                String pointer = rule.pointer(one);
                if (one.gives() instanceof CaseState.Chance chance) {
                    once(pointer, chance.chances());
                } else if (one.gives() instanceof CaseState.Threshold sums) {
                    once(pointer, sums.residual().map(String::valueOf));
                } else if (one.gives() instanceof CaseState.Progression chain) {
                    path(pointer, chain, rule.states(), looks);
                }
            }
        }
    }

    private void once(String pointer, Distribution<String> chances) {
        List<String> outcomes = List.copyOf(chances.outcomes());
        cases.put(pointer, new Once(count++, outcomes, Chance.sums(row(outcomes, chances))));
    }

    private void path(String pointer, CaseState.Progression chain, List<String> states, List<PlannedLook> looks) {
        int[] counts = looks.stream()
                .flatMapToInt(look -> look.stage().count(chain.clock()).stream())
                .sorted()
                .distinct()
                .toArray();
        if (counts.length == 0) {
            return;
        }
        double[][] step = new double[states.size()][];
        for (int s = 0; s < step.length; s++) {
            step[s] = row(states, chain.after(states.get(s)));
        }
        double[][] start = times(new double[][] {row(states, chain.start())}, power(step, counts[0]));
        List<double[][]> between = new ArrayList<>();
        for (int c = 1; c < counts.length; c++) {
            between.add(sums(power(step, counts[c] - counts[c - 1])));
        }
        cases.put(
                pointer,
                new Path(count, chain, states, counts, Chance.sums(start[0]), between.toArray(double[][][]::new)));
        count += counts.length;
    }

    /** How many draws there are. */
    int count() {
        return count;
    }

    /** The draws of a case. */
    OfCase of(String pointer) {
        OfCase found = cases.get(pointer);
        if (found == null) {
            throw new IllegalArgumentException("chance decides nothing by " + pointer);
        }
        return found;
    }

    // ---- numbers ---------------------------------------------------------------------------------------------------

    private static double[] row(List<String> states, Distribution<String> chances) {
        return states.stream()
                .map(chances::probability)
                .mapToDouble(Probability::toDouble)
                .toArray();
    }

    private static double[][] sums(double[][] rows) {
        double[][] sums = new double[rows.length][];
        for (int i = 0; i < rows.length; i++) {
            sums[i] = Chance.sums(rows[i]);
        }
        return sums;
    }

    /** A power by repeated squaring. */
    private static double[][] power(double[][] matrix, int exponent) {
        double[][] result = new double[matrix.length][matrix.length];
        for (int i = 0; i < matrix.length; i++) {
            result[i][i] = 1;
        }
        double[][] square = matrix;
        for (int left = exponent; left > 0; left >>= 1) {
            result = (left & 1) == 1 ? times(result, square) : result;
            square = left > 1 ? times(square, square) : square;
        }
        return result;
    }

    private static double[][] times(double[][] one, double[][] other) {
        double[][] product = new double[one.length][other[0].length];
        for (int i = 0; i < one.length; i++) {
            for (int k = 0; k < other.length; k++) {
                for (int j = 0; j < product[i].length; j++) {
                    product[i][j] += one[i][k] * other[k][j];
                }
            }
        }
        return product;
    }
}
