package org.geneticsrules.answer;

import com.google.common.collect.ImmutableSet;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.Set;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Diagram;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.trait.Phenotype;

/** The looks that some genotypes may have. */
final class PossibleLooks {

    private PossibleLooks() {}

    /** Looks in some traits, in the declared order of states. */
    static Set<Phenotype> of(CompiledModel compiled, GenotypeSet genotypes, Collection<String> traits) {
        Set<Phenotype> found = new LinkedHashSet<>();
        Diagram<Phenotype> diagram = compiled.diagram(traits);
        diagram.paths((outcome, box) -> {
            Phenotype phenotype = diagram.outcomes().get(outcome);
            if (!found.contains(phenotype) && !genotypes.showing(box).isEmpty()) {
                found.add(phenotype);
            }
            return true;
        });
        return diagram.outcomes().stream().filter(found::contains).collect(ImmutableSet.toImmutableSet());
    }
}
