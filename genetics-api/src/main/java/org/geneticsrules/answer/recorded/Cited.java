package org.geneticsrules.answer.recorded;

import org.geneticsrules.inference.RecordRef;

/**
 * A record that an answer speaks of.
 *
 * @param record which one
 * @param pointer where it stands in the document of the pedigree, as a JSON Pointer
 * @param words what it says, as a noun with its article: {@code the look of "Kit 3" (eye colour: pink)}
 */
public record Cited(RecordRef record, String pointer, String words) {

    /** Returns the words. */
    @Override
    public String toString() {
        return words;
    }
}
