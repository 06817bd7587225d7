package org.geneticsrules.answer;

import org.geneticsrules.document.Reference;

/**
 * What a rival model answers to the same question, where that is not what the answer says.
 *
 * @param title what is held instead, in a few words
 * @param model the rival model
 * @param verdict its answer in one sentence
 */
public record RivalVerdict(String title, Reference model, String verdict) {}
