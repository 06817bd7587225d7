package org.geneticsrules.benchmarks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The report says what was measured, and nothing about the machine that is not needed. */
class ResultsTest {

    private static final Path RUNS = Path.of("results");

    @Test
    void theReportIsWhatTheRunGives() throws IOException {
        assertEquals(Results.render(RUNS), Files.readString(Path.of("RESULTS.md")));
    }

    @Test
    void noRunHoldsPaths() throws IOException {
        try (Stream<Path> runs = Files.list(RUNS)) {
            for (Path run : runs.toList()) {
                String json = Files.readString(run);
                assertFalse(
                        json.contains("/lib/") || json.contains("\"jvm\"") || json.contains("jvmArgs"),
                        "a path of the machine in " + run);
            }
        }
    }

    @Test
    void theFastestIterationCounts() {
        Measurements run = Measurements.parse("""
                [{"benchmark": "a.B.c", "params": {"mating": "coat"},
                  "primaryMetric": {"score": 6.0, "rawData": [[4.0, 3.0, 11.0]]},
                  "secondaryMetrics": {"gc.alloc.rate.norm": {"score": 80.0, "rawData": [[96.0, 64.0]]}}}]
                """);
        assertEquals(3.0, run.time("B.c", "coat"));
        assertEquals(2.0, run.disturbance("B.c", "coat"));
        assertEquals(64.0, run.bytes("B.c", "coat"));
        assertThrows(IllegalArgumentException.class, () -> run.time("B.c", "chain 6"));
    }

    @Test
    void whatIsPublishedLeavesOutWhereJavaIs() {
        String published = Measurements.publishable("""
                [{"benchmark": "a.B.c", "jvm": "/usr/lib/java", "jvmArgs": ["-Dx=/y"], "forks": 1,
                  "primaryMetric": {"score": 6.0, "scoreError": "NaN", "scoreUnit": "us/op", "rawData": [[6.0]]},
                  "secondaryMetrics": {"gc.alloc.rate.norm": {"score": 64.0, "scoreUnit": "B/op"}}}]
                """, 2);
        assertFalse(published.contains("/usr") || published.contains("jvm\""), published);
        assertEquals(6.0, Measurements.parse(published).time("B.c", ""));
    }
}
