package org.geneticsrules.examples.guide;

import java.io.PrintStream;

/** A piece of code that a page of the guide shows, with what it prints. */
@FunctionalInterface
public interface Sample {

    /**
     * Runs the sample.
     *
     * @param out where to print
     * @return what the sample is about, parts of which the page shows as a document
     */
    Shown run(PrintStream out);
}
