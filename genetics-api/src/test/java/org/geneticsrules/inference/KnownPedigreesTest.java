package org.geneticsrules.inference;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Allele;
import org.geneticsrules.testing.KnownPedigrees;
import org.geneticsrules.testing.RecordedKindred;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Questions whose answers are published or can be calculated by hand; each names its source. */
class KnownPedigreesTest {

    static List<KnownPedigrees.Known> about_one_animal() {
        return KnownPedigrees.all().stream()
                .filter(known -> known.event().size() == 1)
                .toList();
    }

    @ParameterizedTest
    @MethodSource
    void about_one_animal(KnownPedigrees.Known known) {
        Map.Entry<String, Set<String>> event =
                known.event().entrySet().iterator().next();
        Conclusions found = Inference.of(
                        CompiledModel.of(known.model()), RecordedKindred.pedigree(known.model(), known.kindred()))
                .conclude(Set.of(known.locus()));
        double chance = found.at(event.getKey(), known.locus())
                .orElseThrow()
                .chance(pair -> event.getValue()
                        .contains(String.join(
                                "/", pair.alleles().stream().map(Allele::id).toList())));
        assertEquals(known.chance().toDouble(), chance, 1e-14, known.source());
    }
}
