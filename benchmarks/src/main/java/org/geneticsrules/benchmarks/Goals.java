package org.geneticsrules.benchmarks;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The goals of the project for matings, each with what the run shows. */
final class Goals {

    /**
     * One goal.
     *
     * @param text what is to be reached
     * @param measured what the run shows
     * @param met whether it is reached
     * @param limit what stands in the way, told where it is not reached
     */
    record Goal(String text, String measured, boolean met, String limit) {}

    private static final int[] CHAIN = {6, 12, 24, 48};
    private static final double CONSTANT_WITHIN = 0.25;
    private static final double DOUBLING = 2.1;
    private static final double FLOOR = 8;
    private static final double SQUARE = 300;
    private static final double PRODUCT = 20;
    private static final double MATINGS = 5_000;

    private final Measurements run;

    Goals(Measurements run) {
        this.run = run;
    }

    List<Goal> all() {
        List<Goal> goals = new ArrayList<>();
        double coat = run.time("MatingBenchmark.answer", "coat");
        goals.add(ratio("string square", run.time("MatingBenchmark.square", "coat") / coat, SQUARE));
        goals.add(ratio("integer product", run.time("MatingBenchmark.product", "coat") / coat, PRODUCT));
        goals.add(chain());
        goals.add(doubling());
        goals.add(floor());
        goals.add(compiling());
        return goals;
    }

    private static Goal ratio(String baseline, double ratio, double wanted) {
        return new Goal(
                String.format(Locale.ROOT, "Coat model, all phenotypes: at least %.0f times the %s", wanted, baseline),
                String.format(Locale.ROOT, "%.1f times", ratio),
                ratio >= wanted,
                "The answer of the coat mating holds 218 phenotypes of 434, and its weights pass some 400 edges of the diagram one by"
                        + " one, a handful of machine instructions each; this flow is most of the time, and finding the parents'"
                        + " alleles and summing the weights most of the rest. The baselines answer in arrays or plain words for one"
                        + " model written by hand, and the product merges equal genotypes before it starts, so it walks through"
                        + " 2,304 combinations instead of 4,096. Keeping the parts of the coat that do not interact as factors, and"
                        + " writing their product out only when it is read, would remove most edges.");
    }

    private Goal chain() {
        double[] times = new double[CHAIN.length];
        double meanLoci = 0;
        double meanTime = 0;
        for (int i = 0; i < CHAIN.length; i++) {
            times[i] = run.time("ScalingBenchmark.answer", "chain " + CHAIN[i]);
            meanLoci += (double) CHAIN[i] / CHAIN.length;
            meanTime += times[i] / CHAIN.length;
        }
        double products = 0;
        double squares = 0;
        for (int i = 0; i < CHAIN.length; i++) {
            products += (CHAIN[i] - meanLoci) * (times[i] - meanTime);
            squares += (CHAIN[i] - meanLoci) * (CHAIN[i] - meanLoci);
        }
        double slope = products / squares;
        double worst = 0;
        List<String> steps = new ArrayList<>();
        for (int i = 1; i < CHAIN.length; i++) {
            double step = (times[i] - times[i - 1]) / (CHAIN[i] - CHAIN[i - 1]);
            worst = Math.max(worst, Math.abs(step / slope - 1));
            steps.add(String.format(Locale.ROOT, "%.0f ns", 1000 * step));
        }
        return new Goal(
                "Masking chain, 6 to 48 loci: time per added locus within 25 % of the fitted line",
                "per added locus " + String.join(", ", steps) + " between 6, 12, 24 and 48 loci",
                worst <= CONSTANT_WITHIN,
                "Up to 31 heterozygous loci the weights fit machine integers. The total of 48 loci is 4 to the 48, so there every"
                        + " weight is a number of any size, and each step makes objects. Within the range of machine integers the"
                        + " cost per locus is even.");
    }

    private Goal doubling() {
        double growth = Math.pow(
                run.time("ScalingBenchmark.answer", "visible 12") / run.time("ScalingBenchmark.answer", "visible 6"),
                1 / 6.0);
        return new Goal(
                "Visible loci, 6 to 12: twice the time per locus, as there are twice the phenotypes (at most 2.1)",
                String.format(Locale.ROOT, "%.2f times per locus", growth),
                growth <= DOUBLING,
                "The larger answers leave the fast memory of the processor.");
    }

    private Goal floor() {
        double worst = 0;
        for (int loci = 6; loci <= 12; loci += 2) {
            worst = Math.max(
                    worst,
                    run.time("ScalingBenchmark.answer", "visible " + loci)
                            / run.time("FloorBenchmark.pairs", "visible " + loci));
        }
        return new Goal(
                "Visible loci: at most 8 times the time to write and read as many pairs of phenotype and weight",
                String.format(Locale.ROOT, "at most %.1f times", worst),
                worst <= FLOOR,
                "Each phenotype costs two steps through the diagram, one of them into its leaf.");
    }

    private Goal compiling() {
        double saved = run.time("MatingBenchmark.product", "coat") - run.time("MatingBenchmark.answer", "coat");
        double matings = run.time("CompileBenchmark.coat", "") / saved;
        return new Goal(
                "Coat model: compiling pays for itself within 5,000 matings, against the integer product",
                String.format(Locale.ROOT, "after %.0f matings", Math.ceil(matings)),
                saved > 0 && matings <= MATINGS,
                "Rules are combined leaf by leaf, with objects for every pair of leaves.");
    }
}
