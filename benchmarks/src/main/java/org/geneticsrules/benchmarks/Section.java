package org.geneticsrules.benchmarks;

/** A part of the report, written from one run. */
interface Section {

    /** The name of the run whose measurements it tells, which are kept in {@code results/<name>.json}. */
    String run();

    /** Writes the part. */
    void write(Measurements run, Page page);
}
