package org.geneticsrules.benchmarks;

import java.util.concurrent.TimeUnit;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Distribution;
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

/** The engine alone where the baselines would take seconds or more. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 5, time = 200, timeUnit = TimeUnit.MILLISECONDS)
@Measurement(iterations = 20, time = 50, timeUnit = TimeUnit.MILLISECONDS)
@Fork(1)
public class ScalingBenchmark {

    /** The model and its number of loci. */
    @Param({"visible 6", "visible 8", "visible 10", "visible 12", "chain 6", "chain 12", "chain 24", "chain 48"})
    public String mating = "chain 6";

    private Model model = Models.chain(6);
    private CompiledModel compiled = CompiledModel.of(model);
    private Genotype parent = Models.heterozygote(model);

    /** Compiles the model. */
    @Setup
    public void setUp() {
        int loci = Integer.parseInt(mating.substring(mating.indexOf(' ') + 1));
        model = mating.startsWith("chain") ? Models.chain(loci) : Models.visible(loci);
        compiled = CompiledModel.of(model);
        parent = Models.heterozygote(model);
    }

    /**
     * The engine, up to the distribution as callers get it.
     *
     * @return the distribution of phenotypes
     */
    @Benchmark
    public Distribution<Phenotype> answer() {
        return Cross.of(compiled, parent, parent).phenotypes();
    }

    /**
     * The engine, and every phenotype read with its exact chance in lowest terms.
     *
     * @param blackhole takes what is read
     */
    @Benchmark
    public void listed(Blackhole blackhole) {
        MatingBenchmark.read(Cross.of(compiled, parent, parent).phenotypes(), blackhole);
    }
}
