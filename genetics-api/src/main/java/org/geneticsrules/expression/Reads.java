package org.geneticsrules.expression;

import com.google.common.collect.ImmutableSet;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.Set;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.trait.Condition;

/** Which loci a question about some traits depends on: through cases, traits that cases read, and masks. */
final class Reads {

    private final Model model;
    private final Set<String> loci = new LinkedHashSet<>();
    private final Set<String> traits = new LinkedHashSet<>();

    private Reads(Model model) {
        this.model = model;
    }

    /** Loci read for the shown states of traits, in model order. */
    static ImmutableSet<String> loci(Model model, Collection<String> asked) {
        Reads reads = new Reads(model);
        for (String trait : asked) {
            reads.trait(trait);
            for (Mask mask : model.masks().values()) {
                if (mask.covers().containsKey(trait)) {
                    reads.condition(mask.when());
                }
            }
        }
        return model.loci().keySet().stream().filter(reads.loci::contains).collect(ImmutableSet.toImmutableSet());
    }

    private void trait(String trait) {
        TraitRule rule = model.rules().get(trait);
        if (rule != null && traits.add(trait)) {
            for (Case one : rule.cases()) {
                condition(one.when());
            }
        }
    }

    private void condition(Condition condition) {
        for (String name : condition.names()) {
            if (model.loci().containsKey(name)) {
                loci.add(name);
            } else {
                trait(name);
            }
        }
    }
}
