package org.geneticsrules.benchmarks;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.recorded.Progress;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.answer.recorded.RegistryQuestion;
import org.geneticsrules.answer.recorded.RegistryReport;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.table.PedigreeTable;
import org.geneticsrules.table.RegistryTable;
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

/**
 * A registry from the text of its table to the text of its verdicts, once and in a Java that has just begun, as a program would do it; half
 * the animals are recorded by all traits, and two alleles are asked about.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 0)
@Measurement(iterations = 1)
@Fork(value = 2, jvmArgs = "-Xmx1g")
public class RegistryBenchmark {

    private static final double RECORDED = 0.5;
    private static final List<Integer> KENNELS = List.of(5_000, 3_000, 1_000, 500, 300, 200, 100);

    /**
     * The kind of registry and its number of animals; of kennels chances are given no time, so that it is told which records do not fit, how
     * inbred animals are and what chances would cost.
     */
    @Param({"loop-free 10000", "loop-free 100000", "kennels 10000", "kennels 100000"})
    public String pedigree = "loop-free 10000";

    private final Model model = Models.recordedCoat();
    private String table = "";
    private boolean kennels;

    /** How much was decided. */
    @State(Scope.Thread)
    @AuxCounters(AuxCounters.Type.EVENTS)
    public static class Counted {
        /** The share of animals of which it was decided whether their records fit, from 0 to 1. */
        public double exact;
    }

    /** Draws the registry. */
    @Setup
    public void draw() {
        int animals = Integer.parseInt(pedigree.substring(pedigree.indexOf(' ') + 1));
        CompiledModel compiled = CompiledModel.of(model);
        kennels = pedigree.startsWith("kennels");
        table = PedigreeTable.write(
                kennels ? kennels(compiled, animals) : Kennel.withoutLoops(compiled, animals, RECORDED, 1));
    }

    private static Pedigree kennels(CompiledModel compiled, int animals) {
        PedigreeBuilder all = Pedigree.builder("kennels", "1");
        int count = 0;
        for (int k = 0; count < animals; k++) {
            int size = Math.min(
                    KENNELS.get(k % KENNELS.size()), Math.max(2 * PedigreeBenchmark.FOUNDERS, animals - count));
            Pedigree one = Kennel.inbred(compiled, size, PedigreeBenchmark.FOUNDERS, RECORDED, k);
            String of = "kennel " + k + " ";
            for (Individual each : one.individuals().values()) {
                all.add(new Individual(
                        of + each.id(),
                        each.sex(),
                        each.born(),
                        each.population(),
                        each.observations(),
                        each.names(),
                        each.tests(),
                        each.hearing(),
                        each.fertility()));
            }
            for (Litter each : one.litters().values()) {
                all.add(Litter.of(
                        of + each.id(),
                        of + each.dam().orElseThrow(),
                        of + each.sires().males().get(0),
                        each.kits().stream().map(kit -> of + kit).toArray(String[]::new)));
            }
            count += one.individuals().size();
        }
        return all.build();
    }

    /**
     * Reads a registry, checks it, and writes its verdicts.
     *
     * @param counted how much was decided
     * @return the table of verdicts
     */
    @Benchmark
    public String check(Counted counted) {
        Pedigree read = PedigreeTable.of("registry", "1").read(table, model);
        Answers answers = Answers.of(CompiledModel.of(model), List.of());
        RegistryReport report = RecordedAnswers.of(answers, read)
                .check(
                        RegistryQuestion.ofRecords()
                                .carrying(List.of(HiddenAllele.find(model, "D5"), HiddenAllele.find(model, "B3"))),
                        Progress.NONE,
                        () -> kennels);
        double all = report.entries().size();
        counted.exact = kennels
                ? 1 - report.count(RegistryReport.Verdict.NOT_DECIDED) / all
                : report.count(Standing.EXACT) / (2 * all);
        return RegistryTable.write(report);
    }
}
