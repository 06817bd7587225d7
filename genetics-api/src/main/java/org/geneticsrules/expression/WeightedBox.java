package org.geneticsrules.expression;

import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Condition;

/**
 * Animals with one chance to show what was seen of them.
 *
 * @param box their sex and expressions; what is not named makes no difference
 * @param weight the chance that such an animal shows all that was seen, more than 0 and at most 1
 */
public record WeightedBox(Condition box, Probability weight) {}
