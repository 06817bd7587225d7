/**
 * Which value of a number of a model do counts and pedigrees speak for, and how far may it be off?
 *
 * <p>Every estimate is one of maximum likelihood, with its standard error where it has one, a confidence interval that says how it was found, and
 * what it rests on ({@link org.geneticsrules.estimation.Estimate}). An estimate at an end of what the number can be says so, and so does one
 * that is none, because the data are as likely at every value.
 *
 * <ol>
 *   <li><b>Recombination from counts.</b> Young of a test cross are recombinant or not: the estimate is their share, at most 1/2 ({@link
 *       org.geneticsrules.estimation.TestCross}). In an F2 with dominance four classes are seen; the likelihood has its top at the root of a
 *       quadratic ({@link org.geneticsrules.estimation.IntercrossLinkage}). With three loci in one cross double crossovers show by themselves, and with them the order and the
 *       coincidence ({@link org.geneticsrules.estimation.ThreePointCross}).
 *   <li><b>Recombination in families.</b> A parent whose phase is not known is a mixture of two phases, each with 1/2. The LOD score of a family is the decimal logarithm of
 *       how much likelier its young are at r than at 1/2; scores add up over families ({@link org.geneticsrules.estimation.LodScores}).
 *   <li><b>Segregation ratio under ascertainment.</b> Families that are noticed by their affected young are a biased sample. The likelihood of each is divided by the
 *       chance that it is noticed ({@link org.geneticsrules.estimation.SegregationRatio}). Which litters of a pedigree count, and how, is read from how each came
 *       to be recorded ({@link org.geneticsrules.estimation.RecordedFamilies}).
 *   <li><b>Allele frequencies.</b> Genotypes behind a look are shared out by how likely they are, alleles counted, and that again ({@link
 *       org.geneticsrules.estimation.GeneCounting}); of a pedigree those animals count whose own records leave a set of genotypes ({@link org.geneticsrules.estimation.UnrelatedAnimals}); whether genotypes are in Hardy-Weinberg proportions is tested where they can be told apart ({@link
 *       org.geneticsrules.estimation.HardyWeinberg}).
 *   <li><b>Penetrance and viability from counts</b> ({@link org.geneticsrules.estimation.Penetrance}, {@link org.geneticsrules.estimation.RelativeViability}):
 *       the chance of each class is a function of one number, whose likelihood is profiled.
 *   <li><b>Any one number of a model, by a pedigree.</b> A {@link org.geneticsrules.estimation.ModelParameter} yields a model for each value of the number: the recombination fraction
 *       of an interval, the chance of a state in a case, a chance to live. {@link org.geneticsrules.estimation.PedigreeLikelihood} splits the pedigree into sets of relatives, lets {@link
 *       org.geneticsrules.inference.Inference} calculate the chance of all their records under that model, and profiles the sum of the logarithms.
 * </ol>
 *
 * <p>Intervals of profile likelihood are approximate. How often they hold the true value in small samples was counted by going through all samples, and
 * stands beside the tests; where it matters, the exact intervals are there.
 *
 * <p>What an estimate says of a number, it says under the model. Animals should not be mated, or not mated, on the word of a number alone. All types are immutable and safe for use by several threads.
 */
@NullMarked
package org.geneticsrules.estimation;

import org.jspecify.annotations.NullMarked;
