package org.geneticsrules.examples.guide;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.geneticsrules.examples.Program;
import org.junit.jupiter.api.Test;

/** What the README shows is what the code says and prints. */
class ReadmeTest {

    @Test
    void the_sample_is_the_compiled_one() throws IOException {
        String source = Files.readString(
                Path.of("src", "main", "java", "org", "geneticsrules", "examples", "guide", "Embedding.java"));
        String sample = source.substring(source.indexOf("// sample") + "// sample".length(), source.indexOf("// end"));
        assertEquals(sample.stripIndent().strip(), block("## Embed", 0));
    }

    @Test
    void the_output_of_the_sample_is_what_it_prints() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        Embedding.run(new PrintStream(bytes, true, StandardCharsets.UTF_8));
        assertEquals(lines(bytes.toString(StandardCharsets.UTF_8)), lines(block("## Embed", 1)));
    }

    @Test
    void the_excerpt_of_the_demo_is_what_it_prints() throws IOException {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        assertEquals(0, Program.run(new String[] {"demo"}, new PrintWriter(out), new PrintWriter(err)), err::toString);
        List<String> printed = lines(out.toString());
        for (String line : lines(block("## Run", 1))) {
            assertTrue(printed.contains(line), () -> "the demo does not print: " + line);
        }
    }

    private static List<String> lines(String text) {
        return text.lines()
                .map(String::stripTrailing)
                .filter(line -> !line.isEmpty())
                .toList();
    }

    /** The content of a fenced block of a section, counted from 0. */
    private static String block(String section, int number) throws IOException {
        List<String> blocks = new ArrayList<>();
        List<String> inside = null;
        boolean here = false;
        for (String line : Files.readAllLines(Path.of("..", "README.md"))) {
            if (line.startsWith("## ")) {
                here = line.equals(section);
            } else if (here && line.startsWith("```")) {
                if (inside == null) {
                    inside = new ArrayList<>();
                } else {
                    blocks.add(inside.stream().collect(Collectors.joining("\n")));
                    inside = null;
                }
            } else if (inside != null) {
                inside.add(line);
            }
        }
        return blocks.get(number).strip();
    }
}
