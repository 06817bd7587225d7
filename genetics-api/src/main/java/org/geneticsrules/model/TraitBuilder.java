package org.geneticsrules.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.trait.Condition;

/**
 * Describes how a trait is inherited while a {@link ModelBuilder} is being filled. What is stated here is checked when the model is
 * built.
 *
 * <p>Not thread-safe.
 */
public final class TraitBuilder {

    final String trait;
    Optional<List<String>> innerStates = Optional.empty();
    final List<Case> cases = new ArrayList<>();
    Optional<Case> otherwise = Optional.empty();
    Optional<String> evidence = Optional.empty();

    TraitBuilder(String trait) {
        this.trait = trait;
    }

    /**
     * Makes this an inner trait, which no catalogue lists and nobody sees, but other rules read.
     *
     * @param states the states it may have
     * @return this
     */
    public TraitBuilder inner(String... states) {
        innerStates = Optional.of(List.of(states));
        return this;
    }

    /**
     * Adds a case named after its state.
     *
     * @param when the condition
     * @param state the own state it gives
     * @return this
     */
    public TraitBuilder when(Condition when, String state) {
        return when(new Case(state, when, state, Optional.empty()));
    }

    /**
     * Adds a case that gives a chance of states.
     *
     * @param name its name within the trait
     * @param condition the condition
     * @param gives the states it may give
     * @return this
     */
    public TraitBuilder when(String name, Condition condition, CaseState gives) {
        return when(new Case(name, condition, gives, Optional.empty()));
    }

    /**
     * Adds a case.
     *
     * @param rule the case, with an id that no other case of the trait has
     * @return this
     */
    public TraitBuilder when(Case rule) {
        cases.add(rule);
        return this;
    }

    /**
     * States the state of all genotypes that no case covers.
     *
     * @param state the own state
     * @return this
     */
    public TraitBuilder otherwise(String state) {
        return otherwise(state, Optional.empty());
    }

    /**
     * States the state of all genotypes that no case covers, and on what evidence.
     *
     * @param state the own state
     * @param support id of the evidence, or empty for the trait's own
     * @return this
     */
    public TraitBuilder otherwise(String state, Optional<String> support) {
        return otherwise(new CaseState.Certain(state), support);
    }

    /**
     * States what all genotypes show that no case covers, and on what evidence.
     *
     * @param gives the own state, or a chance of own states
     * @param support id of the evidence, or empty for the trait's own
     * @return this
     */
    public TraitBuilder otherwise(CaseState gives, Optional<String> support) {
        otherwise = Optional.of(new Case("otherwise", Condition.always(), gives, support));
        return this;
    }

    /**
     * States the evidence of cases that name none of their own.
     *
     * @param support id of the evidence
     * @return this
     */
    public TraitBuilder evidence(String support) {
        evidence = Optional.of(support);
        return this;
    }
}
