package org.geneticsrules.answer;

import java.util.Locale;

/** How the numbers of an answer were come by. */
public enum Status {
    /** Computed exactly. */
    EXACT,
    /** Estimated by sampling; the answer states the standard error. */
    SAMPLED,
    /** Not decided: frequencies are missing, or what is given contradicts itself. The answer says which. */
    UNDECIDED;

    /**
     * Returns the word for this status in documents.
     *
     * @return for example {@code exact}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
