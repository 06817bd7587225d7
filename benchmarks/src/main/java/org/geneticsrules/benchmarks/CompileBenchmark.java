package org.geneticsrules.benchmarks;

import java.util.concurrent.TimeUnit;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Diagram;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.Phenotype;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** What is spent once per model, before the first mating. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 5, time = 200, timeUnit = TimeUnit.MILLISECONDS)
@Measurement(iterations = 20, time = 50, timeUnit = TimeUnit.MILLISECONDS)
@Fork(1)
public class CompileBenchmark {

    private final Model model = Models.coat();

    /**
     * Compiles the coat model for all its visible traits.
     *
     * @return the finished diagram
     */
    @Benchmark
    public Diagram<Phenotype> coat() {
        return CompiledModel.of(model).diagram(model.visibleTraits());
    }
}
