/**
 * What follows from believing otherwise: which genotypes look different and which matings give different kits under another model.
 *
 * <p>{@link org.geneticsrules.hypothesis.Comparison} asks, {@link org.geneticsrules.hypothesis.WhatMoves} answers. The answer is exact:
 * either the smallest examples, or the proof that there is none. How it is found, for the matings:
 *
 * <ol>
 *   <li><b>What is compared.</b> The traits that both models have a rule for, the loci on which these depend in either model, and those
 *       at which animals may be lost. At a locus of both, animals may carry every pair of alleles that both know; at a locus of one
 *       alone, the baseline allele. Parents must be able to live under both models, and of linked loci their phase is known.
 *   <li><b>When.</b> Where age or season plays a part, stages are examined one after another from birth on. All that progresses is one
 *       Markov chain of finitely many states, so what holds at as many counts as both models' chains have states holds for ever.
 *   <li><b>Two automata.</b> Each model's {@linkplain org.geneticsrules.expression.Diagram decision diagram}, in one order of loci for
 *       both, is read as an automaton: it is told what the parents carry at one locus after another, and passes with known chances from
 *       node to node, taking alleles by segregation, recombination and mutation, until a kit's look or loss is decided. Two
 *       automata with weights agree on everything if they agree on enough words to span what they can tell apart (Sch&uuml;tzenberger
 *       1961, Information and Control 4:245; Tzeng 1992, SIAM J. Comput. 21:216). The product of the loci is never listed.
 *   <li><b>Backwards.</b> After the last locus, the difference of the two models' shares of a look is a linear function of the states.
 *       Told what is carried at the locus before, each such function becomes one of the states before it. Of all these, those of the
 *       smallest words are kept as long as they are no sums of multiples of those kept already. There are never more than there are
 *       states. Because of two words the smaller stays the smaller when both are made longer alike, the functions kept tell a difference
 *       as early in the order of words as all functions together would.
 *   <li><b>Forwards.</b> From the first locus on, whatever can be carried is followed as long as one of the functions kept is not 0;
 *       the first such function names the smallest difference that lies ahead. The best-first search so led never meets a dead end and
 *       finds what moves in order: fewest genotypes other than the reference, then fewest heterozygous ones, then declared order. If no
 *       function tells a difference at the start, nothing moves.
 * </ol>
 *
 * <p>Genotypes are found in the same way; there the automaton is told what the animal itself carries, once for each sex where sex
 * matters. Chances count as what they are: a look that is as likely as before has not moved, one that is likelier has. Shares are taken
 * among all that are conceived, so that a change of viability moves what it changes; what is reported are the lost share and the looks of
 * the others.
 *
 * <p>Work is counted before and while it is done; too much is refused with what to ask instead. All results are immutable and
 * thread-safe.
 */
@NullMarked
package org.geneticsrules.hypothesis;

import org.jspecify.annotations.NullMarked;
