/**
 * Do litters fit what is believed of their inheritance, which of several beliefs do they favour, what to do next to tell these apart, and how often
 * would litters of a plan tell.
 *
 * <p>{@link org.geneticsrules.answer.compared.LitterAnswers} asks the engines of {@link org.geneticsrules.comparison} and joins what they find
 * with assumptions, cautions and evidence:
 *
 * <ol>
 *   <li>The records are read under the model that is in use; what they rest on is what any answer from records rests on.
 *   <li>The other models are named, or are the rivals that the model is asked with. One that does not know the records is left out, and told.
 *   <li>Founders come from the populations that the records state, else from the one named, else from the first that all models have; then
 *       the question is asked again with each other one, since frequencies are assumptions.
 *   <li>The best model is judged by itself. If it fits badly, "none of these" is the verdict, whatever the ratios.
 *   <li>The comparison is made again with one look in a hundred misread, and without each litter.
 *   <li>A model that excludes the records is said to do so on the word of whichever single animals decide it.
 * </ol>
 *
 * <p>What to do next is asked of {@link org.geneticsrules.planning}:
 *
 * <ol>
 *   <li>The models are compared by all records. Those excluded are left out; what is left of belief and ratio is where the steps start.
 *   <li>The traits looked at are those that the question names; else those that were recorded of any animal; else all of which every model
 *       speaks.
 *   <li>Where it is proved that all foretell the same of every genotype and mating by the traits looked at, that is the answer.
 *   <li>Steps are listed: looks at recorded animals for what is not recorded of them (litter-mates recorded alike count once); kits that are born
 *       and not recorded; DNA tests at loci that all models share and of which a cause is on record, or which were tested before; planned
 *       matings that are named; and, only if asked for, matings made for this alone. There is a bound on each kind, and what lies beyond it is
 *       counted.
 *   <li>A mating that a caution excludes, as in a test mating, is left out with the reason, and so is one that cannot be; one made for this
 *       alone also if a parent is recorded as deaf. What has to be said of a mating is said whether it is left out or not.
 *   <li>Of each effort those are told that are expected to tell most, with words for what they say under each model; how many kits it takes
 *       is worked out for these. Where so many kits take too much work, half of them are asked about, and so on, and that is told.
 * </ol>
 *
 * <p>{@link org.geneticsrules.answer.compared.Analysis} is such a question with all that its answer hangs on, as values: it is asked again in
 * one call, and {@link org.geneticsrules.answer.compared.DocumentChange} tells in which documents two of them differ. Nothing else enters an
 * answer: what is drawn is drawn from the seed that the settings state.
 *
 * <p>{@link org.geneticsrules.answer.compared.PowerAnswers} asks beforehand how often such an answer would come of a plan of litters: it draws them
 * ({@link org.geneticsrules.planning.Power}), and adds what the mating of such parents raises in cautions. Rivals that are proved to foretell
 * the same looks of every mating are named and left out.
 */
@NullMarked
package org.geneticsrules.answer.compared;

import org.jspecify.annotations.NullMarked;
