package org.geneticsrules.inference;

import java.util.ArrayList;
import java.util.List;

/** Variables with a number of states each, and the factors whose product is the weight of a combination of states. */
final class FactorGraph {

    private final List<Integer> sizes = new ArrayList<>();
    private final List<Factor> factors = new ArrayList<>();

    /** Adds a variable and returns its number. */
    int variable(int states) {
        sizes.add(states);
        return sizes.size() - 1;
    }

    void add(Factor factor) {
        int length = 1;
        for (int variable : factor.variables()) {
            length *= sizes.get(variable);
        }
        if (length != factor.table().length) {
            throw new IllegalArgumentException(
                    "a table of " + factor.table().length + " weights for " + length + " combinations");
        }
        factors.add(factor);
    }

    void add(double[] table, int... variables) {
        add(Factor.of(table, variables));
    }

    int size() {
        return sizes.size();
    }

    int states(int variable) {
        return sizes.get(variable);
    }

    int[] sizes() {
        return sizes.stream().mapToInt(Integer::intValue).toArray();
    }

    List<Factor> factors() {
        return factors;
    }
}
