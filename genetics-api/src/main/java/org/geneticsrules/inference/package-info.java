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
 *   <li>A pedigree falls into parts that no relation connects ({@code Families}). Of a part without loops, whose families are numbered from
 *       its first animal outwards so that messages run along arrays, every unit is peeled: messages run
 *       from family to family, up and down ({@code Peeling}), in time that grows with the number of animals. Only states that an animal's own
 *       records leave are looked at ({@code Known}), what pairs of parents hand down is worked out once for all families in which the same is
 *       left ({@code MatingTables}), and so is what is known of all animals that were recorded alike ({@code Kinds}). Units that records tie are
 *       peeled together, as one unit with all combinations of their states.
 *   <li>Of any other part a group is a product of factors over few variables each ({@code KindredGraph}, {@code EvidenceFactors}), which falls
 *       into pieces that no factor connects ({@code Components}). States that contradict a neighbour are struck out until nothing changes
 *       ({@code Elimination}), and what is left is summed along a tree of cliques ({@code CliqueTree}), whose cost is known before a table
 *       of a clique is made ({@code EliminationOrder}). If that is more than allowed, its numbers are not given, or sampled if that was asked for.
 *   <li>What that would cost can be asked beforehand, for each set of relatives ({@code Costs}); whoever asks can watch, and end a question
 *       ({@link org.geneticsrules.inference.Inference#watched}).
 *   <li>Whether records fit one another needs no numbers: one combination of states that fits is searched for ({@code Starts}), and only if
 *       none is found soon, all are ruled out by tables ({@code Realisation}).
 *   <li>What several animals carry together is read from a tree one clique of which was made to hold them all ({@code Together}).
 *   <li>The chance of very many litters of two founders each needs no pedigree: it is a sum over pairs of parents at each unit ({@link
 *       org.geneticsrules.inference.LitterLikelihood}).
 * </ol>
 *
 * <p>What is found out about the model, and what looks are evidence of, serves all questions that follow from one another ({@code
 * Prepared}, {@link org.geneticsrules.inference.Inference#about}).
 *
 * <p>So every chance that is given is exact but for rounding, unless it says that it is sampled. While messages run, no weight beside one of 1
 * becomes smaller than 1e-100, so that unlikely is not taken for impossible; where that makes a difference, because hundreds of records speak
 * against what others demand, the numbers of the part are not given.
 *
 * <p><b>Sampling</b> ({@link org.geneticsrules.inference.Sampling}) of one part whose exact tables do not fit ({@code Sampler}). Drawing one
 * animal after another, given its relatives, would be wrong: with three alleles there are classes of what is possible that do not touch when
 * only one animal changes at a time, and a chain never leaves that in which it began.
 *
 * <ol>
 *   <li>The part is divided into overlapping blocks, each around a centre and as much of the part as can be summed out with small tables;
 *       parents of many, far from the centre, are left out first ({@code Blocks}). A block is drawn at once and exactly, given all else: its
 *       variables are summed out one after another, and drawn on the way back ({@code Block}, {@code BlockDraw}).
 *   <li>Starts are searched for that are possible and differ from one another: each has a state that could not be reached in one round from
 *       those before, until each state that elimination leaves was seen or is shown to be impossible ({@code Starts}).
 *   <li>Chains from all starts get the same random numbers, until all are in the same states. Since any draw may be taken back by another,
 *       every start then leads to every other. If they do not meet, no number is given: {@link
 *       org.geneticsrules.inference.Conclusions.Standing#NOT_CONVERGED}.
 *   <li>Chains from different starts, now each with random numbers of its own, go on. Of each round of all blocks the exact chances, given what
 *       is not in the block, are averaged, which tells far more than counting what was drawn.
 *   <li>Standard errors come from the means of batches of rounds, to which is added what all chains may have missed by bad luck. A number
 *       counts when that is small enough and the chains agree: the variance between them is no larger than that within them suggests
 *       ({@code Tally}). A number of which some state was neither seen nor shown to be impossible does not count.
 * </ol>
 *
 * <p>That is no proof: a class of what is possible that differs from those found in no single state of a variable may be missed.
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
