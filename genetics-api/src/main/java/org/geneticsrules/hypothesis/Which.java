package org.geneticsrules.hypothesis;

/** One of the two models compared. */
enum Which {
    BEFORE,
    AFTER
}
