package org.geneticsrules.problem;

import java.util.Optional;

/**
 * One thing that is wrong with a piece of input.
 *
 * <p>Immutable and thread-safe.
 *
 * @param stage the stage of checking that found it
 * @param code a stable word for programs, such as {@code unknown-allele}; it never changes between versions
 * @param pointer where, as a JSON Pointer (RFC 6901) into the document, or empty text for the whole
 * @param position where in the text, if it came from a text
 * @param message what is wrong, in a sentence with the values found
 * @param expected what was expected instead, if that can be said
 * @param nearest the nearest known name, if something unknown was named
 */
public record Problem(
        Stage stage,
        String code,
        String pointer,
        Optional<Position> position,
        String message,
        Optional<String> expected,
        Optional<String> nearest) {

    /**
     * Returns a problem with neither position, expectation nor nearest name.
     *
     * @param stage the stage of checking
     * @param code a stable word for programs
     * @param pointer where, as a JSON Pointer
     * @param message what is wrong
     * @return the problem
     */
    public static Problem of(Stage stage, String code, String pointer, String message) {
        return new Problem(stage, code, pointer, Optional.empty(), message, Optional.empty(), Optional.empty());
    }

    /**
     * Returns this problem with what was expected.
     *
     * @param what the expectation, as a phrase
     * @return a copy
     */
    public Problem expecting(String what) {
        return new Problem(stage, code, pointer, position, message, Optional.of(what), nearest);
    }

    /**
     * Returns this problem with the nearest known name.
     *
     * @param name the name, or empty if nothing known is near
     * @return a copy
     */
    public Problem near(Optional<String> name) {
        return new Problem(stage, code, pointer, position, message, expected, name);
    }

    /**
     * Returns this problem with its place in the text.
     *
     * @param place the place
     * @return a copy
     */
    public Problem at(Position place) {
        return new Problem(stage, code, pointer, Optional.of(place), message, expected, nearest);
    }

    /**
     * Returns this problem at another pointer.
     *
     * @param where a JSON Pointer
     * @return a copy
     */
    public Problem pointing(String where) {
        return new Problem(stage, code, where, position, message, expected, nearest);
    }

    /** Returns one line: place, message, expectation and nearest name, as far as they are known. */
    @Override
    public String toString() {
        StringBuilder line = new StringBuilder();
        position.ifPresent(place -> line.append(place).append(' '));
        if (!pointer.isEmpty()) {
            line.append(pointer).append(": ");
        }
        line.append(message);
        expected.ifPresent(what -> line.append("; expected ").append(what));
        nearest.ifPresent(name -> line.append("; did you mean \"").append(name).append("\"?"));
        return line.append(" [").append(code).append(']').toString();
    }
}
