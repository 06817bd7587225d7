package org.geneticsrules.explanation;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Expressed;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/**
 * Whether an animal could look the same with another pair at one locus.
 *
 * <p>The looks that chance may give are as many as the product of its draws, so they are listed last: a trait that by itself cannot look
 * so answers no, and the draws of the animal as it is mostly answer yes.
 */
final class Exchange {

    private final CompiledModel compiled;
    private final Genotype genotype;
    private final Sex sex;
    private final View view;
    private final Map<AllelePair, Map<String, Set<Phenotype>>> byTrait = new LinkedHashMap<>();
    private final Map<AllelePair, Set<Phenotype>> whole = new LinkedHashMap<>();

    Exchange(CompiledModel compiled, Genotype genotype, Sex sex, View view) {
        this.compiled = compiled;
        this.genotype = genotype;
        this.sex = sex;
        this.view = view;
    }

    /** Whether the animal with that pair instead of its own may show a look, which it has now by known draws. */
    boolean mayShow(AllelePair pair, Phenotype look, Map<String, String> draws) {
        for (String trait : view.traits()) {
            Set<Phenotype> alone = byTrait.computeIfAbsent(pair, key -> new LinkedHashMap<>())
                    .computeIfAbsent(trait, key -> looks(pair, List.of(trait), Map.of()));
            if (!alone.contains(look.restrictedTo(Set.of(trait)))) {
                return false;
            }
        }
        return looks(pair, view.traits(), draws).contains(look)
                || whole.computeIfAbsent(pair, key -> looks(pair, view.traits(), Map.of()))
                        .contains(look);
    }

    private Set<Phenotype> looks(AllelePair pair, List<String> traits, Map<String, String> draws) {
        Genotype other = genotype.with(pair);
        return compiled.ways(other, sex, view.stage(), draws, traits)
                .map(Expressed::phenotype)
                .outcomes();
    }
}
