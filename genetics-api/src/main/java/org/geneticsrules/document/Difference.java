package org.geneticsrules.document;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;

/**
 * One thing that is otherwise in another version of a document.
 *
 * <p>Immutable and thread-safe.
 *
 * @param kind what became of it
 * @param place where it stands, from the outside in: names of members, and of an item of a list the name that tells it from the others,
 *     or else its number, from 1
 * @param pointerBefore its JSON Pointer (RFC 6901) in the first document; none if it was added
 * @param pointerAfter its JSON Pointer in the second; none if it was removed
 * @param before what stood there; of a list in another order, what its items go by
 * @param after what stands there now
 */
public record Difference(
        Kind kind,
        List<String> place,
        Optional<String> pointerBefore,
        Optional<String> pointerAfter,
        Optional<Node> before,
        Optional<Node> after) {

    /** What became of a part of a document. */
    public enum Kind {
        /** It stands in the second document only. */
        ADDED("added"),
        /** It stands in the first document only. */
        REMOVED("removed"),
        /** It says something else. */
        CHANGED("changed"),
        /** A list has the same items in another order. */
        REORDERED("reordered");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        /**
         * Returns the word that stands in documents.
         *
         * @return for example {@code changed}
         */
        public String word() {
            return word;
        }
    }

    /**
     * Copies the place.
     *
     * @param kind what became of it
     * @param place where it stands
     * @param pointerBefore its pointer in the first document
     * @param pointerAfter its pointer in the second
     * @param before what stood there
     * @param after what stands there now
     */
    public Difference {
        place = ImmutableList.copyOf(place);
    }
}
