package org.geneticsrules.inference;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

/**
 * Foresees what it costs to conclude, part by part of a pedigree, as {@link Settled} would go about it. Factors are made and states struck
 * out as there; only the tables of cliques are not, which are what can grow beyond all room.
 */
final class Costs {

    private Costs() {}

    static List<Cost> of(Groups question, Effort effort) {
        Members members = question.members();
        Families families = Families.of(members, question.kinds());
        double[] cells = new double[families.parts()];
        for (int g = 0; g < question.count(); g++) {
            effort.watch().run();
            Layout layout = question.layout(g);
            IntPredicate peeled = Peeled.foreseen(question, g, families, effort.cells());
            int[] who = IntStream.range(0, families.part.length)
                    .filter(peeled.negate())
                    .toArray();
            FactorGraph graph = question.graph(g, layout, who);
            Whose whose = new Whose(layout, graph.size());
            for (Components.Part part : Components.of(graph)) {
                effort.watch().run();
                int[] somebody = IntStream.of(part.variables())
                        .map(whose::member)
                        .filter(member -> member >= 0)
                        .limit(1)
                        .toArray();
                for (int member : somebody) {
                    int at = families.part[member];
                    cells[at] = Math.max(cells[at], cells(part.graph(), effort));
                }
            }
        }
        List<List<String>> animals = new ArrayList<>();
        for (int p = 0; p < cells.length; p++) {
            animals.add(new ArrayList<>());
        }
        for (int m = 0; m < families.part.length; m++) {
            List<String> here = animals.get(families.part[m]);
            members.all().get(m).recorded().ifPresent(one -> here.add(one.id()));
        }
        List<Cost> costs = new ArrayList<>();
        for (int p = 0; p < cells.length; p++) {
            if (!animals.get(p).isEmpty()) {
                costs.add(new Cost(animals.get(p), cells[p], cells[p] <= effort.cells()));
            }
        }
        return costs;
    }

    private static double cells(FactorGraph graph, Effort effort) {
        Elimination elimination =
                Elimination.of(graph, (variable, factor) -> effort.watch().run());
        return elimination.emptied() >= 0
                ? 0
                : CliqueTree.plan(graph, elimination, effort.cells(), effort.watch())
                        .cells();
    }
}
