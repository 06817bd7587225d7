package org.geneticsrules.explanation;

import java.util.Optional;
import org.geneticsrules.expression.TraitTrace;

/**
 * How one trait of one animal came to look as it does.
 *
 * @param trace own state, deciding rule, masks and what is seen
 * @param rule the deciding rule in words, if a rule decided
 */
public record Look(TraitTrace trace, Optional<String> rule) implements Reason {}
