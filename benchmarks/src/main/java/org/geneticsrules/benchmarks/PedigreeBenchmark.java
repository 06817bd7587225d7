package org.geneticsrules.benchmarks;

import java.util.concurrent.TimeUnit;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.inference.Conclusions;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.pedigree.Pedigree;
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

/** All posteriors of a pedigree without loops and of an inbred kennel, of which half the animals are recorded by six traits. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(value = 1, jvmArgs = "-Xmx1g")
public class PedigreeBenchmark {

    private static final double RECORDED = 0.5;
    private static final int FOUNDERS = 20;

    /** How many animals there are. */
    @Param({"1000", "10000"})
    public int animals;

    /** Whether relations form loops. */
    @Param({"false", "true"})
    public boolean inbred;

    private final CompiledModel compiled = CompiledModel.of(Models.recordedCoat());
    private Pedigree pedigree = Kennel.withoutLoops(compiled, 1, RECORDED, 1);

    /** Draws the pedigree. */
    @Setup
    public void draw() {
        pedigree = inbred
                ? Kennel.inbred(compiled, animals, FOUNDERS, RECORDED, 1)
                : Kennel.withoutLoops(compiled, animals, RECORDED, 1);
    }

    /**
     * Concludes about every animal and locus.
     *
     * @return the conclusions
     */
    @Benchmark
    public Conclusions conclusions() {
        return Inference.of(compiled, pedigree).conclude();
    }
}
