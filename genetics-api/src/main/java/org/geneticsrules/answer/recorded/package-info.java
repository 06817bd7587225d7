/**
 * Answers about recorded animals: what they may carry, how that came to be known, and what to look at again.
 *
 * <p>{@link org.geneticsrules.answer.recorded.RecordedAnswers} is the door.
 */
@NullMarked
package org.geneticsrules.answer.recorded;

import org.jspecify.annotations.NullMarked;
