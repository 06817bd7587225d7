package org.geneticsrules.explanation;

/** A step on the way to an answer. Immutable and thread-safe. */
public sealed interface Reason permits ParentsCase, AnimalCase, Way, Look, Miss {}
