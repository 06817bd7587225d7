package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import org.geneticsrules.hypothesis.Comparison;
import org.geneticsrules.hypothesis.WhatMoves;
import org.geneticsrules.probability.Probability;

/** What the model of DNA alone has in common with that of common practice, and what it leaves out. */
final class FerretMolecular {

    private FerretMolecular() {}

    /**
     * Runs the sample.
     *
     * @param out where to print
     * @return what it is about
     */
    static Shown run(PrintStream out) {
        // Laid out by hand, one record per line.
        // spotless:off
        // sample
        // Invented: two dark-eyed parents with two pink-eyed kits among eight.
        List<String> dark = List.of("week 60, moult 2 | eye colour: dark");
        KitRecords litter = KitRecords.of(dark, dark)
                .with(6, "week 5, moult 0 | eye colour: dark")
                .with(2, "week 5, moult 0 | eye colour: pink");
        out.println("6 dark, 2 pink: " + litter.ratio("common-practice", "molecular-only"));
        Probability common = litter.exactly("common-practice", "C/c", "C/c");
        Probability molecular = litter.exactly("molecular-only", "C/c", "C/c");
        out.println("6 dark, 2 pink of two C/c: " + common + " and " + molecular);
        WhatMoves moves = Comparison.of(KitRecords.model("common-practice"), KitRecords.model("molecular-only")).whatMoves();
        out.println("both model " + String.join(" and ", moves.traits()) + ": " + moves.verdict());
        out.println("common practice models " + moves.onlyBefore().size() + " traits more");
        // end
        // spotless:on
        return Shown.of(KitRecords.model("molecular-only"));
    }
}
