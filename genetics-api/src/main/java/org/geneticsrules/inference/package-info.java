/**
 * What the animals of a pedigree may carry, and what they probably carry, by a model of inheritance and by what was recorded of them.
 *
 * <ol>
 *   <li>Parents who are not recorded become animals of whom nothing is known ({@code Members}). Every record of an animal becomes boxes
 *       of expressions with a weight each: how likely an animal of such expressions is to be recorded so ({@code Records},
 *       {@link org.geneticsrules.expression.CompiledModel#evidence}). What chance decided once in its life is summed out before the
 *       pedigree sees it.
 *   <li>Loci that are handed down together are a unit ({@code Unit}), and what an animal carries there is one variable. A founder has the
 *       frequencies of its population, a kit what its parents pass on, among those that live ({@code Heredity}).
 *   <li>One box of an animal says something of each unit by itself, and so do tests of single loci. Only several boxes, a sex that is not
 *       known, or a sire who is not known tie units together ({@code Ties}). Units that nothing ties are looked at one group after the
 *       other: the chance of all records is the product over groups ({@code Groups}).
 *   <li>A pedigree falls into parts that no relation connects ({@code Families}). Of a part without loops every unit is peeled: messages run
 *       from family to family, up and down ({@code Peeling}), in time that grows with the number of animals. Only states that an animal's own
 *       records leave are looked at ({@code Known}), what pairs of parents hand down is worked out once for all families in which the same is
 *       left ({@code MatingTables}), and so is what is known of all animals that were recorded alike ({@code Kinds}). Units that records tie are
 *       peeled together, as one unit with all combinations of their states.
 *   <li>Of any other part a group is a product of factors over few variables each ({@code KindredGraph}, {@code EvidenceFactors}), which falls
 *       into pieces that no factor connects ({@code Components}). States that contradict a neighbour are struck out until nothing changes
 *       ({@code Elimination}), and what is left is summed along a tree of cliques ({@code CliqueTree}), whose cost is known before a table is
 *       made ({@code EliminationOrder}). If that is more than allowed, its numbers are not given.
 *   <li>What several animals carry together is read from a tree one clique of which was made to hold them all ({@code Together}).
 * </ol>
 *
 * <p>So every chance that is given is exact but for rounding.
 *
 * <p><b>Possible</b> ({@link org.geneticsrules.inference.Possibilities}) is a question of its own, without frequencies and mutation. What
 * elimination strikes out is excluded; else variables are taken out one after another with "some state fits" in the place of the sum, and on
 * the way back states are chosen that fit one another: the witness ({@code Realisation}).
 *
 * <p><b>Contradictions</b> ({@link org.geneticsrules.inference.Contradictions}) are sets of single records ({@link
 * org.geneticsrules.inference.RecordRef}). Any set of records can be taken for all there are ({@code Dossier}, {@code Kept}): what is left
 * out is no evidence, and a parent left out is an animal that can be anything, so leaving out never makes a contradiction.
 *
 * <ol>
 *   <li>Where elimination strikes out all states of a variable, the trail of what struck out what leads back to the animals that were needed
 *       ({@code Fitting}); only their records are looked at from there on.
 *   <li>By halves, records are left out without which the others still contradict one another ({@code Shrinking}). The result counts only if
 *       it is verified: together impossible, without any one possible.
 *   <li>A smallest set has a record in common with each set that resolves all, and a smallest set that resolves all has one in common with
 *       each contradiction. Both are found by taking the smallest set that meets all of the other kind that are known, until it does what
 *       is asked ({@code HittingSets}).
 * </ol>
 */
@NullMarked
package org.geneticsrules.inference;

import org.jspecify.annotations.NullMarked;
