/**
 * What has to be said along with an answer, so that nobody is hurt by it.
 *
 * <p>Cautions are data. Each {@link org.geneticsrules.caution.Caution} has one calm first line, the detail, its sources and the date on
 * which it was written, and a {@link org.geneticsrules.caution.Trigger} that says when it is due: with a kind of question, with a look
 * of a parent, of the young or of the animal itself, or with a relation between the parents. A
 * {@link org.geneticsrules.caution.CautionSet} compares its triggers with the {@link org.geneticsrules.caution.Situation} of a question.
 */
@NullMarked
package org.geneticsrules.caution;

import org.jspecify.annotations.NullMarked;
