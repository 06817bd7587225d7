package org.geneticsrules.benchmarks;

import java.util.concurrent.TimeUnit;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;
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
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 200, time = 2, timeUnit = TimeUnit.MILLISECONDS)
@Fork(1)
public class CompileBenchmark {

    private final Model model = Models.coat();
    private final Genotype parent = Models.heterozygote(model);
    private final Phenotype phenotype = Contest.last(CompiledModel.of(model));

    /**
     * Compiles the coat model for all its visible traits, with all that is laid out for a first mating, which is included.
     *
     * @return a chance
     */
    @Benchmark
    public Probability coat() {
        CompiledModel compiled = CompiledModel.of(model);
        return Cross.of(compiled, parent, parent).phenotypes().probability(phenotype);
    }
}
