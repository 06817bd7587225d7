package org.geneticsrules.inference;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.testing.RandomPedigrees;
import org.geneticsrules.testing.RandomPedigrees.RandomPedigree;
import org.geneticsrules.testing.RecordedKindred;

/** Where relations form no loop, messages from family to family say what the tree of cliques says. */
class PeelingLaws {

    @Provide
    Arbitrary<RandomPedigree> pedigrees() {
        return RandomPedigrees.pedigrees();
    }

    @Property(tries = 100)
    void peeling_agrees_with_the_tree_of_cliques(@ForAll("pedigrees") RandomPedigree random) {
        Groups question = Inference.of(
                        CompiledModel.of(random.model()), RecordedKindred.pedigree(random.model(), random.kindred()))
                .with(RecordedKindred.confusions(random.kindred()))
                .question(random.model().loci().keySet());
        Families families = Families.of(question.members(), question.kinds());
        for (int g = 0; g < question.count(); g++) {
            agree(question, g, families, Groups.Way.UNIT_BY_UNIT);
        }
        Groups asOne = question.asOne();
        agree(asOne, asOne.count() - 1, families, Groups.Way.TOGETHER);
        Statistics.coverage(coverage -> {
            coverage.check("UNIT_BY_UNIT, families").percentage(share -> share > 5);
            coverage.check("TOGETHER, families").percentage(share -> share > 3);
            coverage.check("GRAPH, families").percentage(share -> share > 5);
        });
    }

    /** What a part would cost is known before it is begun: exactly what is then laid out, and whatever fits is not refused. */
    @Property(tries = 200)
    void the_cost_is_known_beforehand(@ForAll("pedigrees") RandomPedigree random) {
        Groups question = Inference.of(
                        CompiledModel.of(random.model()), RecordedKindred.pedigree(random.model(), random.kindred()))
                .with(RecordedKindred.confusions(random.kindred()))
                .question(random.model().loci().keySet());
        Families families = Families.of(question.members(), question.kinds());
        for (int g = 0; g < question.count(); g++) {
            double most = 0;
            FactorGraph graph = question.graph(g, question.layout(g));
            for (Components.Part part : Components.of(graph)) {
                Elimination elimination = Elimination.of(part.graph());
                if (elimination.emptied() < 0) {
                    CliqueTree.Plan plan =
                            CliqueTree.plan(part.graph(), elimination, Double.POSITIVE_INFINITY, () -> {});
                    assertEquals(plan.cells(), plan.tree().cells());
                    assertEquals(
                            plan.cells(),
                            CliqueTree.plan(part.graph(), elimination, plan.cells(), () -> {})
                                    .cells());
                    most = Math.max(most, plan.cells());
                }
            }
            Settled found = new Settled(question, g, families, Effort.within(most));
            Statistics.collect(most > 1000 ? "over 1,000 cells" : most > 100 ? "over 100 cells" : "few cells");
            for (int m = 0; m < question.records().size(); m++) {
                for (int u = 0; u < question.layout(g).heredity().size(); u++) {
                    assertNotEquals(Standing.TOO_LARGE, found.standing(m, u));
                }
            }
        }
        Statistics.coverage(coverage -> {
            coverage.check("over 1,000 cells").percentage(share -> share > 1.5);
            coverage.check("over 100 cells").percentage(share -> share > 5);
        });
    }

    private static void agree(Groups question, int group, Families families, Groups.Way least) {
        Layout layout = question.layout(group);
        Groups.Way[] ways = question.ways(group, layout, question.alone(group, layout), families, least);
        FactorGraph graph = question.graph(group, layout);
        Posteriors expected = byCliques(graph);
        Settled found = new Settled(question, group, families, Effort.usual(), least);
        assertEquals(expected.isPossible(), !found.isContradicted());
        if (!expected.isPossible()) {
            return;
        }
        assertEquals(expected.logLikelihood(), found.logLikelihood(), 1e-11);
        int[] sizes = new int[families.parts()];
        for (int part : families.part) {
            sizes[part]++;
        }
        for (int m = 0; m < question.records().size(); m++) {
            boolean related = sizes[families.part[m]] > 1;
            Statistics.collect(ways[families.part[m]] + (related ? ", families" : ", alone"));
            for (int u = 0; u < layout.heredity().size(); u++) {
                assertArrayEquals(expected.chances()[layout.carried(m, u)], found.chances(m, u), 1e-12);
            }
        }
    }

    private static Posteriors byCliques(FactorGraph graph) {
        double[][] chances = new double[graph.size()][];
        double log = 0;
        for (Components.Part part : Components.of(graph)) {
            Elimination elimination = Elimination.of(part.graph());
            Posteriors here = elimination.emptied() >= 0
                    ? Posteriors.impossible(part.graph().size())
                    : CliqueTree.plan(part.graph(), elimination, 1 << 24, () -> {})
                            .tree()
                            .propagate(() -> {})
                            .orElseThrow();
            log += here.logLikelihood();
            for (int v = 0; v < part.variables().length; v++) {
                chances[part.variables()[v]] = here.chances()[v];
            }
        }
        return new Posteriors(chances, log);
    }
}
