package org.geneticsrules.examples;

/** Something on the command line or in a file cannot be used; carries the finished text for the error stream. */
final class InputException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final String text;

    InputException(String text) {
        super(text.strip());
        this.text = text.endsWith("\n") ? text : text + "\n";
    }

    String text() {
        return text;
    }
}
