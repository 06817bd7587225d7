package org.geneticsrules.examples;

/** How a run of the program ended. */
public final class ExitCodes {

    /** The question was answered; "impossible" is an answer. A check found nothing wrong. */
    public static final int ANSWERED = 0;

    /** The answer is that it cannot be decided: what was stated contradicts itself, frequencies are missing, or the records tell too little. */
    public static final int UNDECIDED = 1;

    /** Two answers that were compared differ. */
    public static final int DIFFERENT = 1;

    /** The command line, a genotype, a look or a document could not be understood. */
    public static final int NOT_UNDERSTOOD = 2;

    /** The question was refused before the work was begun, because an exact answer would take too much of it. */
    public static final int TOO_LARGE = 3;

    /** The program itself failed. */
    public static final int FAILED = 4;

    private ExitCodes() {}
}
