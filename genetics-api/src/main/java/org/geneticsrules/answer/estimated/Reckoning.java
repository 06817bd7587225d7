package org.geneticsrules.answer.estimated;

/**
 * A value reckoned in another way, or from the estimate, that stands beside it.
 *
 * @param words what it is and how it was reckoned, for example {@code share among all that were counted, which is no estimate}
 * @param value the value
 */
public record Reckoning(String words, double value) {}
