/**
 * The one place where a result meets its reasons, its cautions, its evidence and the model it rests on.
 *
 * <p>Engines return plain results. Whoever puts a result before a person asks {@link org.geneticsrules.answer.Answers} instead, so that
 * no caution and no assumption is lost on the way:
 *
 * <ol>
 *   <li>What is stated of the animals, look or genotype or both, becomes a set of genotypes. An empty set is a contradiction, and the
 *       answer says so.
 *   <li>The engine computes what is possible and, where frequencies are named or none are needed, what is probable.
 *   <li>The reasons are taken from the same evaluation as the numbers.
 *   <li>The evidence is that of the statements on the ways of non-zero weight to what was asked, and no other; the answer's grade is
 *       the weakest among them.
 *   <li>Cautions are raised by what is asked, by what the parents look like, by every look a kit may have, and by how the parents are
 *       related.
 * </ol>
 */
@NullMarked
package org.geneticsrules.answer;

import org.jspecify.annotations.NullMarked;
