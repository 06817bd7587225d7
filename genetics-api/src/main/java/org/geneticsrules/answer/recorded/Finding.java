package org.geneticsrules.answer.recorded;

/** What was found out about recorded animals; which kind it is depends on the question. Immutable and thread-safe. */
public sealed interface Finding
        permits MayCarry, CarrierTrail, HowSure, Parentage, NextLitter, LookNext, Later, DnaTest {}
