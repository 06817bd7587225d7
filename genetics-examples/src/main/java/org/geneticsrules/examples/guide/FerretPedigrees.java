package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;

/** Distribution of colour as the pedigrees rank it, and as a sum of loci. */
final class FerretPedigrees {

    private FerretPedigrees() {}

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
        // Invented: two parents of the standard distribution, and eight kits as yearlings.
        List<String> standard = List.of("moult 2 | trunk suppression: absent, trunk depth: standard");
        KitRecords parents = KitRecords.of(standard, standard);
        KitRecords seven = parents.with(7, "moult 2 | trunk suppression: absent, trunk depth: standard");
        KitRecords eight = seven.with(1, "moult 2 | trunk suppression: absent, trunk depth: standard");
        KitRecords solid = seven.with(1, "moult 2 | trunk suppression: absent, trunk depth: solid");
        KitRecords dark = seven.with(1, "moult 2 | trunk suppression: absent, trunk depth: dark");
        out.println("8 standard: " + eight.ratio("common-practice", "pedigree-data"));
        out.println("7 standard, 1 solid: " + solid.ratio("common-practice", "pedigree-data"));
        out.println("7 standard, 1 dark: " + dark.ratio("common-practice", "pedigree-data"));
        out.println("7 standard, 1 solid of two standard/solid: "
                + solid.exactly("pedigree-data", "standard/solid", "standard/solid"));
        // end
        // spotless:on
        return Shown.of(KitRecords.model("pedigree-data"));
    }
}
