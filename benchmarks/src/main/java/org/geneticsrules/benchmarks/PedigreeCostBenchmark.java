package org.geneticsrules.benchmarks;

import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.LongStream;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.inference.Conclusions;
import org.geneticsrules.inference.Inference;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** What the posteriors of three inbred kennels would cost, found out without making a table. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class PedigreeCostBenchmark {

    /** The number of animals. */
    @Param({"kennel 1000", "kennel 5000"})
    public String pedigree = "kennel 1000";

    private List<Inference> questions = List.of();

    /** Draws the kennels. */
    @Setup
    public void draw() {
        CompiledModel compiled = CompiledModel.of(Models.recordedCoat());
        int animals = Integer.parseInt(pedigree.substring(pedigree.indexOf(' ') + 1));
        questions = LongStream.rangeClosed(1, PedigreeBenchmark.SEEDS)
                .mapToObj(seed -> Inference.of(
                                compiled, Kennel.inbred(compiled, animals, PedigreeBenchmark.FOUNDERS, 0.5, seed))
                        .within(1))
                .toList();
    }

    /**
     * Finds out what it would cost.
     *
     * @return conclusions without numbers wherever a table would be needed
     */
    @Benchmark
    public List<Conclusions> estimate() {
        return questions.stream().map(Inference::conclude).toList();
    }
}
