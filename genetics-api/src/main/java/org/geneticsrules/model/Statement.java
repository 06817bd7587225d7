package org.geneticsrules.model;

import java.util.Optional;
import org.geneticsrules.evidence.Evidence;
import org.geneticsrules.evidence.Grade;

/**
 * One statement of a model: the smallest part that has evidence of its own and that an answer can rest on.
 *
 * @param pointer its address in the model's document, a JSON Pointer such as {@code /traits/hue/cases/dark}
 * @param text what it states, in words
 * @param evidence its support, if any is stated
 */
public record Statement(String pointer, String text, Optional<Evidence> evidence) {

    /**
     * Returns the grade of the statement's evidence.
     *
     * @return the stated grade; {@link Grade#CONJECTURE} where no evidence is stated
     */
    public Grade grade() {
        return evidence.map(Evidence::grade).orElse(Grade.CONJECTURE);
    }

    /** Returns the pointer and the text. */
    @Override
    public String toString() {
        return pointer + ": " + text;
    }
}
