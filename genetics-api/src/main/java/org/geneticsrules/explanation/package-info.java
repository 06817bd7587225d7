/**
 * Why: reasons as plain records that a person can read and a program can check.
 *
 * <p>A chance comes with the numbers it was made of. {@link org.geneticsrules.explanation.ParentsCase} says what the parents pass on
 * at each locus; each {@link org.geneticsrules.explanation.Way} to a phenotype names the expressions it needs, the chance of each, and
 * their product; the chance of a phenotype is the sum over its ways. Somebody who has only these records and the model's document can
 * multiply and add them again.
 *
 * <p>A look comes with its {@linkplain org.geneticsrules.expression.TraitTrace traces}. What cannot be seen is named too: a
 * {@link org.geneticsrules.explanation.Hidden} locus is one at which another genotype would look the same, with the
 * {@linkplain org.geneticsrules.explanation.Cause cause}: a dominant allele, a mask, or another locus with the same look.
 */
@NullMarked
package org.geneticsrules.explanation;

import org.jspecify.annotations.NullMarked;
