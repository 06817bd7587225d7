package org.geneticsrules.expression;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.trait.Phenotype;

/**
 * One animal expressed: what each locus shows as, how each trait came about, and the phenotype that is seen.
 *
 * @param expressions expression by locus, for the loci that were read
 * @param traits the trace of each trait that was asked for or read, by trait
 * @param activeMasks the masks found active among those that cover a trait asked for, in declared order
 * @param phenotype the shown states of the traits asked for; a trait for which the model makes no claim is absent
 */
public record Expressed(
        Map<String, String> expressions,
        Map<String, TraitTrace> traits,
        List<String> activeMasks,
        Phenotype phenotype) {

    /**
     * Copies the collections.
     *
     * @param expressions expression by locus
     * @param traits trace by trait
     * @param activeMasks the active masks
     * @param phenotype what is seen
     */
    public Expressed {
        expressions = ImmutableMap.copyOf(expressions);
        traits = ImmutableMap.copyOf(traits);
        activeMasks = ImmutableList.copyOf(activeMasks);
    }
}
