package org.geneticsrules.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Writes the report of all runs.
 *
 * <p>Arguments: the file that JMH wrote, the name of the run ({@code mating}), and the folder that is to receive {@code RESULTS.md} and
 * {@code results/<name>.json}. The report depends on the files in {@code results} only, and a test compares it with them.
 */
public final class Results {

    private static final String INTRODUCTION = """
            # How fast questions are answered

            This page is written by `org.geneticsrules.benchmarks.Results` from the files in `results`; do not edit it. To measure
            anew: `mvn -Dquick -DskipTests -pl genetics-api,genetics-ferret,benchmarks package`, then in `benchmarks`
            `java -jar target/benchmarks.jar "Mating|Scaling|Floor|Compile" -prof gc -rf json -rff target/jmh.json`, then
            `java -cp target/benchmarks.jar org.geneticsrules.benchmarks.Results target/jmh.json mating .`; the run "completeness" likewise
            from `Completeness|Refusal`, the run "pedigree" from `Pedigree|OutsideNetwork|LitterBenchmark`, the run "registry" from
            `Registry`, and the run "comparison" from `Comparison|Simulation|LitterBenchmark`.

            Of matings: two full heterozygotes are mated and all phenotypes of their young are wanted, under these kinds of model:

            * `visible n`: n loci of two alleles, each seen in a trait of its own, so 2^n phenotypes;
            * `chain n`: the same loci, each recessive hiding all later traits, so n + 1 phenotypes;
            * `group n`: such a chain on one chromosome;
            * `threshold n`: n loci that add up to one trait of three states;
            * `coat`: six loci in the manner of a coat, with 434 phenotypes, of which this mating gives 218.

            Four ways give the same chances, which is checked before anything is timed:

            * **square**: a frozen baseline, the Punnett square as it is taught, with genotypes and phenotypes as text;
            * **product**: a frozen baseline, the best simple way: equal genotypes of each locus merged, their product walked through
              with integers, the rules of the one model written by hand as arithmetic, an array of counts as the answer;
            * **network**: an outside engine for networks of chances that knows nothing of genetics, the junction tree of MALLET 2.0.8, with
              the network laid out and the tree found before the clock starts; floating point;
            * **engine**: the library with a compiled model. *Answer* is `Cross.of(model, sire, dam).phenotypes()` with the exact
              whole-number weight of every phenotype worked out, as the baselines have them; one chance is read. *Listed* reads
              every phenotype with its chance in lowest terms, which the baselines do not give. *Factors* is the answer before
              anything is read: the chances of each locus, not multiplied out. *Doubles* is `approximate()`, every chance in
              floating point. Goals are compared with *answer* unless they say otherwise; *listed* stands beside it.

            Only ratios within one run mean anything. A time is the fastest of the iterations, because other work on the machine can
            only make one slower; iterations are short, so that on a busy machine some are left alone.
            """;

    /** The parts of the report, in this order; a new benchmark adds one. */
    private static final List<Section> SECTIONS = List.of(
            new GoalsSection(),
            new WaysSection(),
            new GrowthSection(),
            new CompletenessSection(),
            new PedigreeSection(),
            new RegistrySection(),
            new ComparisonSection());

    private Results() {}

    /**
     * Keeps a run and writes the report anew.
     *
     * @param args the file that JMH wrote, the name of the run, and the folder of the benchmarks module
     * @throws IOException if a file cannot be read or written
     */
    public static void main(String[] args) throws IOException {
        if (args.length != 3) {
            throw new IllegalArgumentException(
                    "expected the file that JMH wrote, the name of the run and a folder, but found " + args.length
                            + " arguments");
        }
        Path folder = Path.of(args[2]);
        Path results = Files.createDirectories(folder.resolve("results"));
        String json = Measurements.publishable(
                Files.readString(Path.of(args[0])), Runtime.getRuntime().availableProcessors());
        Files.writeString(results.resolve(args[1] + ".json"), json);
        Files.writeString(folder.resolve("RESULTS.md"), render(results));
    }

    /** The report of the runs in a folder. */
    static String render(Path results) throws IOException {
        Map<String, Measurements> runs = new LinkedHashMap<>();
        for (Section section : SECTIONS) {
            if (!runs.containsKey(section.run())) {
                runs.put(section.run(), Measurements.parse(Files.readString(results.resolve(section.run() + ".json"))));
            }
        }
        Page page = new Page();
        page.say(INTRODUCTION).say("\n");
        runs.forEach((name, run) -> page.say("Machine of the run \"" + name + "\": " + run.machine() + ".\n\n"));
        for (Section section : SECTIONS) {
            section.write(Objects.requireNonNull(runs.get(section.run())), page);
        }
        return page.toString().stripTrailing() + "\n";
    }
}
