package org.geneticsrules.benchmarks;

import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.geneticsrules.probability.Approximation;
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

/** One mating of two full heterozygotes, all phenotypes listed, by the engine, both baselines and a general-purpose engine. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 200, time = 2, timeUnit = TimeUnit.MILLISECONDS)
@Fork(1)
public class MatingBenchmark {

    /** The model and its number of loci. */
    @Param({"visible 6", "visible 10", "chain 6", "chain 10", "coat"})
    public String mating = "coat";

    private Contest contest = Contest.of("coat");
    private Phenotype last = Phenotype.unspecified();

    /** Sets the mating up and makes sure that all ways give the same chances. */
    @Setup
    public void setUp() {
        contest = Contest.of(mating).checked();
        last = Contest.last(contest.compiled());
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
     * The general-purpose engine.
     *
     * @return chances by phenotype code
     */
    @Benchmark
    public double[] network() {
        return contest.network().count();
    }

    /**
     * The engine's answer as a product of one factor for each locus, of which nothing is read.
     *
     * @return the distribution of phenotypes
     */
    @Benchmark
    public Distribution<Phenotype> factors() {
        return contest.engine();
    }

    /**
     * The engine, with the weights of all phenotypes worked out, as the baselines have them. This is the time that is compared.
     *
     * @return one of the chances, which makes the engine multiply all of them out
     */
    @Benchmark
    public Probability answer() {
        return contest.engine().probability(last);
    }

    /**
     * The same in floating point.
     *
     * @return the chances
     */
    @Benchmark
    public Approximation<Phenotype> doubles() {
        return contest.cross().approximate();
    }

    /**
     * The engine, and every phenotype read with its exact chance in lowest terms.
     *
     * @param blackhole takes what is read
     */
    @Benchmark
    public void listed(Blackhole blackhole) {
        read(contest.engine(), blackhole);
    }

    static void read(Distribution<Phenotype> answer, Blackhole blackhole) {
        answer.asMap().forEach((phenotype, chance) -> {
            blackhole.consume(phenotype);
            blackhole.consume(chance);
        });
    }
}
