package org.geneticsrules.expression;

import java.util.Locale;

/** Which of the kits conceived are counted, where a model states viability. */
public enum Census {
    /** All that are conceived. */
    CONCEIVED,
    /** Those that are born. */
    BORN,
    /** Those that live until their litter is scored. */
    SCORED;

    /**
     * Returns the word for it.
     *
     * @return the name in small letters
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
