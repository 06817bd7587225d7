package org.geneticsrules.benchmarks;

import static org.geneticsrules.benchmarks.Page.number;
import static org.geneticsrules.benchmarks.Page.whole;

import java.util.Arrays;

/** The engine alone on larger and larger models. */
final class GrowthSection implements Section {

    @Override
    public String run() {
        return "mating";
    }

    @Override
    public void write(Measurements run, Page page) {
        page.say("## Growth\n\nMicroseconds per mating, the engine alone.\n\n");
        page.say(
                "Visible loci: each adds a factor of two to the phenotypes. The floor is the time to write and read as many"
                        + " pairs of phenotype and weight.\n\n");
        page.head("mating", "answer", "growth per locus", "floor", "answer/floor", "bytes of the answer");
        visible(run, page, 6, 8, 10, 12);
        page.say("\nMasking chains, beside weights of one 64-bit digit (up to 31 loci), two, and more.\n\n");
        page.head("mating", "answer", "doubles", "added per locus", "answer/doubles", "bytes of the answer");
        longer(run, page, "chain", 6, 12, 24, 31, 32, 48, 100);
        page.say("\nA threshold trait: the sum of one dose from each allele, cut into three states.\n\n");
        page.head("mating", "answer", "doubles", "added per locus", "answer/doubles", "bytes of the answer");
        longer(run, page, "threshold", 10, 20, 40);
        page.say("\nA linkage group: the masking chain on one chromosome, both parents in coupling, a recombination"
                + " fraction of one tenth in each interval.\n\n");
        page.head("mating", "answer", "doubles", "added per locus", "answer/doubles", "bytes of the answer");
        longer(run, page, "group", 3, 6, 12);
        page.say(
                "\nFitted exponents of time by the number of loci, least squares of logarithms: masking chain of 24 to 100 loci "
                        + exponent(run, "chain", 24, 48, 100) + ", threshold trait of 10 to 40 loci "
                        + exponent(run, "threshold", 10, 20, 40) + ", linkage group of 3 to 12 loci "
                        + exponent(run, "group", 3, 6, 12) + ".\n\n");
    }

    private static void visible(Measurements run, Page page, int... loci) {
        for (int i = 0; i < loci.length; i++) {
            String mating = "visible " + loci[i];
            double answer = run.time("ScalingBenchmark.answer", mating);
            double floor = run.time("FloorBenchmark.pairs", mating);
            page.row(
                    mating,
                    number(answer),
                    i == 0 ? "" : "x " + number(perLocus(run, "visible", loci[i - 1], loci[i])),
                    number(floor),
                    number(answer / floor),
                    whole(run.bytes("ScalingBenchmark.answer", mating)));
        }
    }

    private static double perLocus(Measurements run, String kind, int before, int after) {
        double growth = run.time("ScalingBenchmark.answer", kind + " " + after)
                / run.time("ScalingBenchmark.answer", kind + " " + before);
        return Math.pow(growth, 1.0 / (after - before));
    }

    private static void longer(Measurements run, Page page, String kind, int... loci) {
        for (int i = 0; i < loci.length; i++) {
            String mating = kind + " " + loci[i];
            double answer = run.time("ScalingBenchmark.answer", mating);
            double doubles = run.time("ScalingBenchmark.doubles", mating);
            String added = i == 0
                    ? ""
                    : signed((answer - run.time("ScalingBenchmark.answer", kind + " " + loci[i - 1]))
                            / (loci[i] - loci[i - 1]));
            page.row(
                    mating,
                    number(answer),
                    number(doubles),
                    added,
                    number(answer / doubles),
                    whole(run.bytes("ScalingBenchmark.answer", mating)));
        }
    }

    private static String signed(double added) {
        return (added < 0 ? "-" : "+") + number(Math.abs(added));
    }

    private static String exponent(Measurements run, String kind, int... loci) {
        double[] size = Arrays.stream(loci).mapToDouble(Math::log).toArray();
        double[] time = Arrays.stream(loci)
                .mapToDouble(n -> Math.log(run.time("ScalingBenchmark.answer", kind + " " + n)))
                .toArray();
        return number(Goals.slope(size, time));
    }
}
