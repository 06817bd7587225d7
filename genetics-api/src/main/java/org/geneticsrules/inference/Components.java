package org.geneticsrules.inference;

import java.util.ArrayList;
import java.util.List;

/** The parts of a factor graph that no factor connects: what is known of one says nothing of another. */
final class Components {

    /**
     * One part.
     *
     * @param graph its variables and factors
     * @param variables for each variable of it, the number in the whole graph
     */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    record Part(FactorGraph graph, int[] variables) {}

    private Components() {}

    static List<Part> of(FactorGraph whole) {
        int[] root = new int[whole.size()];
        for (int v = 0; v < root.length; v++) {
            root[v] = v;
        }
        for (Factor factor : whole.factors()) {
            for (int variable : factor.variables()) {
                root[find(root, variable)] = find(root, factor.variables()[0]);
            }
        }
        int[] part = new int[root.length];
        int[] place = new int[root.length];
        List<FactorGraph> graphs = new ArrayList<>();
        List<List<Integer>> members = new ArrayList<>();
        for (int v = 0; v < root.length; v++) {
            if (find(root, v) == v) {
                part[v] = graphs.size();
                graphs.add(new FactorGraph());
                members.add(new ArrayList<>());
            }
        }
        for (int v = 0; v < root.length; v++) {
            part[v] = part[find(root, v)];
            place[v] = graphs.get(part[v]).variable(whole.states(v));
            members.get(part[v]).add(v);
        }
        for (Factor factor : whole.factors()) {
            int[] variables = factor.variables().clone();
            for (int i = 0; i < variables.length; i++) {
                variables[i] = place[variables[i]];
            }
            graphs.get(part[factor.variables()[0]]).add(new Factor(variables, factor.table()));
        }
        List<Part> parts = new ArrayList<>();
        for (int p = 0; p < graphs.size(); p++) {
            parts.add(new Part(
                    graphs.get(p),
                    members.get(p).stream().mapToInt(Integer::intValue).toArray()));
        }
        return parts;
    }

    private static int find(int[] root, int variable) {
        int at = variable;
        while (root[at] != at) {
            root[at] = root[root[at]];
            at = root[at];
        }
        return at;
    }
}
