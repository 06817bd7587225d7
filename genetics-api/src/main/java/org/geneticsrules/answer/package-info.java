/**
 * The one place where a result meets its reasons, its cautions, its evidence and the model it rests on.
 *
 * <p>Engines return plain results. Whoever puts a result before a person asks {@link org.geneticsrules.answer.Answers} instead, so that
 * no caution and no assumption is lost on the way:
 *
 * <ol>
 *   <li>What is stated of the animals, look or genotype or both, becomes a set of genotypes. An empty set is a contradiction, and the
 *       answer says so. What was read earlier in life than a trait can be told is kept and echoed, but is no evidence.
 *   <li>What is asked is compared with the stage at which animals are looked at. What depends on an age, a moult or a season that is not
 *       stated is refused ({@code stage-needed}) with what to state and when to look again; of all traits, those that cannot be told are
 *       left out, and the answer says so.
 *   <li>The engine computes what is possible and, where frequencies are named or none are needed, what is probable.
 *   <li>The reasons are taken from the same evaluation as the numbers: what the parents pass on to daughters and to sons, on which
 *       strands the alleles of linked loci lie, what chance has to decide, and which share of the young is lost before it is counted.
 *   <li>The assumptions follow from what was computed: linkage and unknown phase, the sexes, losses, mutation counted or left out, the
 *       size of a litter, one sire or several, and frequencies only where they weigh something.
 *   <li>The evidence is that of the statements on the ways of non-zero weight to what was asked, and no other; the answer's grade is
 *       the weakest among them.
 *   <li>What a test mating would take is told by the trait that tells most, with what is enough in any case where frequencies are
 *       missing. A mating that raises a caution which excludes it is left out, with the reason.
 *   <li>Cautions are raised by what is asked, by what the parents look like, by every look a kit may have, and by how the parents are
 *       related.
 * </ol>
 */
@NullMarked
package org.geneticsrules.answer;

import org.jspecify.annotations.NullMarked;
