/**
 * Textbook models as a plug-in of their own: every model names the publication its ratio was taken from.
 *
 * <p>Nothing in the library knows these models; they are found by a {@link org.geneticsrules.spi.Registry} as any other plug-in's are.
 */
@NullMarked
package org.geneticsrules.examples.textbook;

import org.jspecify.annotations.NullMarked;
