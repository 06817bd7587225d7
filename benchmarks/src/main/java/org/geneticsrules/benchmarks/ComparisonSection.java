package org.geneticsrules.benchmarks;

import static org.geneticsrules.benchmarks.Page.number;

import java.util.List;

/** Many litters under many models, and drawing litters. */
final class ComparisonSection implements Section {

    private static final double MOST_EXPONENT = 1.1;

    @Override
    public String run() {
        return "comparison";
    }

    @Override
    public void write(Measurements run, Page page) {
        page.say("""
                ## Which of several models litters favour

                Couples with two litters of six kits each, parents and kits recorded by all six traits and drawn from the first of the models,
                from the records on. The models are the coat of the matings above, and it with those who show one of nine states living three
                times in four. *Hair*: by that trait alone, where few kinds of families are left and each is worked out once.

                """);
        page.head("records", "seconds", "us per litter and model", "bytes allocated per litter and model");
        for (String records : List.of(
                "10000 litters, 10 models",
                "100000 litters, 1 models",
                "100000 litters, 5 models",
                "100000 litters, 10 models",
                "1000000 litters, 10 models",
                "1000000 litters, 10 models, hair")) {
            page.row(
                    records,
                    number(time(run, records) / 1000),
                    number(each(run, records)),
                    Page.whole(run.bytes("ComparisonBenchmark.compare", records) / work(records)));
        }
        double[] sizes = {10_000, 100_000, 1_000_000};
        double[] logs = new double[sizes.length];
        double[] times = new double[sizes.length];
        for (int at = 0; at < sizes.length; at++) {
            logs[at] = Math.log(sizes[at]);
            times[at] = Math.log(time(run, (int) sizes[at] + " litters, 10 models"));
        }
        double exponent = Goals.slope(logs, times);
        double models =
                Math.log(time(run, "100000 litters, 10 models") / time(run, "100000 litters, 1 models")) / Math.log(10);
        page.say("\n");
        page.head("goal", "measured", "met");
        page.row(
                "10,000 to 1,000,000 litters: exponent of time at most 1.1",
                number(exponent),
                yes(exponent <= MOST_EXPONENT));
        page.row("1 to 10 models: exponent of time at most 1.1", number(models), yes(models <= MOST_EXPONENT));
        double further =
                1000 * (time(run, "100000 litters, 10 models") - time(run, "100000 litters, 1 models")) / 9 / 100_000;
        page.say("\nA further model takes " + number(further)
                + " us for a litter, given the earlier one of its couple. Lists of genotypes locus by locus take "
                + number(run.time("LitterBenchmark.byLocus", "") / LitterBenchmark.LITTERS)
                + " us for one litter by itself, under a model by which all live alike, and from records that are read already;"
                + " the engine itself takes " + number(run.time("LitterBenchmark.engine", "") / LitterBenchmark.LITTERS)
                + " us for that.\n");
        page.say("""

                Drawing a litter of six with its parents from the default ferret model, by what is looked at. Microseconds.

                """);
        page.head("looked at", "us per litter");
        for (String looks : List.of("nothing", "hue", "everything")) {
            page.row(looks, number(run.time("SimulationBenchmark.litter", looks)));
        }
        page.say("\n");
    }

    private static double time(Measurements run, String records) {
        return run.time("ComparisonBenchmark.compare", records);
    }

    private static double each(Measurements run, String records) {
        return 1000 * time(run, records) / work(records);
    }

    /** Litters times models. */
    private static double work(String records) {
        String[] words = records.replace(",", "").split(" ", -1);
        return Double.parseDouble(words[0]) * Double.parseDouble(words[2]);
    }

    private static String yes(boolean met) {
        return met ? "yes" : "**no**";
    }
}
