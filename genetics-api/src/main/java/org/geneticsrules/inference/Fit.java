package org.geneticsrules.inference;

/** Whether records can all be true. */
enum Fit {
    FITS,
    CONTRADICTS,
    /** To tell would take more room than allowed. */
    UNDECIDED
}
