/**
 * Do counts fit a ratio, and how far may a number that was estimated from them be off?
 *
 * <p>The package knows nothing of inheritance: it takes counts, chances and likelihoods. It is the only one that needs Apache Commons
 * Statistics (tail areas and quantiles) and the root finder of Apache Commons Numbers, both of which are optional for embedders.
 *
 * <ol>
 *   <li><b>Counts against a ratio</b> ({@link org.geneticsrules.statistics.GoodnessOfFit}). Expectations are exact shares of the total. Pearson's
 *       chi-squared is the sum of (observed - expected)^2 / expected (Pearson 1900), G is 2 times the sum of observed ln(observed / expected);
 *       both are compared with the chi-squared distribution of <i>classes - 1 - parameters estimated</i> degrees of freedom (Fisher 1922). A class of
 *       chance 0 is no class: it adds no degree of freedom, and an animal in it settles the question without any statistic. Classes whose
 *       expectation is below 5 are named, since the distribution is an approximation then; they are never pooled silently.
 *   <li><b>Small counts</b> ({@link org.geneticsrules.statistics.MultinomialTest}). All ways in which so many animals can fall into the classes are
 *       gone through; p is the chance of those that are no more likely than what was observed. Where parents are uncertain the law is a mixture of such laws. How many
 *       ways there are is known before the work; too many are refused, or sampled if that was asked for, and then p is (hits + 1) / (draws + 1).
 *   <li><b>A proportion</b> ({@link org.geneticsrules.statistics.BinomialInterval}). The exact interval holds the chances that neither tail of the
 *       binomial distribution speaks against (Clopper &amp; Pearson 1934, Biometrika 26:404): it covers at least as often as it says. That of Wilson
 *       (1927, J. Am. Stat. Assoc. 22:209) is shorter and approximate.
 *   <li><b>Any single number</b> ({@link org.geneticsrules.statistics.ProfileLikelihood}). The logarithm of the likelihood is looked at on a grid, each
 *       peak of the grid is refined by Brent's search (golden sections and parabolas), and the highest is the estimate. The
 *       interval holds the values whose log-likelihood is at most q/2 below it, q the quantile of chi-squared with one degree of freedom (Wilks 1938);
 *       its ends are roots, or the ends of what the number may be, and it says which. A second, unknown number is maximised out.
 *   <li><b>Two models</b> ({@link org.geneticsrules.statistics.LikelihoodRatio}, {@link org.geneticsrules.statistics.InformationCriteria}). Twice the
 *       difference of the log-likelihoods is compared with chi-squared. Where the null hypothesis is the end of what the number may
 *       be, as 1/2 is of a recombination fraction, half of all samples have the statistic 0, and p is halved (Self &amp; Liang 1987, J. Am. Stat. Assoc.
 *       82:605, case 5).
 * </ol>
 *
 * <p>An event of chance 0 has the log-likelihood of minus infinity, which all searches take; no result is NaN. All types are immutable and
 * safe for use by several threads. The works cited here are cited from memory.
 */
@NullMarked
package org.geneticsrules.statistics;

import org.jspecify.annotations.NullMarked;
