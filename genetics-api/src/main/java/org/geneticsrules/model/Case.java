package org.geneticsrules.model;

import java.util.Optional;
import org.geneticsrules.trait.Condition;

/**
 * One way in which a trait comes to have a state: under this condition, that state.
 *
 * @param id its name within the trait, {@code otherwise} for the case that takes all genotypes left over
 * @param when the condition, over expressions of loci, own states of other traits, the sex and the season; always for {@code otherwise}
 * @param gives the own state it gives, or the chances of own states
 * @param evidence id of its evidence, if stated for this case
 */
public record Case(String id, Condition when, CaseState gives, Optional<String> evidence) {

    /**
     * Returns a case that gives one state for certain.
     *
     * @param id its name within the trait
     * @param when the condition
     * @param state the own state it gives
     * @param evidence id of its evidence, if stated
     */
    public Case(String id, Condition when, String state, Optional<String> evidence) {
        this(id, when, new CaseState.Certain(state), evidence);
    }
}
