package org.geneticsrules.answer;

import com.google.common.collect.ImmutableSet;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.Set;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.trait.Phenotype;

/** The looks that some genotypes may have. */
final class PossibleLooks {

    private PossibleLooks() {}

    /** Looks in some traits, in the declared order of states. */
    static Set<Phenotype> of(CompiledModel compiled, GenotypeSet genotypes, Collection<String> traits) {
        Set<Phenotype> found = new LinkedHashSet<>();
        compiled.diagram(traits).paths((phenotype, box) -> {
            if (!found.contains(phenotype) && !genotypes.showing(box).isEmpty()) {
                found.add(phenotype);
            }
            return true;
        });
        return compiled.diagram(traits).phenotypes().stream()
                .filter(found::contains)
                .collect(ImmutableSet.toImmutableSet());
    }
}
