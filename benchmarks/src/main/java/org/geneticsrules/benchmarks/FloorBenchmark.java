package org.geneticsrules.benchmarks;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.Phenotype;
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
import org.openjdk.jmh.infra.Blackhole;

/** What no listing can go below: writing as many pairs of a phenotype and a weight to arrays, and reading them again. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 200, time = 2, timeUnit = TimeUnit.MILLISECONDS)
@Fork(1)
public class FloorBenchmark {

    /** The model and its number of loci. */
    @Param({"visible 6", "visible 8", "visible 10", "visible 12"})
    public String mating = "visible 6";

    private List<Phenotype> phenotypes = List.of();

    /** Lists the phenotypes of the model. */
    @Setup
    public void setUp() {
        Model model = Models.visible(Integer.parseInt(mating.substring(mating.indexOf(' ') + 1)));
        phenotypes = CompiledModel.of(model).diagram().outcomes();
    }

    /**
     * Writes and reads the pairs.
     *
     * @param blackhole takes what is read
     */
    @Benchmark
    public void pairs(Blackhole blackhole) {
        Phenotype[] keys = new Phenotype[phenotypes.size()];
        long[] weights = new long[keys.length];
        for (int i = 0; i < keys.length; i++) {
            keys[i] = phenotypes.get(i);
            weights[i] = i;
        }
        for (int i = 0; i < keys.length; i++) {
            blackhole.consume(keys[i]);
            blackhole.consume(weights[i]);
        }
    }
}
