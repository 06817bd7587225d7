package org.geneticsrules.benchmarks;

import static org.geneticsrules.benchmarks.Page.number;
import static org.geneticsrules.benchmarks.Page.whole;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** What animals of a pedigree carry. */
final class PedigreeSection implements Section {

    private static final double MOST_MICROSECONDS = 2.5;
    private static final double MOST_EXPONENT = 1.1;
    private static final double MOST_ESTIMATE = 200;
    private static final double MOST_KENNEL = 500;

    @Override
    public String run() {
        return "pedigree";
    }

    @Override
    public void write(Measurements run, Page page) {
        page.say("""
                ## Pedigrees

                All posteriors of all animals at six loci (misread: two) and the log-likelihood, from the records on; half the animals are recorded by all
                traits. Each row is the mean of three pedigrees, drawn with the seeds 1, 2 and 3. *Loop-free*: each litter has one parent
                from outside. *Misread*: the same with two loci of which one hides the other, and 1 of 100 white animals is written down as
                black, which ties both loci of every black one. *Kennel*: 20 founders and overlapping generations, five alleles at the locus of
                depth. *Exact* is the share of numbers that are given, and exact;
                the others are refused, being too large for 128 MB of tables.

                """);
        page.head("pedigree", "ms", "us per animal", "bytes allocated per animal", "exact");
        for (String pedigree : List.of(
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
                "kennel 5000")) {
            double time = run.time("PedigreeBenchmark.conclusions", pedigree) / PedigreeBenchmark.SEEDS;
            page.row(
                    pedigree,
                    number(time),
                    number(1000 * time / animals(pedigree)),
                    whole(run.bytes("PedigreeBenchmark.conclusions", pedigree)
                            / PedigreeBenchmark.SEEDS
                            / animals(pedigree)),
                    String.format(Locale.ROOT, "%.1f %%", 100 * run.exact("PedigreeBenchmark.conclusions", pedigree)));
        }
        double[] sizes = {1_000, 10_000, 100_000};
        double exponent = Goals.slope(
                Arrays.stream(sizes).map(Math::log).toArray(),
                Arrays.stream(sizes)
                        .map(n -> Math.log(run.time("PedigreeBenchmark.conclusions", "loop-free " + (int) n)))
                        .toArray());
        double each = 1000
                * run.time("PedigreeBenchmark.conclusions", "loop-free 100000")
                / PedigreeBenchmark.SEEDS
                / 100_000;
        double estimate = run.time("PedigreeCostBenchmark.estimate", "kennel 5000") / PedigreeBenchmark.SEEDS;
        page.say("\n");
        page.head("goal", "measured", "met");
        goal(
                page,
                "Loop-free, 100,000 animals: at most 2.5 us per animal",
                number(each) + " us",
                each <= MOST_MICROSECONDS);
        goal(
                page,
                "Loop-free, 1,000 to 100,000 animals: exponent of time at most 1.1",
                number(exponent),
                exponent <= MOST_EXPONENT);
        goal(
                page,
                "Cost of a kennel of 5,000 known within 200 ms",
                number(estimate) + " ms",
                estimate <= MOST_ESTIMATE);
        double kennel = run.time("PedigreeBenchmark.conclusions", "kennel 300") / PedigreeBenchmark.SEEDS;
        goal(
                page,
                "Kennel of 300, within 128 MB of tables: at most 500 ms",
                number(kennel) + " ms",
                kennel <= MOST_KENNEL);
        double again = run.time("NetworkPedigreeBenchmark.engineAgain", "epistasis 300")
                / run.time("NetworkPedigreeBenchmark.networkAgain", "epistasis 300");
        goal(
                page,
                "The same 300 animals with other records: no slower than the sums of that network alone, for one number",
                number(1 / again) + " times as fast",
                again <= 1);
        double jointly = run.time("LitterBenchmark.jointly", "") / run.time("LitterBenchmark.engine", "");
        double byLocus = run.time("LitterBenchmark.byLocus", "") / run.time("LitterBenchmark.engine", "");
        goal(
                page,
                "A litter: at least 3,000 times as fast as a list of all pairs of genotypes",
                number(jointly) + " times",
                jointly >= 3000);
        goal(
                page,
                "A litter: at least 5 times as fast as lists locus by locus",
                number(byLocus) + " times",
                byLocus >= 5);
        double small = ratio(run, 60);
        double large = ratio(run, 300);
        goal(
                page,
                "Two loci, 60 animals: at least 15 times as fast as one query of a textbook network",
                number(small) + " times",
                small >= 15);
        goal(
                page,
                "Two loci, 300 animals: at least 100 times as fast as one query of a textbook network",
                number(large) + " times",
                large >= 100);
        double outside = run.time("OutsideNetworkBenchmark.library", "epistasis 40")
                / run.time("OutsideNetworkBenchmark.engine", "epistasis 40");
        goal(
                page,
                "Two loci, 40 animals: at least 15 times as fast as one query of an outside network library",
                whole(outside) + " times",
                outside >= 15);
        page.say("""

                Two loci of which one hides the other, loop-free. The engine answers about all animals and loci; the network, laid out before
                the clock starts, is asked about one animal at one locus. Microseconds.

                """);
        page.head(
                "animals",
                "engine, all numbers",
                "network, one number",
                "network/engine",
                "engine, other records",
                "network, sums alone");
        for (int animals : new int[] {60, 120, 300}) {
            page.row(
                    Integer.toString(animals),
                    number(run.time("NetworkPedigreeBenchmark.engine", "epistasis " + animals)),
                    number(run.time("NetworkPedigreeBenchmark.network", "epistasis " + animals)),
                    number(ratio(run, animals)),
                    number(run.time("NetworkPedigreeBenchmark.engineAgain", "epistasis " + animals)),
                    number(run.time("NetworkPedigreeBenchmark.networkAgain", "epistasis " + animals)));
        }
        page.say("""

                That network beside an outside library that does the same (variable elimination in MALLET), one number each, and the engine,
                all numbers. Microseconds.

                """);
        page.head("animals", "engine", "network", "library", "network/engine", "library/engine", "library/network");
        for (String pedigree : List.of("epistasis 15", "epistasis 30", "epistasis 40")) {
            double engine = run.time("OutsideNetworkBenchmark.engine", pedigree);
            double network = run.time("OutsideNetworkBenchmark.network", pedigree);
            double library = run.time("OutsideNetworkBenchmark.library", pedigree);
            page.row(
                    pedigree.substring(pedigree.indexOf(' ') + 1),
                    number(engine),
                    number(network),
                    number(library),
                    number(network / engine),
                    number(library / engine),
                    number(library / network));
        }
        page.say("""

                The chance of a litter: two recorded parents and six recorded kits at six loci, the mean of sixteen litters. Microseconds.

                """);
        page.head("engine", "all pairs of genotypes", "lists locus by locus");
        page.row(
                number(run.time("LitterBenchmark.engine", "") / LitterBenchmark.LITTERS),
                number(run.time("LitterBenchmark.jointly", "") / LitterBenchmark.LITTERS),
                number(run.time("LitterBenchmark.byLocus", "") / LitterBenchmark.LITTERS));
        page.say("\n");
    }

    private static double ratio(Measurements run, int animals) {
        return run.time("NetworkPedigreeBenchmark.network", "epistasis " + animals)
                / run.time("NetworkPedigreeBenchmark.engine", "epistasis " + animals);
    }

    private static void goal(Page page, String text, String measured, boolean met) {
        page.row(text, measured, met ? "yes" : "**no**");
    }

    private static double animals(String pedigree) {
        return Double.parseDouble(pedigree.substring(pedigree.indexOf(' ') + 1));
    }
}
