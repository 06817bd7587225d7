/**
 * From genotype to phenotype and back: a model made ready for questions.
 *
 * <p>A {@link org.geneticsrules.expression.CompiledModel} answers in two ways that are tested against each other.
 *
 * <p><b>One genotype</b> is interpreted step by step, so that every step can be told:
 *
 * <ol>
 *   <li>dominance gives the expression of each locus;
 *   <li>of each trait's cases the one that holds gives its own state;
 *   <li>the masks that are active are found from expressions and own states;
 *   <li>of the active masks that cover a trait, those that lie under no other active one give its shown state.
 * </ol>
 *
 * <p>A condition that reads a trait for which the model makes no claim is <i>unknown</i>, unless another of its variables already
 * makes it fail. A trait whose cases do not hold but one of which is unknown is not modelled, and so is a trait that a mask of
 * unknown activity covers. A mask that shows one constant state shows it even where the state beneath is not modelled.
 *
 * <p><b>All genotypes at once</b> are held in a {@link org.geneticsrules.expression.Diagram}: a decision diagram that tests
 * one locus after another, shares equal parts, skips loci that make no difference, and ends in the distinct phenotypes. Where one
 * locus masks many traits, it is tested early and the rest of the diagram is skipped; that is why a question costs as much as there
 * are things to tell apart, not as much as there are genotypes. The same diagram is read forwards to weigh phenotypes and backwards
 * to turn a phenotype into the disjoint boxes of expressions that show it.
 *
 * <p><b>The model itself</b> is reported on by {@link org.geneticsrules.expression.Completeness}, from the same diagrams and without
 * listing genotypes:
 *
 * <ol>
 *   <li>Own states, conditions, masks and shown states become diagrams once, over the sex, the season, all loci, and one draw for each
 *       case that is not certain. The draw of a progression has all states that its chain can be in at any count.
 *   <li>What can be is a union of a few products. Within a sex, each locus has the expressions of its genotypes in that sex. Within
 *       one count of a clock, each progression has the states it can be in then; these sets follow from one another, so they are
 *       followed until they recur, and of those that lie within others only the others are kept.
 *   <li>A diagram is restricted to such a product by taking a value that cannot be for the first that can, at each level by itself. Two
 *       restricted diagrams are one if and only if they agree wherever something can be.
 *   <li>What ends at the leaf <i>no claim</i> is a gap; the ways there are its disjoint boxes. A leaf that no restricted diagram
 *       has is reached by nobody: so cases, masks, classes of thresholds and states are told that never are. Restricted to the
 *       expressions of animals that can be born, to one season or to one count, the leaves that are left tell which states are bound to
 *       these.
 *   <li>Two expressions of a locus are told apart if some node that tests the locus leads on to different things from them, in the
 *       restricted diagram of a trait that is seen, or if different chances to live are stated for them. Genotypes are alike if their
 *       expressions are, and alleles if they are beside every other.
 * </ol>
 *
 * <p><b>What a look rests on</b> is told animal by animal by {@link org.geneticsrules.expression.Bearing}. One part of the model after
 * another is let say anything: its content is tested at a level of its own, below all levels of animals. An animal whose way through its
 * levels ends in a leaf looks the same whatever the part says; in the others the part is held to what is stated, before the next one is let
 * go. Loci, rules and masks are gone through apart.
 *
 * <p>A document whose statements contradict each other is no model, but it is a {@link org.geneticsrules.model.Draft}, which is reported
 * on in the same way with its contradictions.
 *
 * <p><b>Weights flow through a diagram</b> from the root to the leaves. Each node passes what arrives at it on to its targets, multiplied
 * by the weights of the values tested. Four ways do the same sum:
 *
 * <ol>
 *   <li>independent loci whose total fits a long: parts of the diagram that differ in nothing but their leaves are weighed once, and
 *       multiplied with what arrives at each of their places;
 *   <li>independent loci with a larger total: numbers of as many 64-bit digits as the depth of their place needs;
 *   <li>linked loci, sex and draws: one weight for each hidden state (which strand of either parent is read), over one total;
 *   <li>floating point: chances instead of weights, with powers of two of their own where they become very small, so that what is
 *       possible never becomes 0; a bound on the error comes along.
 * </ol>
 *
 * <p>The first two are carried out when a chance is first read. Until then an answer is the list of its factors, one for each locus.
 */
@NullMarked
package org.geneticsrules.expression;

import org.jspecify.annotations.NullMarked;
