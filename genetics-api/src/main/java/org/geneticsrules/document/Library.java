package org.geneticsrules.document;

/** What this library calls itself in documents that say by what they were written. Stateless and thread-safe. */
public final class Library {

    /** The version of this library, as its build states it; a test compares the two. */
    public static final String VERSION = "0.1.0-SNAPSHOT";

    private Library() {}
}
