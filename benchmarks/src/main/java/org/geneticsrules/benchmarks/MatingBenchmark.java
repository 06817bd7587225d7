package org.geneticsrules.benchmarks;

import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
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

/** One mating of two full heterozygotes, all phenotypes listed, by the engine and by both baselines. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 5, time = 200, timeUnit = TimeUnit.MILLISECONDS)
@Measurement(iterations = 20, time = 50, timeUnit = TimeUnit.MILLISECONDS)
@Fork(1)
public class MatingBenchmark {

    /** The model and its number of loci. */
    @Param({
        "visible 2",
        "visible 3",
        "visible 4",
        "visible 5",
        "visible 6",
        "visible 7",
        "visible 8",
        "chain 2",
        "chain 3",
        "chain 4",
        "chain 5",
        "chain 6",
        "chain 7",
        "chain 8",
        "coat"
    })
    public String mating = "coat";

    private Contest contest = Contest.of("coat");

    /** Sets the mating up and makes sure that all three ways give the same chances. */
    @Setup
    public void setUp() {
        contest = Contest.of(mating).checked();
    }

    /**
     * The string square.
     *
     * @return boxes by phenotype
     */
    @Benchmark
    public Map<String, Integer> square() {
        return contest.square().count();
    }

    /**
     * The integer product.
     *
     * @return weights by phenotype code
     */
    @Benchmark
    public long[] product() {
        return contest.product().count();
    }

    /**
     * The engine, up to the distribution as callers get it.
     *
     * @return the distribution of phenotypes
     */
    @Benchmark
    public Distribution<Phenotype> answer() {
        return contest.engine();
    }

    /**
     * The engine, and every phenotype read with its exact chance in lowest terms. This is the time that is compared.
     *
     * @param blackhole takes what is read
     */
    @Benchmark
    public void listed(Blackhole blackhole) {
        read(contest.engine(), blackhole);
    }

    static void read(Distribution<Phenotype> answer, Blackhole blackhole) {
        for (Map.Entry<Phenotype, Probability> outcome : answer.asMap().entrySet()) {
            blackhole.consume(outcome.getKey());
            blackhole.consume(outcome.getValue());
        }
    }
}
