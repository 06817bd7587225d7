package org.geneticsrules.benchmarks;

import static org.geneticsrules.benchmarks.Page.number;
import static org.geneticsrules.benchmarks.Page.whole;

import java.util.ArrayList;
import java.util.List;

/** The engine beside the other ways. */
final class WaysSection implements Section {

    private static final List<String> MATINGS = List.of("visible 6", "visible 10", "chain 6", "chain 10", "coat");

    private static final List<String> WAYS =
            List.of("square", "product", "network", "factors", "answer", "doubles", "listed");

    @Override
    public String run() {
        return "mating";
    }

    @Override
    public void write(Measurements run, Page page) {
        page.say("## Four ways compared\n\nMicroseconds per mating, and how many times longer another way takes.\n\n");
        page.head(
                "mating",
                "square",
                "product",
                "network",
                "answer",
                "listed",
                "square/answer",
                "product/answer",
                "network/answer",
                "square/listed",
                "product/listed");
        for (String mating : MATINGS) {
            double square = time(run, "square", mating);
            double product = time(run, "product", mating);
            double network = time(run, "network", mating);
            double answer = time(run, "answer", mating);
            double listed = time(run, "listed", mating);
            page.row(
                    mating,
                    number(square),
                    number(product),
                    number(network),
                    number(answer),
                    number(listed),
                    number(square / answer),
                    number(product / answer),
                    number(network / answer),
                    number(square / listed),
                    number(product / listed));
        }
        page.say(
                "\nThe answer as a product of factors, of which nothing is read; and the answer in floating point.\n\n");
        page.head("mating", "factors", "square/factors", "product/factors", "doubles", "answer/doubles");
        for (String mating : MATINGS) {
            double factors = time(run, "factors", mating);
            double doubles = time(run, "doubles", mating);
            page.row(
                    mating,
                    number(factors),
                    number(time(run, "square", mating) / factors),
                    number(time(run, "product", mating) / factors),
                    number(doubles),
                    number(time(run, "answer", mating) / doubles));
        }
        page.say("\nBytes allocated per mating.\n\n");
        List<String> head = new ArrayList<>(List.of("mating"));
        head.addAll(WAYS);
        page.head(head.toArray(String[]::new));
        for (String mating : MATINGS) {
            List<String> cells = new ArrayList<>(List.of(mating));
            WAYS.forEach(way -> cells.add(whole(run.bytes("MatingBenchmark." + way, mating))));
            page.row(cells.toArray(String[]::new));
        }
        page.say("\nCompiling the coat model and laying out all that its first mating needs takes "
                + number(run.time("CompileBenchmark.coat", "")) + " microseconds, once.\n\n");
        noise(run, page);
    }

    private static double time(Measurements run, String way, String mating) {
        return run.time("MatingBenchmark." + way, mating);
    }

    private static void noise(Measurements run, Page page) {
        List<Double> means = new ArrayList<>();
        for (String mating : MATINGS) {
            WAYS.forEach(way -> means.add(run.disturbance("MatingBenchmark." + way, mating)));
        }
        means.sort(null);
        page.say("Noise: in half of the comparisons above the mean of the iterations was more than "
                + number(means.get(means.size() / 2)) + " times the fastest, in one of ten more than "
                + number(means.get(means.size() * 9 / 10))
                + " times. On a machine that did nothing else both would be near 1.\n\n");
    }
}
