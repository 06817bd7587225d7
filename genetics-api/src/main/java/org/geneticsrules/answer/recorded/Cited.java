package org.geneticsrules.answer.recorded;

import org.geneticsrules.inference.RecordRef;

/**
 * A record that an answer speaks of.
 *
 * @param record which one
 * @param words what it says, as a noun with its article: {@code the look of "Kit 3" (eye colour: pink)}
 */
public record Cited(RecordRef record, String words) {

    /** Returns the words. */
    @Override
    public String toString() {
        return words;
    }
}
