package org.geneticsrules.benchmarks;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.comparison.ComparedModels;
import org.geneticsrules.comparison.ModelComparison;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Model;
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
 * How long it takes to say which of several models records of litters favour: couples with two litters of six, all recorded, at six loci or at
 * the one of hair, where many families are recorded alike.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 1)
@Measurement(iterations = 1)
@Fork(value = 1, jvmArgs = "-Xmx14g")
public class ComparisonBenchmark {

    static final int KITS = 6;

    /** How many litters are held against how many models, and by which traits. */
    @Param({
        "10000 litters, 10 models",
        "100000 litters, 10 models",
        "1000000 litters, 10 models",
        "100000 litters, 1 models",
        "100000 litters, 5 models",
        "1000000 litters, 10 models, hair"
    })
    public String records = "10000 litters, 10 models";

    private final List<Candidate> candidates = new ArrayList<>();
    private Pedigree drawn = Pedigree.builder("none", "1").build();

    /** Draws the litters. */
    @Setup
    public void draw() {
        String[] words = records.replace(",", "").split(" ", -1);
        candidates.clear();
        for (Model model : Models.hypotheses().subList(0, Integer.parseInt(words[2]))) {
            candidates.add(Candidate.of(CompiledModel.of(model)).called("model " + candidates.size()));
        }
        drawn = Kennel.families(candidates.get(0).compiled(), Integer.parseInt(words[0]), KITS, 1);
    }

    /**
     * Compares the models.
     *
     * @return how they compare
     */
    @Benchmark
    public ComparedModels compare() {
        ModelComparison question = ModelComparison.of(candidates, drawn);
        ComparedModels compared = (records.endsWith("hair") ? question.about(List.of("hair")) : question).compare();
        if (compared.best().isEmpty()) {
            throw new IllegalStateException("no model allows litters drawn from one of them");
        }
        return compared;
    }
}
