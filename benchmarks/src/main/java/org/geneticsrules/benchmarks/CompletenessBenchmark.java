package org.geneticsrules.benchmarks;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.geneticsrules.expression.Completeness;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.Source;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.Catalogue;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** A report on a large model, beside the time to read its document. The goal is at most 20 times that. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class CompletenessBenchmark {

    private final Model model = LargeModel.build();
    private final List<Catalogue> catalogues = List.of(LargeModel.catalogue());
    private final Source text = Source.of("large", Documents.write(model));

    /**
     * Reads and checks the document.
     *
     * @return the model
     */
    @Benchmark
    public Model read() {
        return Documents.reader().readModel(text, catalogues);
    }

    /**
     * Reports on the model.
     *
     * @return the report
     */
    @Benchmark
    public Completeness report() {
        return Completeness.of(model);
    }
}
