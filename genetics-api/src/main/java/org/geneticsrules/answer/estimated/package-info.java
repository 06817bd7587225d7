/**
 * Which value of a number do counts or recorded animals speak for, how far may it be off, and what is it taken from.
 *
 * <p>{@link org.geneticsrules.answer.estimated.CountedAnswers} answers from counts that are stated, {@link org.geneticsrules.answer.estimated.RecordedEstimates}
 * from the animals of a pedigree, both by the engines of {@link org.geneticsrules.estimation}:
 *
 * <ol>
 *   <li>The engine is asked for the value of maximum likelihood with its profile interval, and for the exact interval where there is one. The verdict tells the
 *       exact one, which holds the truth at least as often as it says.
 *   <li>Where the likelihood is the same at every value the verdict says that the records say nothing about the number, and no value is told.
 *   <li>Counts that go badly with every value of the number, by an exact test of what it can reach, or far better with another phase, are told first.
 *   <li>What was counted is listed, and what was left out of the records, with the reason.
 *   <li>A value that a hypothesis states is tested, where there is one: 1/4 of the young, no linkage, Hardy-Weinberg proportions, equal viability.
 *   <li>What the estimate takes for granted is listed: how the animals came to be recorded above all.
 *   <li>What makes an estimate weaker than its interval says is told: an estimate at an end, few recombinants, few families, several peaks.
 *   <li>From records, the cautions on their looks are raised as by every other answer about them.
 * </ol>
 *
 * <p>No number here says that a mating is advisable. All types are immutable and safe for use by several threads.
 */
@NullMarked
package org.geneticsrules.answer.estimated;

import org.jspecify.annotations.NullMarked;
