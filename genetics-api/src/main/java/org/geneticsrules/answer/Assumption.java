package org.geneticsrules.answer;

/**
 * Something an answer takes for granted.
 *
 * @param id a stable word by which it can be named, for example {@code unlinked-loci}
 * @param text what is assumed, as a sentence
 * @param otherwise what would change if it did not hold, as a sentence
 */
public record Assumption(String id, String text, String otherwise) {}
