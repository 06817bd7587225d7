/**
 * The runnable program: questions about matings and coats from the command line, and a check of one's own documents.
 *
 * <p>Each command is a class that turns its options into one question, asks it, and prints the answer as text or as its document. What
 * cannot be understood is reported on the error stream as problems, and the exit code says how it went
 * ({@link org.geneticsrules.examples.ExitCodes}).
 */
@NullMarked
package org.geneticsrules.examples;

import org.jspecify.annotations.NullMarked;
