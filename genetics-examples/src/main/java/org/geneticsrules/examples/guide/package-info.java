/** Samples that the guide and the README show; tests run them, so that what is printed there is what happens. */
@NullMarked
package org.geneticsrules.examples.guide;

import org.jspecify.annotations.NullMarked;
