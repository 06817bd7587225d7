package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;

/** What makes a white ferret with dark eyes: five accounts of the same litters. */
final class FerretDarkEyedWhite {

    private FerretDarkEyedWhite() {}

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
        // Invented: a litter of parents without silver, one of two silvers, and one of two silvers with a kit that whitened.
        List<String> plain = List.of("moult 2 | white guard hairs: none, dilution: full, eye colour: dark, throat: spots");
        List<String> silver = List.of("moult 2 | white guard hairs: mostly coloured, dilution: full, eye colour: dark");
        String full = "week 5, moult 0 | dilution: full, eye colour: dark";
        String white = "week 5, moult 0 | dilution: near-white, eye colour: dark";
        String later = "week 200, moult 6 | dilution: near-white, eye colour: dark";
        KitRecords ofPlain = KitRecords.of(plain, plain).with(6, full).with(2, white);
        KitRecords ofSilver = KitRecords.of(silver, silver).with(6, full).with(2, white);
        KitRecords whitened = KitRecords.of(silver, silver).with(7, full).with(1, full, later);
        for (String cause : List.of("pale-step", "silver", "old-silver", "marking")) {
            String rival = "dark-eyed-white-is-" + cause;
            out.println("common practice or " + rival);
            out.println("  parents plain, 6 full, 2 white: " + ofPlain.ratio("common-practice", rival));
            out.println("  parents silver, 6 full, 2 white: " + ofSilver.ratio("common-practice", rival));
            out.println("  parents silver, 8 full, 1 white later: " + whitened.ratio("common-practice", rival));
        }
        // end
        // spotless:on
        return Shown.of(KitRecords.model("dark-eyed-white-is-old-silver"));
    }
}
