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

/**
 * What animals of a pedigree without loops carry at two loci of which one hides the other: the engine, which answers about all of them, and
 * a textbook network, which is asked about one.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class NetworkPedigreeBenchmark {

    private static final double RECORDED = 0.5;
    private static final double OTHERS = 0.45;

    /** The number of animals. */
    @Param({"epistasis 60", "epistasis 120", "epistasis 300"})
    public String pedigree = "epistasis 60";

    private final CompiledModel compiled = CompiledModel.of(Models.epistasis());
    private Pedigree drawn = Kennel.withoutLoops(compiled, 1, RECORDED, 1);
    private NetworkPedigree network = new NetworkPedigree(compiled, drawn);
    private String asked = "";
    private int[] order = {};
    private Pedigree others = drawn;
    private Inference prepared = Inference.of(compiled, drawn);

    /** Draws the pedigree and lays it out. */
    @Setup
    public void draw() {
        int animals = Integer.parseInt(pedigree.substring(pedigree.indexOf(' ') + 1));
        drawn = Kennel.withoutLoops(compiled, animals, RECORDED, 1);
        network = new NetworkPedigree(compiled, drawn);
        asked = drawn.order().get(0);
        order = network.order(asked, 0);
        // the same animals, of which others are recorded
        others = Kennel.withoutLoops(compiled, animals, OTHERS, 1);
        prepared = Inference.of(compiled, drawn);
        prepared.conclude();
    }

    /**
     * Concludes about every animal and locus.
     *
     * @return the conclusions
     */
    @Benchmark
    public Conclusions engine() {
        return Inference.of(compiled, drawn).conclude();
    }

    /**
     * Asks about one animal at one locus; the network is laid out before the clock starts.
     *
     * @return the chance of each genotype
     */
    @Benchmark
    public double[] network() {
        return network.query(asked, 0);
    }

    /**
     * Concludes about the same animals with other records, after the model has been met.
     *
     * @return the conclusions
     */
    @Benchmark
    public Conclusions engineAgain() {
        return prepared.about(others).conclude();
    }

    /**
     * Asks about one animal at one locus in an order of variables that was found before: what other records of the same animals cost.
     *
     * @return the chance of each genotype
     */
    @Benchmark
    public double[] networkAgain() {
        return network.sums(asked, 0, order);
    }
}
