package org.geneticsrules.simulation;

/**
 * Thrown when something asked for did not come up in as many tries as were allowed, because it is impossible or nearly so. Nothing is
 * returned in its place.
 */
public final class TooRareException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /** How often it was tried. */
    private final long tries;

    /**
     * Makes the exception.
     *
     * @param what what did not come up, as a clause
     * @param tries how often it was tried
     * @param alternative what to ask instead, as a sentence
     */
    TooRareException(String what, long tries, String alternative) {
        super(what + " in " + tries + " tries; " + alternative);
        this.tries = tries;
    }

    /**
     * Returns how often it was tried.
     *
     * @return a positive number
     */
    public long tries() {
        return tries;
    }
}
