/**
 * What is wrong with a piece of input, said so that its author can mend it.
 *
 * <p>Input is checked in four {@linkplain org.geneticsrules.problem.Stage stages}: syntax, shape, references, meaning. All
 * {@linkplain org.geneticsrules.problem.Problem problems} of the first stage that has any are reported together in one
 * {@link org.geneticsrules.problem.ProblemsException}; later stages would only repeat them in other words. (Syntax stops at its
 * first problem, because nothing after it can be read with confidence.)
 */
@NullMarked
package org.geneticsrules.problem;

import org.jspecify.annotations.NullMarked;
