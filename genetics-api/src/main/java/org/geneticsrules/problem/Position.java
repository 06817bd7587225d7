package org.geneticsrules.problem;

/**
 * A place in a text.
 *
 * @param line line number, from 1
 * @param column column number in characters, from 1
 */
public record Position(int line, int column) {

    /**
     * Checks the ranges.
     *
     * @param line line number, from 1
     * @param column column number, from 1
     * @throws IllegalArgumentException if either is less than 1
     */
    public Position {
        if (line < 1 || column < 1) {
            throw new IllegalArgumentException("line and column count from 1, but were " + line + ":" + column);
        }
    }

    /** Returns {@code line:column}. */
    @Override
    public String toString() {
        return line + ":" + column;
    }
}
