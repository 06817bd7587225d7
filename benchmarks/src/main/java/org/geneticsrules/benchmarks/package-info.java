/**
 * Measurements of matings: the engine against two frozen baselines and an outside general-purpose engine that compute the same chances.
 *
 * <p>{@link org.geneticsrules.benchmarks.StringSquare} works as matings are taught, {@link
 * org.geneticsrules.benchmarks.IntegerProduct} as a good programmer would write it for one model at a time, {@link
 * org.geneticsrules.benchmarks.NetworkMating} as a network of chances. Before anything is timed
 * all four must agree. {@link org.geneticsrules.benchmarks.Results} turns what JMH wrote into the report.
 */
@NullMarked
package org.geneticsrules.benchmarks;

import org.jspecify.annotations.NullMarked;
