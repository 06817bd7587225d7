package org.geneticsrules.benchmarks;

import java.util.concurrent.TimeUnit;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Approximation;
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

/** The engine alone where the baselines would take seconds or more. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 200, time = 2, timeUnit = TimeUnit.MILLISECONDS)
@Fork(1)
public class ScalingBenchmark {

    /** The model and its number of loci. */
    @Param({
        "visible 6",
        "visible 8",
        "visible 10",
        "visible 12",
        "chain 6",
        "chain 12",
        "chain 24",
        "chain 31",
        "chain 32",
        "chain 48",
        "chain 100",
        "threshold 10",
        "threshold 20",
        "threshold 40",
        "group 3",
        "group 6",
        "group 12"
    })
    public String mating = "chain 6";

    private CompiledModel compiled = CompiledModel.of(Models.chain(6));
    private Genotype parent = Models.heterozygote(compiled.model());
    private Phenotype last = Phenotype.unspecified();

    /** Compiles the model. */
    @Setup
    public void setUp() {
        int loci = Integer.parseInt(mating.substring(mating.indexOf(' ') + 1));
        Model model = switch (mating.substring(0, mating.indexOf(' '))) {
            case "visible" -> Models.visible(loci);
            case "threshold" -> Models.threshold(loci);
            case "group" -> Models.group(loci);
            default -> Models.chain(loci);
        };
        compiled = CompiledModel.of(model);
        parent = mating.startsWith("group") ? Models.coupled(model) : Models.heterozygote(model);
        last = Contest.last(compiled);
    }

    Cross cross() {
        return Cross.of(compiled, parent, parent);
    }

    /**
     * The engine, with the weights of all phenotypes worked out.
     *
     * @return one of the chances, which makes the engine multiply all of them out
     */
    @Benchmark
    public Probability answer() {
        return cross().phenotypes().probability(last);
    }

    /**
     * The same in floating point.
     *
     * @return the chances
     */
    @Benchmark
    public Approximation<Phenotype> doubles() {
        return cross().approximate();
    }
}
