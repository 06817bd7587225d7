package org.geneticsrules.benchmarks;

import cc.mallet.grmm.inference.VariableElimination;
import cc.mallet.grmm.types.Factor;
import cc.mallet.grmm.types.FactorGraph;
import cc.mallet.grmm.types.Variable;
import java.util.ArrayList;
import java.util.List;
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
 * The textbook network that pedigrees are compared with, beside an outside library that does the same, one number of one network by variable
 * elimination, each laid out before the clock starts; and the engine, which answers about all animals and loci.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class OutsideNetworkBenchmark {

    private static final double RECORDED = 0.5;

    /** The number of animals. */
    @Param({"epistasis 15", "epistasis 30", "epistasis 40"})
    public String pedigree = "epistasis 15";

    private final CompiledModel compiled = CompiledModel.of(Models.epistasis());
    private Pedigree drawn = Kennel.withoutLoops(compiled, 1, RECORDED, 1);
    private NetworkPedigree network = new NetworkPedigree(compiled, drawn);
    private String asked = "";
    private FactorGraph graph = new FactorGraph();
    private final List<Variable> variables = new ArrayList<>();

    /** Draws the pedigree and lays it out twice. */
    @Setup
    public void draw() {
        int animals = Integer.parseInt(pedigree.substring(pedigree.indexOf(' ') + 1));
        drawn = Kennel.withoutLoops(compiled, animals, RECORDED, 1);
        network = new NetworkPedigree(compiled, drawn);
        asked = drawn.order().get(0);
        variables.clear();
        graph = network.outside(variables, asked, 0);
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
     * Asks the network of these benchmarks.
     *
     * @return the chance of each genotype
     */
    @Benchmark
    public double[] network() {
        return network.query(asked, 0);
    }

    /**
     * Asks the outside library.
     *
     * @return the weight of each genotype
     */
    @Benchmark
    public Factor library() {
        return new VariableElimination().unnormalizedMarginal(graph, variables.get(0));
    }
}
