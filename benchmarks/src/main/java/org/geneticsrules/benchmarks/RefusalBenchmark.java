package org.geneticsrules.benchmarks;

import java.util.concurrent.TimeUnit;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.TooLargeException;
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

/** How long a model is worked on whose rules explode, until it is refused. The goal is 2 s. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class RefusalBenchmark {

    /** The model and its number of loci. */
    @Param({"visible 40", "tied 42"})
    public String mating = "visible 40";

    private Model model = Models.visible(1);

    /** Builds the model. */
    @Setup
    public void setUp() {
        int loci = Integer.parseInt(mating.substring(mating.indexOf(' ') + 1));
        model = mating.startsWith("tied") ? Models.tied(loci) : Models.visible(loci);
    }

    /**
     * Asks for all phenotypes.
     *
     * @return the refusal
     */
    @Benchmark
    public TooLargeException refusal() {
        try {
            throw new IllegalStateException(
                    "not refused, with " + CompiledModel.of(model).diagram().size() + " tests");
        } catch (TooLargeException refusal) {
            return refusal;
        }
    }
}
