package org.geneticsrules.answer;

/**
 * A view that differs from a statement the answer rests on. It is reported, not computed.
 *
 * @param statement pointer of the statement
 * @param view what is held instead
 */
public record Rival(String statement, String view) {}
