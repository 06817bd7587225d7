package org.geneticsrules.benchmarks;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.inference.Conclusions;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.trait.Confusions;
import org.openjdk.jmh.annotations.AuxCounters;
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

/** All posteriors and the log-likelihood of three pedigrees of one kind, of which half the animals are recorded by all traits. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(value = 1, jvmArgs = "-Xmx1g")
public class PedigreeBenchmark {

    private static final double RECORDED = 0.5;
    static final int FOUNDERS = 20;
    static final int SEEDS = 3;

    /** The kind of pedigree and its number of animals. */
    @Param({
        "loop-free 1000",
        "loop-free 10000",
        "loop-free 100000",
        "misread 1000",
        "misread 10000",
        "kennel 100",
        "kennel 200",
        "kennel 300",
        "kennel 500",
        "kennel 1000",
        "kennel 5000"
    })
    public String pedigree = "loop-free 1000";

    private CompiledModel compiled = CompiledModel.of(Models.recordedCoat());
    private final List<Pedigree> pedigrees = new ArrayList<>();
    private Confusions confusions = Confusions.none();
    private double exact;

    /** How much of it was exact. */
    @State(Scope.Thread)
    @AuxCounters(AuxCounters.Type.EVENTS)
    public static class Counted {
        /** The share of numbers that are exact, from 0 to 1. */
        public double exact;
    }

    /** Draws the pedigrees. */
    @Setup
    public void draw() {
        int animals = Integer.parseInt(pedigree.substring(pedigree.indexOf(' ') + 1));
        boolean misread = pedigree.startsWith("misread");
        compiled = CompiledModel.of(misread ? Models.epistasis() : Models.recordedCoat());
        confusions = misread ? Models.misread() : Confusions.none();
        for (int seed = 1; seed <= SEEDS; seed++) {
            pedigrees.add(
                    pedigree.startsWith("kennel")
                            ? Kennel.inbred(compiled, animals, FOUNDERS, RECORDED, seed)
                            : Kennel.withoutLoops(compiled, animals, RECORDED, seed));
        }
        exact = share(conclude());
    }

    /**
     * Concludes about every animal and locus of three pedigrees, from their records on.
     *
     * @param counted how much of it was exact
     * @return the conclusions
     */
    @Benchmark
    public List<Conclusions> conclusions(Counted counted) {
        List<Conclusions> all = conclude();
        counted.exact = exact; // found out beforehand: asking for every standing takes time of its own
        return all;
    }

    private List<Conclusions> conclude() {
        List<Conclusions> all = new ArrayList<>();
        for (Pedigree one : pedigrees) {
            all.add(Inference.of(compiled, one).with(confusions).conclude());
        }
        return all;
    }

    private double share(List<Conclusions> all) {
        double exact = 0;
        double numbers = 0;
        for (int i = 0; i < all.size(); i++) {
            for (String animal : pedigrees.get(i).individuals().keySet()) {
                for (String locus : compiled.model().loci().keySet()) {
                    exact += all.get(i).standing(animal, locus) == Standing.EXACT ? 1 : 0;
                    numbers++;
                }
            }
        }
        return exact / numbers;
    }
}
