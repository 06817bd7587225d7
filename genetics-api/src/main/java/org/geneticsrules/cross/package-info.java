/**
 * Matings: from two parents to the chances of their young, exactly.
 *
 * <p>Segregation gives each of a parent's two alleles to half of the gametes (Mendel 1866), and unlinked loci segregate
 * independently. How a question is computed:
 *
 * <ol>
 *   <li>Only the loci that the traits asked for depend on are looked at; all others cannot matter.
 *   <li>At each of these, four equally likely unions of gametes are counted by the <i>expression</i> they show as: genotypes that no
 *       rule tells apart are merged at once.
 *   <li>The counts flow through the {@linkplain org.geneticsrules.expression.Diagram decision diagram} of the traits, locus
 *       by locus, as whole numbers over one common total. The product of genotypes is never listed.
 *   <li>The total is divided out once, at the end.
 * </ol>
 *
 * <p>{@link org.geneticsrules.cross.Cross} takes parents whose genotypes are known. {@link org.geneticsrules.cross.UncertainCross}
 * takes parents of which only a set of genotypes is known, and keeps two answers apart: what is <i>possible</i>, which needs no
 * frequencies, and what is <i>probable</i>, which needs a named population for each uncertain parent. In the latter, the kits of one
 * litter depend on one another, because each tells something about the parents; chances about several kits are therefore mixtures
 * over the parents, never powers of a single chance.
 */
@NullMarked
package org.geneticsrules.cross;

import org.jspecify.annotations.NullMarked;
