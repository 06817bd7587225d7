package org.geneticsrules.inference;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;
import org.geneticsrules.expression.CompiledModel;
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
        for (int g = 0; g < question.count(); g++) {
            agree(question.graph(g, question.layout(g)));
        }
        Statistics.coverage(coverage -> {
            coverage.check("families").percentage(share -> share > 5);
            coverage.check("not peeled").percentage(share -> share > 5);
        });
    }

    private static void agree(FactorGraph graph) {
        for (Components.Part part : Components.of(graph)) {
            Optional<Peeling> peeling = Peeling.of(part.graph(), Peeling.tables());
            Elimination elimination = Elimination.of(part.graph());
            Statistics.collect(
                    peeling.isPresent()
                            ? part.variables().length > 3 ? "families" : "alone or one pair"
                            : "not peeled");
            if (peeling.isPresent() && elimination.emptied() < 0) {
                Posteriors expected = CliqueTree.plan(part.graph(), elimination, 1 << 24)
                        .tree()
                        .propagate();
                Posteriors found = peeling.get().propagate();
                assertEquals(expected.isPossible(), found.isPossible());
                if (expected.isPossible()) {
                    assertEquals(expected.logLikelihood(), found.logLikelihood(), 1e-12);
                    for (int v = 0; v < part.variables().length; v++) {
                        assertArrayEquals(expected.chances()[v], found.chances()[v], 1e-12);
                    }
                }
            }
        }
    }
}
