package org.geneticsrules.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Writes the report of a run.
 *
 * <p>Arguments: the file that JMH wrote, and the folder that is to receive {@code RESULTS.md} and {@code results/mating.json}. The
 * report depends on the second file only, and a test compares the two.
 */
public final class Results {

    private static final String INTRODUCTION = """
            # How fast matings are computed

            This page is written by `org.geneticsrules.benchmarks.Results` from `results/mating.json`; do not edit it.

            Two full heterozygotes are mated and all phenotypes of their young are wanted, under three kinds of model:

            * `visible n`: n loci of two alleles, each seen in a trait of its own, so 2^n phenotypes;
            * `chain n`: the same loci, each recessive hiding all later traits, so n + 1 phenotypes;
            * `coat`: six loci in the manner of a coat, with 434 phenotypes, of which this mating gives 218.

            Three ways give the same chances, which is checked before anything is timed:

            * **square**: a frozen baseline, the Punnett square as it is taught, with genotypes and phenotypes as text;
            * **product**: a frozen baseline, the best simple way: equal genotypes of each locus merged, their product walked through
              with integers, the rules of the one model written by hand as arithmetic, an array of counts as the answer;
            * **engine**: the library with a compiled model. *Answer* is `Cross.of(model, sire, dam).phenotypes()`, which holds every
              phenotype with its exact whole-number weight, as the baselines do. *Listed* also reads every phenotype with its
              chance in lowest terms, which the baselines do not give. Goals are compared with *answer*; *listed* stands beside it.

            Only ratios within one run mean anything. A time is the fastest of the iterations, because other work on the machine can
            only make one slower.
            """;

    private final Measurements run;
    private final StringBuilder text = new StringBuilder();

    private Results(Measurements run) {
        this.run = run;
    }

    /**
     * Writes both files.
     *
     * @param args the file that JMH wrote, and the folder of the benchmarks module
     * @throws IOException if a file cannot be read or written
     */
    public static void main(String[] args) throws IOException {
        if (args.length != 2) {
            throw new IllegalArgumentException(
                    "expected the file that JMH wrote and a folder, but found " + args.length + " arguments");
        }
        Path folder = Path.of(args[1]);
        String json = Measurements.publishable(
                Files.readString(Path.of(args[0])), Runtime.getRuntime().availableProcessors());
        Files.createDirectories(folder.resolve("results"));
        Files.writeString(folder.resolve("results").resolve("mating.json"), json);
        Files.writeString(folder.resolve("RESULTS.md"), render(json));
    }

    static String render(String json) {
        Results results = new Results(Measurements.parse(json));
        results.write();
        return results.text.toString();
    }

    private void write() {
        text.append(INTRODUCTION).append('\n');
        text.append("Machine: ").append(run.machine()).append(".\n\n");
        goals();
        text.append(
                "## Three ways compared\n\nMicroseconds per mating, and how many times longer a baseline takes.\n\n");
        row(
                "mating",
                "square",
                "product",
                "answer",
                "listed",
                "square/answer",
                "product/answer",
                "square/listed",
                "product/listed");
        rule(9);
        matings().forEach(this::compare);
        text.append("\nBytes allocated per mating.\n\n");
        row("mating", "square", "product", "answer", "listed");
        rule(5);
        matings().forEach(this::bytes);
        text.append(
                "\n## Growth\n\nThe engine alone. The floor is the time to write and read as many pairs of phenotype and weight.\n\n");
        row("mating", "answer", "listed", "answer, growth per locus", "floor", "answer/floor", "bytes of the answer");
        rule(7);
        growth("visible", 6, 8, 10, 12);
        growth("chain", 6, 12, 24, 48);
        text.append("\nCompiling the coat model takes ")
                .append(number(run.time("CompileBenchmark.coat", "")))
                .append(" microseconds, once.\n");
        noise();
    }

    private void goals() {
        text.append("## Goals of this project\n\n");
        row("goal", "measured", "met");
        rule(3);
        List<String> limits = new ArrayList<>();
        List<Goals.Goal> goals = new Goals(run).all();
        for (Goals.Goal goal : goals) {
            row(goal.text(), goal.measured(), goal.met() ? "yes" : "**no**");
            if (!goal.met() && !limits.contains(goal.limit())) {
                limits.add(goal.limit());
            }
        }
        long met = goals.stream().filter(Goals.Goal::met).count();
        text.append("\n").append(met).append(" of ").append(goals.size()).append(" goals are met.");
        text.append(limits.isEmpty() ? "\n" : " What limits the rest:\n\n");
        limits.forEach(limit -> text.append("* ").append(limit).append('\n'));
        text.append(
                "\nNot measured here: answers kept as a product of factors, and exact fractions against floating point.\n\n");
    }

    private static List<String> matings() {
        List<String> matings = new ArrayList<>();
        for (String kind : List.of("visible", "chain")) {
            for (int loci = 2; loci <= 8; loci++) {
                matings.add(kind + " " + loci);
            }
        }
        matings.add("coat");
        return matings;
    }

    private void compare(String mating) {
        double square = run.time("MatingBenchmark.square", mating);
        double product = run.time("MatingBenchmark.product", mating);
        double answer = run.time("MatingBenchmark.answer", mating);
        double listed = run.time("MatingBenchmark.listed", mating);
        row(
                mating,
                number(square),
                number(product),
                number(answer),
                number(listed),
                number(square / answer),
                number(product / answer),
                number(square / listed),
                number(product / listed));
    }

    private void bytes(String mating) {
        row(
                mating,
                whole(run.bytes("MatingBenchmark.square", mating)),
                whole(run.bytes("MatingBenchmark.product", mating)),
                whole(run.bytes("MatingBenchmark.answer", mating)),
                whole(run.bytes("MatingBenchmark.listed", mating)));
    }

    private void growth(String kind, int... loci) {
        for (int i = 0; i < loci.length; i++) {
            String mating = kind + " " + loci[i];
            double answer = run.time("ScalingBenchmark.answer", mating);
            String growth = "";
            if (i > 0) {
                double before = run.time("ScalingBenchmark.answer", kind + " " + loci[i - 1]);
                int added = loci[i] - loci[i - 1];
                growth = kind.equals("chain")
                        ? "+" + number((answer - before) / added)
                        : "x " + number(Math.pow(answer / before, 1.0 / added));
            }
            double floor = kind.equals("chain") ? Double.NaN : run.time("FloorBenchmark.pairs", mating);
            row(
                    mating,
                    number(answer),
                    number(run.time("ScalingBenchmark.listed", mating)),
                    growth,
                    Double.isNaN(floor) ? "" : number(floor),
                    Double.isNaN(floor) ? "" : number(answer / floor),
                    whole(run.bytes("ScalingBenchmark.answer", mating)));
        }
    }

    private void noise() {
        List<Double> means = new ArrayList<>();
        for (String mating : matings()) {
            for (String way : List.of("square", "product", "answer", "listed")) {
                means.add(run.disturbance("MatingBenchmark." + way, mating));
            }
        }
        means.sort(null);
        text.append("\nNoise: in half of the comparisons above the mean of the iterations was more than ")
                .append(number(means.get(means.size() / 2)))
                .append(" times the fastest, in one of ten more than ")
                .append(number(means.get(means.size() * 9 / 10)))
                .append(" times. On a machine that did nothing else both would be near 1.\n");
    }

    private void row(String... cells) {
        text.append("| ").append(String.join(" | ", cells)).append(" |\n");
    }

    private void rule(int columns) {
        text.append("|---".repeat(columns)).append("|\n");
    }

    /** Three digits. */
    private static String number(double value) {
        int decimals = value < 10 ? 2 : value < 100 ? 1 : 0;
        return String.format(Locale.ROOT, "%,." + decimals + "f", value);
    }

    private static String whole(double value) {
        return String.format(Locale.ROOT, "%,.0f", value);
    }
}
