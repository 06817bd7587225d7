package org.geneticsrules.expression;

import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import com.google.common.collect.Sets;
import java.util.List;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.BoxSpace;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Reading;
import org.geneticsrules.trait.Sex;

/** The genotypes of animals that can be recorded as one was. */
final class AllowedGenotypes {

    private AllowedGenotypes() {}

    static GenotypeSet of(CompiledModel compiled, List<Reading> readings) {
        Model model = compiled.model();
        List<Reading> told = readings.stream()
                .map(one -> new Reading(
                        one.stage(),
                        one.looks().stream()
                                .map(look -> withoutSexThatNothingTells(model, look))
                                .collect(ImmutableSet.toImmutableSet())))
                .toList();
        ImmutableMap.Builder<String, List<String>> variables = ImmutableMap.builder();
        if (model.distinguishesSex()) {
            variables.put(Sex.VARIABLE, Sex.words());
        }
        model.loci().forEach((name, locus) -> variables.put(name, locus.expressions()));
        List<Condition> boxes = compiled.evidence(told, Confusions.none()).stream()
                .map(WeightedBox::box)
                .toList();
        return GenotypeSet.showing(model, BoxSpace.of(variables.buildOrThrow()).ofDisjoint(boxes));
    }

    /** Where the model does not distinguish sex, a genotype says nothing of the sex, nor the other way round. */
    private static Phenotype withoutSexThatNothingTells(Model model, Phenotype look) {
        return model.distinguishesSex()
                ? look
                : look.restrictedTo(Sets.difference(look.traits(), ImmutableSet.of(Sex.VARIABLE)));
    }
}
