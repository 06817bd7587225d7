/** Samples that the README shows; they are compiled and run by the tests, so that what is printed there is what happens. */
@NullMarked
package org.geneticsrules.examples.guide;

import org.jspecify.annotations.NullMarked;
