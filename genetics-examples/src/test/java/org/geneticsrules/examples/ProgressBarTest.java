package org.geneticsrules.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import org.geneticsrules.answer.recorded.Progress;
import org.junit.jupiter.api.Test;

class ProgressBarTest {

    /** A terminal shows each line over the one before. */
    @Test
    void each_line_covers_the_one_before() {
        StringWriter out = new StringWriter();
        Progress bar = ProgressBar.of("checking", new PrintWriter(out), "always");
        bar.at(1, 4);
        bar.left(1_000);
        bar.at(2, 4);
        bar.left(999);
        bar.at(2, 4);
        bar.left(1);
        bar.at(3, 4);
        bar.left(0);
        bar.at(4, 4);
        List<String> lines = List.of(
                out.toString().substring(1).replace(System.lineSeparator(), "").split("\r", -1));
        assertEquals(
                List.of(
                        " 25 %",
                        " 50 %, 1,000 groups of relatives left",
                        " 50 %, 999 groups of relatives left",
                        " 75 %, 1 group of relatives left",
                        "100 %, 0 groups of relatives left"),
                lines.stream()
                        .map(line -> line.substring(line.indexOf(']') + 2).stripTrailing())
                        .toList());
        for (int i = 1; i < lines.size(); i++) {
            assertTrue(lines.get(i).length() >= lines.get(i - 1).length(), lines.get(i));
        }
        assertTrue(out.toString().endsWith(System.lineSeparator()));
    }
}
