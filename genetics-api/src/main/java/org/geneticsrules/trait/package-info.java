/**
 * What can be observed of an animal, apart from any belief about inheritance.
 *
 * <ol>
 *   <li>A {@link org.geneticsrules.trait.Catalogue} lists {@linkplain org.geneticsrules.trait.Trait traits} with their states.
 *       Rival models, records and names share one catalogue, so that they can be compared.
 *   <li>A {@link org.geneticsrules.trait.Phenotype} gives the shown state of some or all traits.
 *   <li>A {@link org.geneticsrules.trait.Condition} is a box: for each variable it names, a set of allowed values. There is no
 *       "or" and no nesting; alternatives are several named conditions. That keeps conflicts pairwise and cheap to find, and is
 *       the shape in which a phenotype becomes evidence about genotypes.
 * </ol>
 */
@NullMarked
package org.geneticsrules.trait;

import org.jspecify.annotations.NullMarked;
