package org.geneticsrules.benchmarks;

import static org.geneticsrules.benchmarks.Page.number;

import java.util.List;
import java.util.Locale;

/** Whole registries. */
final class RegistrySection implements Section {

    private static final double MOST_SECONDS = 20;

    @Override
    public String run() {
        return "registry";
    }

    @Override
    public void write(Measurements run, Page page) {
        page.say("""
                ## Registries

                From the text of a table to the table of verdicts, once, in a Java that has just begun and has 1 GiB; half the animals are
                recorded by all six traits, and it is asked how likely each is to carry two alleles. *Loop-free*: all is answered. *Kennels*:
                inbred kennels of 100 to 5,000 animals; chances are given no time, so that it is told which records do not fit, how inbred
                animals are, and what the chances of each kennel would cost. *Settled* is the share of chances that are exact, of kennels
                that of animals of whom it was decided whether their records fit.

                """);
        page.head("registry", "seconds", "settled", "goal", "met");
        for (String pedigree : List.of("loop-free 10000", "loop-free 100000", "kennels 10000", "kennels 100000")) {
            double seconds = run.time("RegistryBenchmark.check", pedigree) / 1000;
            boolean large = pedigree.endsWith("100000");
            page.row(
                    pedigree,
                    number(seconds),
                    String.format(Locale.ROOT, "%.1f %%", 100 * run.exact("RegistryBenchmark.check", pedigree)),
                    large ? "at most 20" : "-",
                    !large ? "-" : seconds <= MOST_SECONDS ? "yes" : "**no**");
        }
        page.say("\n");
    }
}
