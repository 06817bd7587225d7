/**
 * Describes one animal by what was seen of it, and tells whether all of it can be one animal.
 *
 * <p>{@link org.geneticsrules.answer.described.Descriptions} is the door. It needs no genotype and no relatives:
 *
 * <ol>
 *   <li>every reading is compared with the catalogue: one that was made too early in life, or in a light in which
 *       the trait cannot be told, is kept, told, and counts for nothing;
 *   <li>readings of one trait are put side by side, those of one season by themselves, since a coat of winter and one of summer are two
 *       coats of one animal;
 *   <li>the readings in traits that the model rules are held to it together ({@link org.geneticsrules.answer.Animal}): if no genotype and no
 *       course of a life shows them all, readings are left out one after the other as long as the others still contradict each other. What is
 *       left is a set of which every one is needed;
 *   <li>rival models are asked whether it can be one animal for them;
 *   <li>cautions are raised by anything that was seen;
 *   <li>what is not known yet is listed, with the age or moult from which it can be told, and the light.
 * </ol>
 */
@NullMarked
package org.geneticsrules.answer.described;

import org.jspecify.annotations.NullMarked;
