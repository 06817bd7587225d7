package org.geneticsrules.simulation;

/** Which animals are looked at or tested: parents are often seen grown up and tested, and their kits seen young. */
public enum Whom {
    /** Everybody. */
    ALL,
    /** Animals that come from no litter that is drawn: founders, and parents who are not recorded. */
    FOUNDERS,
    /** Animals that come from a litter that is drawn. */
    KITS;

    /** Whether an animal is among them. */
    boolean include(boolean founder) {
        return this == ALL || (this == FOUNDERS) == founder;
    }
}
