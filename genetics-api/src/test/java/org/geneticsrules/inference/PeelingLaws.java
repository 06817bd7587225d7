package org.geneticsrules.inference;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.Set;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomPedigrees;
import org.geneticsrules.testing.RandomPedigrees.RandomPedigree;
import org.geneticsrules.testing.RecordedKindred;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Where relations form no loop, messages from family to family say what the tree of cliques says. */
@Once
class PeelingLaws {

    @Provide
    Arbitrary<RandomPedigree> pedigrees() {
        return RandomPedigrees.pedigrees();
    }

    @Property(tries = 100)
    void peeling_agrees_with_the_tree_of_cliques(@ForAll("pedigrees") RandomPedigree random) {
        peeled(random);
    }

    /** Of the families of one random pedigree in four units are peeled one by one, so some of each way were looked for. */
    @ParameterizedTest
    @CsvSource({"UNIT_BY_UNIT, 17", "UNIT_BY_UNIT, 25", "TOGETHER, 3", "TOGETHER, 7", "GRAPH, 11", "GRAPH, 18"})
    void families_peeled_each_way_agree_with_the_tree_of_cliques(Groups.Way way, long seed) {
        assertTrue(peeled(RandomPedigrees.pedigree(seed)).contains(way));
    }

    /** Compares, and tells which ways were gone for relatives. */
    private static Set<Groups.Way> peeled(RandomPedigree random) {
        Set<Groups.Way> met = EnumSet.noneOf(Groups.Way.class);
        Groups question = Inference.of(
                        CompiledModel.of(random.model()), RecordedKindred.pedigree(random.model(), random.kindred()))
                .with(RecordedKindred.confusions(random.kindred()))
                .question(random.model().loci().keySet());
        Families families = Families.of(question.members(), question.kinds());
        for (int g = 0; g < question.count(); g++) {
            agree(question, g, families, Groups.Way.UNIT_BY_UNIT, met);
        }
        Groups asOne = question.asOne();
        agree(asOne, asOne.count() - 1, families, Groups.Way.TOGETHER, met);
        return met;
    }

    /** What a part would cost is known before it is begun: exactly what is then laid out, and whatever fits is not refused. */
    @Property(tries = 200)
    void the_cost_is_known_beforehand(@ForAll("pedigrees") RandomPedigree random) {
        cost(random);
    }

    /** One random pedigree in twenty costs much, so these were looked for. */
    @ParameterizedTest
    @ValueSource(longs = {27, 62, 88, 95})
    void large_costs_are_known_beforehand(long seed) {
        assertTrue(cost(RandomPedigrees.pedigree(seed)) > 1000);
    }

    /** Compares what was foreseen with what is found, and tells what the costliest part costs. */
    private static double cost(RandomPedigree random) {
        double largest = 0;
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
            largest = Math.max(largest, most);
            for (int m = 0; m < question.records().size(); m++) {
                for (int u = 0; u < question.layout(g).heredity().size(); u++) {
                    assertNotEquals(Standing.TOO_LARGE, found.standing(m, u));
                }
            }
        }
        return largest;
    }

    private static void agree(Groups question, int group, Families families, Groups.Way least, Set<Groups.Way> met) {
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
            if (sizes[families.part[m]] > 1) {
                met.add(ways[families.part[m]]);
            }
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
