package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableSet;
import com.google.common.collect.Sets;
import java.util.LinkedHashSet;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.pedigree.Individual;

/**
 * The loci of which a look tells something: those that the trait reads, and where chance decides about it that decided about earlier looks
 * at the animal too, those that these read. What is carried there and those looks are all that the look depends on.
 */
final class LookLoci {

    private final CompiledModel compiled;
    private final Model model;
    private final Set<String> seen;

    LookLoci(CompiledModel compiled, Individual animal) {
        this.compiled = compiled;
        this.model = compiled.model();
        this.seen = animal.observations().stream()
                .flatMap(one -> one.traits().stream())
                .filter(model.rules()::containsKey)
                .collect(Collectors.toCollection(LinkedHashSet::new));
    }

    /** The loci of a trait, in model order. */
    Set<String> of(String trait) {
        return ImmutableSet.copyOf(compiled.lociRead(sharing(trait)));
    }

    /** A trait, and those seen earlier about which the same chance decided. */
    Set<String> sharing(String trait) {
        Set<String> traits = new LinkedHashSet<>(Set.of(trait));
        Set<String> chances = new LinkedHashSet<>(byChance(trait));
        boolean grown = true;
        while (grown) { // a look that shares one draw with this may share another with a third
            grown = false;
            for (String other : seen) {
                Set<String> there = byChance(other);
                if (!traits.contains(other)
                        && !Sets.intersection(there, chances).isEmpty()) {
                    traits.add(other);
                    chances.addAll(there);
                    grown = true;
                }
            }
        }
        return traits;
    }

    /** The traits about which chance decides, among those that what is shown of one depends on. */
    private Set<String> byChance(String trait) {
        Set<String> behind = new LinkedHashSet<>();
        own(trait, behind);
        for (Mask mask : model.masks().values()) {
            if (mask.covers().containsKey(trait)) {
                mask.when().names().forEach(name -> own(name, behind));
            }
        }
        behind.removeIf(
                name -> rule(name).allCases().stream().allMatch(one -> one.gives() instanceof CaseState.Certain));
        return behind;
    }

    private void own(String name, Set<String> behind) {
        if (model.rules().containsKey(name) && behind.add(name)) {
            rule(name).allCases().forEach(one -> one.when().names().forEach(inner -> own(inner, behind)));
        }
    }

    private TraitRule rule(String name) {
        return Objects.requireNonNull(model.rules().get(name), name);
    }
}
