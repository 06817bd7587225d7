package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;

/** Silver by dose as one study has it, and as the model of common practice has it. */
final class FerretSilver {

    private FerretSilver() {}

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
        // Invented: two parents with one dose each by a DNA test, and kits seen at five weeks.
        List<String> oneDose = List.of("M = M/m", "week 60, moult 2 | eye colour: dark");
        KitRecords parents = KitRecords.of(oneDose, oneDose);
        KitRecords paled = parents
                .with(2, "week 5, moult 0 | dilution: full, eye colour: dark")
                .with(4, "week 5, moult 0 | dilution: lightened, eye colour: dark")
                .with(2, "week 5, moult 0 | dilution: near-white, eye colour: dark");
        KitRecords full = parents
                .with(6, "week 5, moult 0 | dilution: full, eye colour: dark")
                .with(2, "week 5, moult 0 | dilution: near-white, eye colour: dark");
        out.println("2 full, 4 lightened, 2 near-white: " + paled.ratio("common-practice", "tyr-and-mlph"));
        out.println("6 full, 2 near-white: " + full.ratio("common-practice", "tyr-and-mlph"));
        out.println("6 full, 2 near-white of two C/C M/m: " + full.exactly("common-practice", "M/m", "M/m")
                + " and " + full.exactly("tyr-and-mlph", "M/m", "M/m"));
        // end
        // spotless:on
        return Shown.of(KitRecords.model("tyr-and-mlph"));
    }
}
