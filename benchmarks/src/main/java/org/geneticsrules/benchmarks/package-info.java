/**
 * Measurements of matings: the engine against two frozen baselines that compute the same chances.
 *
 * <p>{@link org.geneticsrules.benchmarks.StringSquare} works as matings are taught, {@link
 * org.geneticsrules.benchmarks.IntegerProduct} as a good programmer would write it for one model at a time. Before anything is timed
 * all three must agree. {@link org.geneticsrules.benchmarks.Results} turns what JMH wrote into the report.
 */
@NullMarked
package org.geneticsrules.benchmarks;

import org.jspecify.annotations.NullMarked;
