package org.geneticsrules.caution;

import java.util.Locale;

/** How two parents are related to one another, as far as it is stated. */
public enum Relation {
    /** Nobody said or knows. */
    UNKNOWN,
    /** Known to be unrelated as far back as records go. */
    UNRELATED,
    /** One is a parent of the other. */
    PARENT_OFFSPRING,
    /** Both parents in common. */
    SIBLINGS,
    /** One parent in common. */
    HALF_SIBLINGS;

    /**
     * Returns the word for this relation in documents.
     *
     * @return for example {@code half-siblings}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
