package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import org.geneticsrules.probability.Probability;

/** Silver under the model of common practice and under two of its rivals. */
final class FerretCommonPractice {

    private FerretCommonPractice() {}

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
        // Invented: two silvers, and their kits after the first moult.
        List<String> silver = List.of("moult 2 | white guard hairs: mostly coloured");
        KitRecords coloured = KitRecords.of(silver, silver)
                .with(2, "moult 1 | white guard hairs: none")
                .with(6, "moult 1 | white guard hairs: mostly coloured");
        KitRecords withWhite = coloured.with(1, "moult 1 | white guard hairs: nearly all");
        for (String rival : List.of("silver-dominant", "silver-recessive")) {
            out.println("common practice or " + rival + ":");
            out.println("  2 plain, 6 silver: " + coloured.ratio("common-practice", rival));
            out.println("  the same and one nearly white: " + withWhite.ratio("common-practice", rival));
        }
        Probability byDose = coloured.exactly("common-practice", "M/m", "M/m");
        Probability dominant = coloured.exactly("silver-dominant", "M/m", "M/m");
        out.println("2 plain, 6 silver of two M/m: by dose to dominant as " + byDose.dividedBy(dominant) + " to 1");
        // end
        // spotless:on
        return Shown.of(KitRecords.model("common-practice"));
    }
}
