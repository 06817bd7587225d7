package org.geneticsrules.vocabulary;

import java.util.Locale;
import org.geneticsrules.trait.BoxSet;

/** How the meaning of one name stands to that of another; the words are those of ISO 25964-2. */
public enum Match {
    /** Both mean the same. */
    EXACT,
    /** It means all that the other means, and more. */
    BROADER,
    /** It means a part of what the other means. */
    NARROWER,
    /** Some animals may be called by both, and others by one alone. */
    OVERLAPPING,
    /** No animal may be called by both. */
    NONE;

    /**
     * Compares two meanings.
     *
     * @param one the meaning that is spoken of
     * @param other a meaning in the same space
     * @return broader if {@code one} is broader than {@code other}, and so on; two empty meanings are the same
     */
    public static Match of(BoxSet one, BoxSet other) {
        boolean within = one.minus(other).isEmpty();
        boolean around = other.minus(one).isEmpty();
        if (within && around) {
            return EXACT;
        }
        if (around) {
            return BROADER;
        }
        if (within) {
            return NARROWER;
        }
        return one.and(other).isEmpty() ? NONE : OVERLAPPING;
    }

    /**
     * Returns the word for this match.
     *
     * @return for example {@code broader}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
