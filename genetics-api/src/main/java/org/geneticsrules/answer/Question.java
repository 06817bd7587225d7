package org.geneticsrules.answer;

/**
 * The question an answer belongs to.
 *
 * @param kind a stable word, {@code mating} or {@code coat}
 * @param text the question in a sentence
 */
public record Question(String kind, String text) {}
