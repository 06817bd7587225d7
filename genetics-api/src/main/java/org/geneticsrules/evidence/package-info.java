/**
 * How strongly a genetic statement is supported, by whom, and who disagrees.
 *
 * <p>Rules of inheritance are partly proven and partly belief. Each statement of a model may name one
 * {@link org.geneticsrules.evidence.Evidence}, which carries a {@link org.geneticsrules.evidence.Grade}, the claim in words, its
 * sources and the views that differ. An answer collects the evidence of exactly the statements it used and reports the weakest
 * grade among them.
 */
@NullMarked
package org.geneticsrules.evidence;

import org.jspecify.annotations.NullMarked;
