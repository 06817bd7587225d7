package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;

/** Pale coats as one series, and as loci of their own. */
final class FerretPaleLoci {

    private FerretPaleLoci() {}

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
        // Invented: pale parents, and kits at five weeks.
        List<String> lightened = List.of("week 60, moult 2 | dilution: lightened, eye colour: dark");
        List<String> sandy = List.of("week 60, moult 2 | dilution: sandy, eye colour: dark");
        List<String> albino = List.of("week 60, moult 2 | dilution: none, eye colour: pink");
        KitRecords full = KitRecords.of(lightened, sandy).with(6, "week 5, moult 0 | dilution: full, eye colour: dark");
        KitRecords pale = KitRecords.of(lightened, sandy).with(6, "week 5, moult 0 | dilution: lightened, eye colour: dark");
        KitRecords white = KitRecords.of(sandy, albino).with(6, "week 5, moult 0 | dilution: sandy, eye colour: dark");
        out.println("lightened x sandy, 6 full: " + full.ratio("common-practice", "pale-apart"));
        out.println("lightened x sandy, 6 lightened: " + pale.ratio("common-practice", "pale-apart"));
        out.println("sandy x albino, 6 sandy: " + white.ratio("common-practice", "pale-apart"));
        out.println("sandy x albino, 6 sandy, if it is cs/cs by c/c or s/s by c/c s/s: "
                + white.exactly("common-practice", "cs/cs", "c/c") + " and " + white.exactly("pale-apart", "s/s", "c/c s/s"));
        // end
        // spotless:on
        return Shown.of(KitRecords.model("pale-apart"));
    }
}
