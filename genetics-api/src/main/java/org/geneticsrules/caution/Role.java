package org.geneticsrules.caution;

import java.util.Locale;

/** Whose look a caution speaks about. */
public enum Role {
    /** The sire or the dam of a mating. */
    PARENT,
    /** A kit that may be born of it. */
    OFFSPRING,
    /** An animal asked about by itself. */
    ANIMAL;

    /**
     * Returns the word for this role in documents.
     *
     * @return for example {@code parent}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
