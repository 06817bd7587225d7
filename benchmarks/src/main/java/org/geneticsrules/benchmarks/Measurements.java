package org.geneticsrules.benchmarks;

import java.util.ArrayList;
import java.util.List;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * One run of the benchmarks, as JMH wrote it in JSON.
 *
 * <p>A time is the fastest iteration: other work on the machine can only make an iteration slower.
 */
final class Measurements {

    private static final JsonMapper JSON = JsonMapper.builder().build();
    private static final String BYTES = "gc.alloc.rate.norm";
    private static final String EXACT = "exact";

    private final JsonNode entries;

    private Measurements(JsonNode entries) {
        this.entries = entries;
    }

    static Measurements parse(String json) {
        return new Measurements(JSON.readTree(json));
    }

    /**
     * Keeps what the report needs and what may be published: no paths and no arguments of the machine's Java, but its number of cores,
     * which JMH does not write.
     */
    static String publishable(String jmh, int cores) {
        ArrayNode kept = JSON.createArrayNode();
        for (JsonNode entry : JSON.readTree(jmh)) {
            ObjectNode one = kept.addObject();
            for (String field : List.of("jmhVersion", "benchmark", "mode", "forks", "jdkVersion", "vmName")) {
                one.set(field, entry.path(field));
            }
            one.put("cores", cores);
            for (String field :
                    List.of("warmupIterations", "warmupTime", "measurementIterations", "measurementTime", "params")) {
                if (entry.has(field)) {
                    one.set(field, entry.path(field));
                }
            }
            ObjectNode primary = one.putObject("primaryMetric");
            for (String field : List.of("score", "scoreUnit", "rawData")) {
                primary.set(field, entry.path("primaryMetric").path(field));
            }
            primary.put(
                    "scoreError", entry.path("primaryMetric").path("scoreError").asString());
            ObjectNode secondary = one.putObject("secondaryMetrics");
            for (String metric : List.of(BYTES, EXACT)) {
                JsonNode measured = entry.path("secondaryMetrics").path(metric);
                if (!measured.isMissingNode()) {
                    ObjectNode copy = secondary.putObject(metric);
                    for (String field : List.of("score", "scoreUnit", "rawData")) {
                        copy.set(field, measured.path(field));
                    }
                }
            }
        }
        return JSON.writerWithDefaultPrettyPrinter().writeValueAsString(kept) + "\n";
    }

    /** The fastest iteration in microseconds per operation, or in the unit of the benchmark. */
    double time(String benchmark, String mating) {
        return least(find(benchmark, mating).path("primaryMetric"));
    }

    private static double least(JsonNode metric) {
        List<Double> iterations = new ArrayList<>();
        for (JsonNode fork : metric.path("rawData")) {
            fork.forEach(iteration -> iterations.add(iteration.asDouble()));
        }
        return iterations.stream().mapToDouble(Double::doubleValue).min().orElseThrow();
    }

    /** The mean of the iterations over the fastest: 1 on a machine that did nothing else. */
    double disturbance(String benchmark, String mating) {
        return find(benchmark, mating).path("primaryMetric").path("score").asDouble() / time(benchmark, mating);
    }

    /** Bytes allocated per operation in the iteration with the least, in which the harness adds least of its own. */
    double bytes(String benchmark, String mating) {
        return least(find(benchmark, mating).path("secondaryMetrics").path(BYTES));
    }

    /** The machine in words. */
    String machine() {
        JsonNode first = entries.path(0);
        return "JDK " + first.path("jdkVersion").asString() + " ("
                + first.path("vmName").asString() + "), "
                + first.path("cores").asInt() + " cores, JMH "
                + first.path("jmhVersion").asString() + ", "
                + first.path("forks").asInt() + " fork, "
                + first.path("warmupIterations").asInt() + " x "
                + first.path("warmupTime").asString() + " of warm-up, "
                + first.path("measurementIterations").asInt() + " iterations of "
                + first.path("measurementTime").asString();
    }

    /** What was asked about, such as a mating or a pedigree: the one parameter, if there is one. */
    private static String subject(JsonNode entry) {
        for (JsonNode only : entry.path("params")) {
            return only.asString();
        }
        return "";
    }

    /** The share of numbers that were exact, from 0 to 1. */
    double exact(String benchmark, String mating) {
        return least(find(benchmark, mating).path("secondaryMetrics").path(EXACT));
    }

    private JsonNode find(String benchmark, String mating) {
        for (JsonNode entry : entries) {
            if (entry.path("benchmark").asString().endsWith("." + benchmark)
                    && subject(entry).equals(mating)) {
                return entry;
            }
        }
        throw new IllegalArgumentException("the run has no " + benchmark + " of \"" + mating + "\"");
    }
}
