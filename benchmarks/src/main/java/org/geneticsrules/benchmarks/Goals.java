package org.geneticsrules.benchmarks;

import java.util.ArrayList;
import java.util.Arrays;
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
    private static final double FACTORS = 5_000;
    private static final double DOUBLES = 10;
    private static final double MATINGS = 5_000;

    private static final List<String> SCALED = List.of(
            "visible 6", "visible 12", "chain 6", "chain 24", "chain 48", "chain 100", "threshold 40", "group 12");

    private final Measurements run;

    Goals(Measurements run) {
        this.run = run;
    }

    List<Goal> all() {
        List<Goal> goals = new ArrayList<>();
        goals.add(coat("string square", "MatingBenchmark.square", SQUARE));
        goals.add(coat("integer product", "MatingBenchmark.product", PRODUCT));
        goals.add(ratio(
                "Coat model, as a product of factors of which nothing is read: at least %,.0f times the string square",
                run.time("MatingBenchmark.square", "coat") / run.time("MatingBenchmark.factors", "coat"), FACTORS));
        goals.add(chain());
        goals.add(doubling());
        goals.add(floor());
        goals.add(doubles());
        goals.add(compiling());
        return goals;
    }

    /** The weights of all phenotypes, as the baselines give them; beside it what the baselines leave out, the lowest terms. */
    private Goal coat(String name, String baseline, double wanted) {
        double time = run.time(baseline, "coat");
        Goal weights = ratio(
                "Coat model, weights of all phenotypes: at least %.0f times the " + name,
                time / run.time("MatingBenchmark.answer", "coat"),
                wanted);
        return new Goal(
                weights.text(),
                weights.measured()
                        + String.format(
                                Locale.ROOT,
                                " (%,.1f times if the engine also reads every chance in lowest terms)",
                                time / run.time("MatingBenchmark.listed", "coat")),
                weights.met(),
                weights.limit());
    }

    private static Goal ratio(String goal, double ratio, double wanted) {
        return new Goal(
                String.format(Locale.ROOT, goal, wanted),
                String.format(Locale.ROOT, "%,.1f times", ratio),
                ratio >= wanted,
                "The answer of the coat mating holds 218 phenotypes of 434. The tests of depth and marking are followed edge by edge,"
                        + " the twelve kinds of hue, pattern, tone and hair below them are weighed once, and each weight costs one"
                        + " product, one read and one write. What is left beside that is the array that holds the answer.");
    }

    /** The slope of the line that fits best. */
    static double slope(double[] x, double[] y) {
        double meanX = Arrays.stream(x).average().orElseThrow();
        double meanY = Arrays.stream(y).average().orElseThrow();
        double products = 0;
        double squares = 0;
        for (int i = 0; i < x.length; i++) {
            products += (x[i] - meanX) * (y[i] - meanY);
            squares += (x[i] - meanX) * (x[i] - meanX);
        }
        return products / squares;
    }

    private Goal doubles() {
        String worst = "";
        double most = 0;
        for (String mating : SCALED) {
            double ratio = run.time("ScalingBenchmark.answer", mating) / run.time("ScalingBenchmark.doubles", mating);
            if (ratio > most) {
                most = ratio;
                worst = mating;
            }
        }
        return new Goal(
                "Exact fractions within 10 times the time of floating point",
                String.format(Locale.ROOT, "at most %.1f times (%s)", most, worst),
                most <= DOUBLES,
                "Exact weights of linked loci are numbers of any size, and each step makes objects.");
    }

    private Goal chain() {
        double[] times = Arrays.stream(CHAIN)
                .mapToDouble(loci -> run.time("ScalingBenchmark.answer", "chain " + loci))
                .toArray();
        double slope = slope(Arrays.stream(CHAIN).asDoubleStream().toArray(), times);
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
                "Up to 31 heterozygous loci every weight is one 64-bit number. Below the 32nd locus of a longer chain weights need two,"
                        + " and a product takes three multiplications instead of one.");
    }

    private Goal doubling() {
        double growth = Math.pow(
                run.time("ScalingBenchmark.answer", "visible 12") / run.time("ScalingBenchmark.answer", "visible 6"),
                1 / 6.0);
        return new Goal(
                "Visible loci, 6 to 12: twice the time per locus, as there are twice the phenotypes (at most 2.1)",
                String.format(Locale.ROOT, "%.2f times per locus", growth),
                growth <= DOUBLING,
                "Each added locus doubles the phenotypes; what goes beyond that was not examined.");
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
                "What compiling spends its time on was not examined.");
    }
}
