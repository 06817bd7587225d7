package org.geneticsrules.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A check of a registry that does not come to its end loses nothing and leaves nothing half-written. */
@Tag("default-jdk")
class UnfinishedRegistryTest {

    @TempDir
    private Path folder = Path.of("");

    private String kennel = "";

    @BeforeEach
    void write() throws IOException {
        kennel = file("kennel.csv", RecordedCommandsTest.KENNEL).toString();
    }

    private Path file(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    @Test
    void an_interrupted_batch_leaves_the_file_as_it_was() throws IOException {
        Path out = file("verdicts.csv", "as it was\n");
        Thread.currentThread().interrupt();
        Run run = Run.of("registry", "--alone", "--pedigree", kennel, "--out", out.toString());
        assertTrue(Thread.interrupted());
        assertEquals(ExitCodes.FAILED, run.code());
        assertTrue(run.err().startsWith("stopped: "), run.err());
        assertEquals("as it was\n", Files.readString(out));
        assertOnly("kennel.csv", "verdicts.csv");
    }

    /** The program is ended from outside, as by Ctrl-C, while it checks and about when it writes: the file is the old one or the whole new one. */
    @Test
    void a_killed_program_leaves_no_half_written_file() throws IOException, InterruptedException {
        StringBuilder many = new StringBuilder(RecordedCommandsTest.KENNEL);
        for (int i = 0; i < 24_000; i++) {
            many.append("A").append(i).append(",female,,,,dark\n");
        }
        kennel = file("many.csv", many.toString()).toString();
        Path out = file("verdicts.csv", "as it was\n");
        for (String progress : List.of(" %", "100 %")) {
            Process process = new ProcessBuilder(
                            ProcessHandle.current().info().command().orElse("java"),
                            "-cp",
                            System.getProperty("jdk.module.path", "")
                                    + File.pathSeparator
                                    + System.getProperty("java.class.path"),
                            Main.class.getName(),
                            "registry",
                            "--pedigree",
                            kennel,
                            "--out",
                            out.toString(),
                            "--progress",
                            "always")
                    .redirectOutput(folder.resolve("log").toFile())
                    .start();
            assertTrue(isTold(process, progress), "the program is ended while it runs");
            process.destroy();
            assertTrue(process.waitFor(60, TimeUnit.SECONDS));
            assertTrue(process.exitValue() != 0 || progress.equals("100 %"), "it was ended before it came to its end");
            assertEquals("", Files.readString(folder.resolve("log")).replaceAll("(?s)^Of 24006 animals.*", ""));
            String text = Files.readString(out, StandardCharsets.UTF_8);
            assertTrue(text.equals("as it was\n") || text.lines().count() == 24_007, text.length() + " characters");
        }
        assertOnly("kennel.csv", "log", "many.csv", "verdicts.csv");
    }

    /** Waits until the program says how far it has come. */
    private static boolean isTold(Process process, String progress) throws IOException {
        StringBuilder told = new StringBuilder();
        InputStream err = process.getErrorStream();
        for (int next = err.read(); next >= 0; next = err.read()) {
            told.append((char) next);
            if (told.indexOf(progress) >= 0) {
                assertTrue(told.toString().startsWith("\rchecking ["), told.toString());
                return true;
            }
        }
        return false;
    }

    private void assertOnly(String... names) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(
                    List.of(names),
                    files.map(path -> path.getFileName().toString()).sorted().toList());
        }
    }
}
