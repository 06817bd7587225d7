/**
 * Answers about names: what an animal is called in each region, what a name says of an animal, and what a name of one vocabulary is in
 * another.
 *
 * <p>{@link org.geneticsrules.answer.named.NameAnswers} is the door. Each answer is a {@link org.geneticsrules.answer.named.NamedAnswer} with a
 * {@link org.geneticsrules.answer.named.NameFinding} of its own kind. The engine is {@link org.geneticsrules.vocabulary}, which needs no
 * model; what is added here is what goes with every answer:
 *
 * <ol>
 *   <li>the question and the verdict in a sentence each;
 *   <li>the cautions that what was seen raises, or any look that the name may mean;
 *   <li>the senses that the answer rests on, each with its grade and sources, and the weakest of these grades;
 *   <li>which versions of which vocabularies were used.
 * </ol>
 */
@NullMarked
package org.geneticsrules.answer.named;

import org.jspecify.annotations.NullMarked;
