package org.geneticsrules.hypothesis;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A statement in which two models differ.
 *
 * @param pointer the statement, by its pointer in the documents of the models
 * @param kind what became of it from the first model to the second
 * @param patch the id of the patch that changed it; empty if the models are compared without patches
 */
public record Change(String pointer, Kind kind, Optional<String> patch) {

    private static final List<String> PARTS = List.of("/dominance/", "/cases/", "/otherwise");

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

    /** Tells whether a statement that an answer cites is this one, holds it or lies in it. */
    boolean concerns(String cited) {
        if (kind == Kind.REPLACED && PARTS.stream().anyMatch(part -> cited.startsWith(pointer + part))) {
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
