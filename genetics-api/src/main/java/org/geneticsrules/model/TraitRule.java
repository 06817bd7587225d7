package org.geneticsrules.model;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.problem.Pointer;

/**
 * How a trait's own state follows from expressions of loci and own states of other traits.
 *
 * <p>At most one case holds for any genotype; the model is refused otherwise. Where none holds and there is no {@code otherwise},
 * the model makes no claim about the trait.
 *
 * @param trait id of the trait
 * @param visible false for an inner trait, which only other rules read
 * @param states the states it may have, in declared order
 * @param cases the disjoint cases, in document order
 * @param otherwise the state of all genotypes left over, if they have one
 * @param evidence id of the evidence of cases that name none of their own
 */
public record TraitRule(
        String trait,
        boolean visible,
        List<String> states,
        List<Case> cases,
        Optional<Case> otherwise,
        Optional<String> evidence) {

    /**
     * Copies the lists.
     *
     * @param trait id of the trait
     * @param visible whether it can be seen
     * @param states its states
     * @param cases its disjoint cases
     * @param otherwise the case left over
     * @param evidence id of the default evidence
     */
    public TraitRule {
        states = ImmutableList.copyOf(states);
        cases = ImmutableList.copyOf(cases);
    }

    /**
     * Returns the cases and the one left over.
     *
     * @return all cases, {@code otherwise} last
     */
    public List<Case> allCases() {
        ImmutableList.Builder<Case> all = ImmutableList.builder();
        all.addAll(cases);
        otherwise.ifPresent(all::add);
        return all.build();
    }

    /**
     * Returns the address of a case in the model's document.
     *
     * @param rule a case of this rule or its {@code otherwise}
     * @return a JSON Pointer
     */
    public String pointer(Case rule) {
        return otherwise.isPresent() && otherwise.get().equals(rule)
                ? Pointer.of("traits", trait, "otherwise")
                : Pointer.of("traits", trait, "cases", rule.id());
    }
}
