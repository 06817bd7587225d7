package org.geneticsrules.model;

import java.util.Optional;
import org.geneticsrules.trait.Condition;

/**
 * One way in which a trait comes to have a state: under this condition, that state.
 *
 * @param id its name within the trait, {@code otherwise} for the case that takes all genotypes left over
 * @param when the condition, over expressions of loci and own states of other traits; always for {@code otherwise}
 * @param state the own state it gives
 * @param evidence id of its evidence, if stated for this case
 */
public record Case(String id, Condition when, String state, Optional<String> evidence) {}
