package org.geneticsrules.benchmarks;

import java.util.Collections;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.ferret.FerretProvider;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.simulation.DrawnLitter;
import org.geneticsrules.simulation.Founder;
import org.geneticsrules.simulation.PlannedLook;
import org.geneticsrules.simulation.Simulation;
import org.geneticsrules.spi.Registry;
import org.geneticsrules.trait.LifeStage;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * How long it takes to draw a litter of six with its parents in the default ferret model, by what is looked at: nothing, so that only genes are
 * dropped; two traits without chance; or every trait, most of which chance decides.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class SimulationBenchmark {

    /** What is looked at. */
    @Param({"nothing", "hue", "everything"})
    public String looks = "nothing";

    private Iterator<DrawnLitter> litters = Collections.emptyIterator();

    /** Begins a row of litters; what was worked out before is worked out anew. */
    @Setup(Level.Trial)
    public void begin() {
        Registry registry = Registry.of(List.of(new FerretProvider()));
        Model model = registry.defaultModel(registry.providers().get(0)).orElseThrow();
        PlannedLook all = new PlannedLook(
                LifeStage.parse("week 20, moult 1, winter"),
                List.copyOf(model.visibleTraits()),
                Optional.empty(),
                Probability.ONE);
        Simulation simulation = Simulation.of(CompiledModel.of(model)).seeded(1);
        simulation = switch (looks) {
            case "nothing" -> simulation;
            case "hue" -> simulation.looking(PlannedLook.at("hue", "dilution").when(all.stage()));
            default -> simulation.looking(all);
        };
        Founder any = Founder.from(model, "many carriers");
        litters = simulation.litters(any, any, LitterSize.of(6), Census.SCORED).iterator();
    }

    /** A litter with its parents. */
    @Benchmark
    public DrawnLitter litter() {
        return litters.next();
    }
}
