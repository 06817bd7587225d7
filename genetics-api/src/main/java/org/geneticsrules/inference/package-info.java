/**
 * What the animals of a pedigree may carry, by a model of inheritance and by what was recorded of them.
 *
 * <ol>
 *   <li>Every record of an animal becomes boxes of expressions with a weight each: how likely an animal of such expressions is to be
 *       recorded so ({@link org.geneticsrules.expression.CompiledModel#evidence}). What chance decided once in its life is summed out
 *       before the pedigree sees it.
 *   <li>Loci that are handed down together are a unit ({@code Unit}), and what an animal carries there is one variable. A founder has the
 *       frequencies of its population, a kit what its parents pass on, among those that live ({@code Heredity}).
 *   <li>One box of an animal says something of each unit by itself. Only several boxes tie units together, and only at that animal. So
 *       the whole is a product of factors over few variables each ({@code KindredGraph}).
 *   <li>States that contradict a neighbour are struck out until nothing changes ({@code Elimination}); what is struck out is excluded.
 *   <li>What is left is summed along a tree of cliques ({@code CliqueTree}), whose cost is known before a table is made. So every chance is
 *       exact but for rounding.
 * </ol>
 */
@NullMarked
package org.geneticsrules.inference;

import org.jspecify.annotations.NullMarked;
