/**
 * Answers about recorded animals: what they may carry and how that came to be known, how sure one may be, who may be a sire, what a future
 * litter may show, what to look at next, what an animal may show later, what a DNA test would tell, and which records of a registry to
 * look at again.
 *
 * <p>{@link org.geneticsrules.answer.recorded.RecordedAnswers} is the door. Each answer is a {@link
 * org.geneticsrules.answer.recorded.RecordedAnswer} with a {@link org.geneticsrules.answer.recorded.Finding} of its own kind, and with what
 * goes with every answer: what is recorded, assumptions, cautions, evidence, and the records that contradict one another.
 *
 * <ol>
 *   <li>Only the kindred of the animals asked about is looked at: whom relations connect with them. No other record bears on them.
 *   <li>What is possible is asked without frequencies. What is probable needs them: of the population that is named, of those that the
 *       records state, or of each population of the model, one after another, so that it is seen how much hangs on them. Every number has a
 *       {@link org.geneticsrules.answer.recorded.Chance standing} of its own.
 *   <li><b>The trail</b> of a chance is found by asking the engine of the same kindred with the first 0, 1, 2, .. looks and tests. A record
 *       multiplies the odds p / (1 - p) by a factor; records that move nothing are counted only. Where a chance cannot be calculated in
 *       between, records are taken together.
 *   <li><b>A litter that is planned</b> is put into the pedigree as if it were born, and the engine is asked how likely records of its kits
 *       are. With L the chance of all records,
 *       <pre>
 *   P(kits look so | records) = L(records, kits look so) / L(records, kits nobody looked at)
 *       </pre>
 *       so that what ties the kits to one another and to all relatives is taken into account: kits of parents who are not known for certain
 *       are a mixture, and not independent.
 *   <li><b>Three kinds of sure</b> come from the same numbers, for n kits without a sign: what is left to believe, P(carries | no sign); what
 *       to expect, 1 - P(no sign); and by Bayes' rule how good the test is, 1 - P(no sign | carries) = 1 - P(carries | no sign) P(no sign) /
 *       P(carries).
 *   <li><b>A sire</b> is supposed for the litter, or for each kit, and is excluded if then records contradict one another; these are the
 *       reason. How likely each male is follows from his share times the chance of all records if he is the sire. Every male in question is
 *       taken for male in all cases.
 *   <li><b>What to look at next</b> is what is expected to tell most of what the animal carries, g, in bits (Shannon 1948):
 *       <pre>
 *   I = sum over states s and g of P(s) P(g | s) log2 (P(g | s) / P(g))
 *       </pre>
 *       Each look is put into the records as if it had been made ({@code ExpectedInformation}), at the loci that the trait reads and those
 *       of earlier looks about which the same chance decided ({@code LookLoci}).
 *   <li><b>What an animal may show later</b> is asked by a look that is put into the records as if it had been made at that stage, once for
 *       each state: what is possible by whether all records fit with it ({@code Fits}), what is probable by the ratio of the chances of all
 *       records with it and without ({@code Supposed}). What chance decided in earlier looks, and where a course of life has come to, is
 *       thereby taken into account. A mask counts as what may hide a state if some combination of expressions that fits all records is
 *       covered by it then ({@code Covering}).
 *   <li><b>A DNA test</b> that may be made is put into the records likewise, once for each report, with its error: P(r) = L(records, r) /
 *       L(records), and what is left to believe after r is what the engine concludes from the records with r among them. What the test is
 *       expected to tell is the mean information about the genotype at its locus ({@code Gained}). A cause is on record if some statement
 *       about the locus, or about what the allele asked about shows by itself, is molecular.
 *   <li><b>A registry</b> is gone through in portions of whole kindreds, so that it can be told how far it has come, and stopped: first all
 *       records are held against one another, inbreeding is counted ({@link org.geneticsrules.pedigree.RegistryKinship}), and it is foreseen
 *       what the chances of each set of relatives cost; then chances are worked out, where they cost least first, as long as there is
 *       time. What was not come to is told as such, animal by animal.
 *   <li><b>Evidence</b>: a look counts as far as it tells loci in question, so that an albino cites nothing of what albino hides ({@code
 *       LookBearings}).
 * </ol>
 *
 * <p><b>Words.</b> Where records contradict one another, answers name all of them and the model, and say that it cannot be told which is
 * mistaken. They accuse nobody.
 *
 * <p>Everything here is immutable and thread-safe.
 */
@NullMarked
package org.geneticsrules.answer.recorded;

import org.jspecify.annotations.NullMarked;
