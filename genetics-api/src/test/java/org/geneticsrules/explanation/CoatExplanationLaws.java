package org.geneticsrules.explanation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.List;
import java.util.Map;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.testing.BruteForce;
import org.geneticsrules.testing.DocumentMaps;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomModels;
import org.geneticsrules.trait.Sex;

/** What cannot be read off an animal is what substitution leaves unchanged. */
@Once
class CoatExplanationLaws {

    @Provide
    Arbitrary<Model> models() {
        return RandomModels.models();
    }

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 300)
    void hidden_loci_are_those_found_by_substitution(@ForAll("models") Model model, @ForAll("seeds") long seed) {
        hiddenBySubstitution(model, seed);
    }

    static void hiddenBySubstitution(Model model, long seed) {
        CompiledModel compiled = CompiledModel.of(model);
        Genotype genotype = RandomModels.genotype(model, seed);
        List<String> traits = List.copyOf(model.visibleTraits());
        CoatExplanation explanation = CoatExplanation.of(compiled, genotype, Sex.FEMALE, View.of(traits))
                .outcomes()
                .iterator()
                .next();
        Set<String> read = compiled.lociRead(traits);
        Map<String, Object> document = DocumentMaps.of(model);
        assertEquals(
                BruteForce.hiddenLoci(document, RandomModels.plain(genotype), traits).stream()
                        .filter(read::contains)
                        .toList(),
                explanation.hidden().stream().map(Hidden::locus).toList(),
                () -> model + " " + genotype);
        explanation.hidden().forEach(hidden -> assertFalse(hidden.causes().isEmpty(), () -> model + " " + hidden));
    }
}
