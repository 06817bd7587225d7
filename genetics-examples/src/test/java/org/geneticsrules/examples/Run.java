package org.geneticsrules.examples;

import java.io.PrintWriter;
import java.io.StringWriter;

/**
 * One run of the program within the test.
 *
 * @param code the exit code
 * @param out what was printed
 * @param err what was reported
 */
record Run(int code, String out, String err) {

    static Run of(String... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Program.run(args, new PrintWriter(out), new PrintWriter(err));
        return new Run(code, out.toString(), err.toString());
    }
}
