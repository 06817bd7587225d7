/**
 * Exact chances and exact distributions.
 *
 * <p>Everything a mating can yield is a ratio of whole numbers: each parent passes on one of two alleles, so every chance is a
 * fraction whose denominator is a power of two, and conditioning or weighting by allele frequencies keeps it a fraction. This
 * package keeps those fractions exact and canonical, so that two ways of computing the same chance are compared with
 * {@code equals}, not with a tolerance.
 *
 * <ol>
 *   <li>{@link org.geneticsrules.probability.Probability} is one chance between 0 and 1, always in lowest terms.
 *   <li>{@link org.geneticsrules.probability.Distribution} gives each of finitely many outcomes its chance; the chances sum to
 *       exactly 1 and no outcome of chance 0 is listed.
 * </ol>
 *
 * <p>All types are immutable and safe for use by several threads.
 */
@NullMarked
package org.geneticsrules.probability;

import org.jspecify.annotations.NullMarked;
