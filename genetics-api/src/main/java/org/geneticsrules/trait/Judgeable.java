package org.geneticsrules.trait;

/** Whether a trait can be told at a stage of life. */
public enum Judgeable {
    /** What is seen then is the state of the trait. */
    YES,
    /** It is too early: what is seen then says nothing of the trait. */
    NO,
    /** The stage does not state the count from which the trait can be told. */
    UNKNOWN
}
