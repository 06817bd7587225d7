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
        CompiledModel compiled = CompiledModel.of(random.model());
        Inference inference = Inference.of(compiled, RecordedKindred.pedigree(random.model(), random.kindred()));
        KindredGraph kindred = inference.graph(
                random.model().loci().keySet(), new Records(compiled, RecordedKindred.confusions(random.kindred())));
        for (Components.Part part : Components.of(kindred.graph())) {
            Optional<Peeling> peeling = Peeling.of(part.graph(), Peeling.tables());
            Elimination elimination = Elimination.of(part.graph());
            Statistics.collect(
                    peeling.isPresent()
                            ? part.variables().length > 3 ? "families" : "alone or one pair"
                            : "not peeled");
            if (peeling.isPresent() && elimination.emptied() < 0) {
                Posteriors expected =
                        CliqueTree.of(part.graph(), elimination, 1 << 24).propagate();
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
        Statistics.coverage(coverage -> {
            coverage.check("families").percentage(share -> share > 5);
            coverage.check("not peeled").percentage(share -> share > 5);
        });
    }
}
