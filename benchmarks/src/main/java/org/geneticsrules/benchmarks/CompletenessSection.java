package org.geneticsrules.benchmarks;

import static org.geneticsrules.benchmarks.Page.number;

import java.util.List;

/** The report on what a large model leaves out, beside reading the model. */
final class CompletenessSection implements Section {

    private static final double MOST = 20;

    /** Milliseconds. */
    private static final double SOON = 2_000;

    @Override
    public String run() {
        return "completeness";
    }

    @Override
    public void write(Measurements run, Page page) {
        double read = run.time("CompletenessBenchmark.read", "");
        double report = run.time("CompletenessBenchmark.report", "");
        page.say("## The report on a model\n\nMilliseconds for a large model.\n\n");
        page.head("reading and checking its document", "reporting on it", "report/reading", "goal", "met");
        page.row(
                number(read),
                number(report),
                number(report / read),
                "at most " + Page.whole(MOST),
                report <= MOST * read ? "yes" : "**no**");
        page.say(
                "\nMilliseconds until a model whose rules explode is refused: loci of which each is seen, with far too many"
                        + " phenotypes, and loci tied in pairs by masks, with two phenotypes and far too many combinations to remember.\n\n");
        page.head("model", "refused after", "goal", "met");
        for (String rules : List.of("visible 40", "tied 42")) {
            double refusal = run.time("RefusalBenchmark.refusal", rules);
            page.row(rules, number(refusal), "at most " + Page.whole(SOON), refusal <= SOON ? "yes" : "**no**");
        }
        page.say("\n");
    }
}
