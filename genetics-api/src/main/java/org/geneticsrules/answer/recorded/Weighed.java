package org.geneticsrules.answer.recorded;

/**
 * Something weighed by frequencies.
 *
 * @param origin where founders are taken to come from
 * @param found what was found by that
 */
record Weighed<T>(Origin origin, T found) {}
