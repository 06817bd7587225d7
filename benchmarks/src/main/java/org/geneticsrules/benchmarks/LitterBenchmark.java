package org.geneticsrules.benchmarks;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.inference.LitterLikelihood;
import org.geneticsrules.inference.LitterLikelihood.Seen;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.trait.Phenotype;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** How likely litters are to be recorded as they were: two recorded parents and six recorded kits at six loci, sixteen litters drawn with a seed. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class LitterBenchmark {

    static final int LITTERS = 16;
    private static final int KITS = 6;

    private record Recorded(Seen sire, Seen dam, List<Seen> kits) {}

    private final CompiledModel compiled = CompiledModel.of(Models.recordedCoat());
    private final List<Recorded> recorded = new ArrayList<>();
    private final List<ListedLitter> listed = new ArrayList<>();
    private LitterLikelihood likelihood =
            Inference.of(compiled, Kennel.withoutLoops(compiled, 1, 1, 1)).litters();

    /** Draws the litters. */
    @Setup
    public void draw() {
        recorded.clear();
        listed.clear();
        likelihood =
                Inference.of(compiled, Kennel.withoutLoops(compiled, 1, 1, 1)).litters();
        for (long seed = 1; recorded.size() < LITTERS; seed++) {
            Pedigree drawn = Kennel.litter(compiled, KITS, seed);
            Litter litter = drawn.litters().values().iterator().next();
            Individual sire = drawn.individual(((Paternity.Known) litter.sires()).sire());
            Individual dam = drawn.individual(litter.dam().orElseThrow());
            // without their sexes, of which lists of genotypes know nothing
            List<Individual> kits = litter.kits().stream()
                    .map(kit -> Individual.of(kit)
                            .with(drawn.individual(kit).observations().get(0)))
                    .toList();
            recorded.add(new Recorded(
                    likelihood.sire(sire),
                    likelihood.dam(dam),
                    kits.stream().map(likelihood::kit).toList()));
            listed.add(new ListedLitter(
                    compiled,
                    look(sire),
                    look(dam),
                    kits.stream().map(LitterBenchmark::look).toList()));
        }
    }

    private static Phenotype look(Individual one) {
        return one.observations().get(0).looks().iterator().next();
    }

    /**
     * The engine.
     *
     * @return the sum of the logarithms
     */
    @Benchmark
    public double engine() {
        double sum = 0;
        for (Recorded one : recorded) {
            sum += likelihood.log(one.sire(), one.dam(), one.kits());
        }
        return sum;
    }

    /**
     * All pairs of genotypes at all loci.
     *
     * @return the sum of the logarithms
     */
    @Benchmark
    public double jointly() {
        double sum = 0;
        for (ListedLitter one : listed) {
            sum += Math.log(one.jointly());
        }
        return sum;
    }

    /**
     * All pairs of genotypes, locus by locus.
     *
     * @return the sum of the logarithms
     */
    @Benchmark
    public double byLocus() {
        double sum = 0;
        for (ListedLitter one : listed) {
            sum += Math.log(one.byLocus());
        }
        return sum;
    }
}
