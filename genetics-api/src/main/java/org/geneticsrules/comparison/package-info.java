/**
 * Which of several models of inheritance do records of litters favour, and does any of them fit.
 *
 * <p>{@link org.geneticsrules.comparison.ModelComparison} is the door to the first question. Step by step:
 *
 * <ol>
 *   <li><b>Same things.</b> Only traits that every model speaks of, for every animal, are compared, and tests of loci that every model has;
 *       what is left out is listed ({@link org.geneticsrules.comparison.SharedRecords}). A model that foretells less would else always win.
 *   <li><b>Kindreds.</b> Records are taken apart into animals that litters connect. What one kindred says is independent of what another
 *       does. Within one, litters are put in order of birth, and after those that their parents come from.
 *   <li><b>Given the founders.</b> What was recorded of founders is taken as given: they are of their populations in Hardy-Weinberg
 *       proportions, weighed by their own records. Only if asked for are their records data like others
 *       ({@link org.geneticsrules.comparison.ModelComparison#countingParents}).
 *   <li><b>Litter by litter.</b> The chance of a litter is {@code P(founders, litters 1..t) / P(founders, litters 1..t-1)}: parents that are
 *       not known for certain are summed over, so litter-mates and litters of the same parents depend on one another. Kits are a sequence, so
 *       no count of orders comes in. A birth is no evidence: below the line stands the same litter with nothing recorded of its kits. A
 *       couple with its litters goes through {@link org.geneticsrules.inference.LitterLikelihood}, and couples recorded alike are worked out
 *       once; any other kindred is a pedigree ({@link org.geneticsrules.inference.Inference}).
 *   <li><b>How litters came to be recorded</b> ({@link org.geneticsrules.pedigree.Ascertainment}). A litter that is there because of what its
 *       kits show is one of those that could be: below the line stands the chance of all litters of its size that would have been recorded,
 *       {@code sum over k of C(n, k) w(k) P(k kits with the sign, n - k without)}, with {@code w(k) = 1} from one such kit on, or
 *       {@code 1 - (1 - p)^k} where each is noticed with chance p (Fisher 1934, Annals of Eugenics 6:13; Morton 1959, <i>Genetic tests under
 *       incomplete ascertainment</i>, American Journal of Human Genetics 11:1, both from memory). Parents chosen because of an earlier kit
 *       are those who have one such kit more. Where nobody wrote it down, litters are taken as complete, and answers say so.
 *   <li><b>Evidence.</b> The product of the ratios, litter by litter, is the running likelihood ratio
 *       ({@link org.geneticsrules.comparison.ComparedModels}). If a model is true, the ratio of another over it is 1 on average, and reaches
 *       1/risk with a chance of at most risk (Ville 1939, <i>Étude critique de la notion de collectif</i>, from memory). That is not so
 *       where parents who are not known for certain have several litters that each were noticed for what they showed. Below the line
 *       stands the chance that a litter is noticed, given those before it; but the records hold couples all of whose litters were, and
 *       among these the parents whose young show the sign more often are more frequent than that. The average may then be above 1: if
 *       a recessive allele has frequency 1/2, and 9/10 by the rival, it is 1.13 for a couple of whom nothing is known with two litters of two
 *       kits that were noticed for a recessive kit, as a test enumerates. Answers say so where it applies. Of parents who are known, and of
 *       parents with one such litter each, it is 1.
 * </ol>
 *
 * <p>{@link org.geneticsrules.comparison.ModelFit} is the door to the second question.
 *
 * <ol>
 *   <li><b>Kits.</b> The chance of a kit's records given all others of its kindred: 0 is impossible. Where its look can be compared with all
 *       that one more kit of the same parents might show, the chance of one no likelier is summed up; below 1 in 20, divided by the number of
 *       kits looked at in its litter, it is unlikely. Parents may be what all records say of them, as for litters, below.
 *   <li><b>Litters.</b> Where kits were looked at in the same way, the counts of their looks are compared with all counts that so many
 *       further kits of the same parents might show (exact multinomial test, here of a mixture, since parents may be uncertain), given that a
 *       litter shows what it was noticed for. p is the chance of counts no likelier. What parents may be is what all records say of them, the
 *       litter's own included: a litter that shows its parents to be carriers is no bad litter because carriers are rare. Of parents whose
 *       genotypes are known that is the usual exact test; of others it rejects less often than its level says (posterior predictive check:
 *       Rubin 1984, Annals of Statistics 12:1151; Meng 1994, Annals of Statistics 22:1142; from memory). Too many counts are drawn kit by kit.
 *   <li><b>All litters together.</b> The statistic is the sum of the logarithms of those chances; its distribution is drawn from those of the
 *       litters, one by one, with a seed: {@code p = (hits + 1) / (draws + 1)}. One litter alone needs no draws.
 *   <li><b>Kinds of matings.</b> Kits of couples that were recorded alike are counted together and held against their expected shares by
 *       chi-squared and G, with small expectations named, and by the exact test, where kits are independent of one another. Litters that were
 *       noticed for what they showed are left out there.
 * </ol>
 */
@NullMarked
package org.geneticsrules.comparison;

import org.jspecify.annotations.NullMarked;
