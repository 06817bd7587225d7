package org.geneticsrules.hypothesis;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A statement in which two models differ.
 *
 * @param pointer the statement, by its pointer in the documents of the models
 * @param kind what became of it from the first model to the second
 * @param patch the id of the patch that changed it; empty if the models are compared without patches
 * @param before what the first model states by it, in words
 * @param after what the second model states by it, in words
 */
public record Change(String pointer, Kind kind, Optional<String> patch, List<String> before, List<String> after) {

    /** What became of a statement. */
    public enum Kind {
        /** Only the second model makes it. */
        ADDED,
        /** Only the first model makes it. */
        REMOVED,
        /** Both make one of this name, but not the same. */
        REPLACED;

        /**
         * Returns the word for it.
         *
         * @return the name in small letters
         */
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * Copies the lists.
     *
     * @param pointer the statement
     * @param kind what became of it
     * @param patch the id of the patch that changed it
     * @param before what the first model states by it
     * @param after what the second model states by it
     */
    public Change {
        before = ImmutableList.copyOf(before);
        after = ImmutableList.copyOf(after);
    }

    /** Tells whether a statement that an answer cites is this one, holds it or lies in it. */
    boolean concerns(String cited) {
        if (kind == Kind.REPLACED
                && Differences.OWN_PARTS.stream().anyMatch(part -> cited.startsWith(pointer + part))) {
            return false; // a part that is a statement of its own, and a difference of its own if it differs
        }
        return cited.equals(pointer) || cited.startsWith(pointer + "/") || pointer.startsWith(cited + "/");
    }

    /** Returns the kind and the pointer, {@code replaced /loci/M/dominance}. */
    @Override
    public String toString() {
        return kind.word() + " " + pointer;
    }
}
