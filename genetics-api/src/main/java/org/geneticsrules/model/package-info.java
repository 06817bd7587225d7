/**
 * Rules of inheritance as data: loci, alleles, dominance, trait rules, masks, populations, and the genotypes written in their terms.
 *
 * <p>A model is layered, and each layer can be replaced alone:
 *
 * <ol>
 *   <li><b>Dominance</b> maps the genotype of one {@link org.geneticsrules.model.Locus} onto one of its declared
 *       <i>expressions</i>, the finest grouping that any trait needs.
 *   <li>A {@link org.geneticsrules.model.TraitRule} says which <i>own state</i> a trait has: what the animal would show if nothing
 *       covered it. Its cases are disjoint; there is no priority and no last-wins.
 *   <li>A {@link org.geneticsrules.model.Mask} says what can no longer be seen: it maps own states to shown states.
 * </ol>
 *
 * <p>Building a {@link org.geneticsrules.model.Model} checks it: every name is known, every pair of alleles is decided exactly once,
 * cases do not overlap, traits do not read one another in a circle, and two masks that could disagree are ordered. A conflict is
 * reported with a witness genotype. The checks compare statements pairwise, so they stay cheap for large models.
 *
 * <p>All models and genotypes are immutable and thread-safe; builders are not.
 */
@NullMarked
package org.geneticsrules.model;

import org.jspecify.annotations.NullMarked;
