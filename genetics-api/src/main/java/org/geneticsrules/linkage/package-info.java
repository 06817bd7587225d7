/**
 * How loci are handed down together: on which chromosome, and how often neighbours are separated.
 *
 * <p>A {@link org.geneticsrules.linkage.LinkageGroup} lists loci in map order. Its {@link org.geneticsrules.linkage.Transmission}
 * says how many strands each sex has and which parent hands one down. Between neighbours stands a recombination fraction, an exact
 * number from 0 (never separated) to 1/2 (independent), per sex of the parent if need be. From these a gamete is made as a Markov
 * chain: it starts on either strand of the parent with 1/2, and in each interval changes to the other strand with the fraction.
 * Crossovers in different intervals are then independent (no interference, Haldane 1919); a group that knows better states a table of
 * crossover patterns instead.
 *
 * <p>All types are immutable and thread-safe.
 */
@NullMarked
package org.geneticsrules.linkage;

import org.jspecify.annotations.NullMarked;
