package org.geneticsrules.benchmarks;

import static org.geneticsrules.benchmarks.Page.number;

/** The report on what a large model leaves out, beside reading the model. */
final class CompletenessSection implements Section {

    private static final double MOST = 20;

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
        page.say("\n");
    }
}
