/**
 * The ferret plug-in.
 *
 * <p>Everything it knows is in its documents: the traits that are observed, each by itself; rival models of one catalogue, the
 * default that of common practice, with the grade and the sources of every statement; and the cautions. The {@link org.geneticsrules.ferret.FerretProvider} serves them to a
 * {@link org.geneticsrules.spi.Registry}; there is no other code.
 */
@NullMarked
package org.geneticsrules.ferret;

import org.jspecify.annotations.NullMarked;
