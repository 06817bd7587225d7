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
 *
 * <p>{@link org.geneticsrules.cross.TestMating} asks how many young it takes to see from them what an animal carries:
 *
 * <ol>
 *   <li>What the animal may be, if it is what it is tested for, is listed as kinds of <i>breeders</i>: animals whose gametes are
 *       distributed alike at the loci that matter are one kind.
 *   <li>So are its mates: directly, or as the young of their own parents, of whom the animal itself may be one. Each strand that a
 *       parent can pass on meets each of the other's; young that do not live, or do not look as stated, drop out, and the rest are
 *       weighed anew.
 *   <li>For each animal and mate the chance that a kit shows a sign is read from the diagram, as in any mating. What all mates have in
 *       common (the animal; the parents of mates that are sibs) is kept apart from what each mate has by itself.
 *   <li>Given what they have in common, mates are independent, and so are the kits of one mate. So a step, be it a kit, a litter or a
 *       mate with its litter, shows nothing with a chance v, and n steps with v^n; over all, with the sum of w v^n. A {@link
 *       org.geneticsrules.cross.Detection} is the list of these v with their weights w.
 *   <li>The smallest n whose sum is small enough is estimated by logarithms and made certain by exact comparison on both sides. The
 *       weight of v = 1 is the limit: below it no n leads, and the answer is <i>never</i>.
 * </ol>
 */
@NullMarked
package org.geneticsrules.cross;

import org.jspecify.annotations.NullMarked;
