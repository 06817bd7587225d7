package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;

/** Two loci with one look, and one series that mimics them. */
final class Complementation {

    private Complementation() {}

    /**
     * Runs the sample.
     *
     * @param out where to print
     * @return what it is about
     */
    static Shown run(PrintStream out) {
        // Laid out by hand, one statement of the model per line.
        // spotless:off
        // sample
        Catalogue traits = Catalogue.builder("sample.pale.traits", "1.0.0").trait("depth", "full", "pale").build();
        Model twoLoci = Model.builder("sample.pale", "1.0.0", traits)
                .locus("D", d -> d.alleles("D", "d").dominant("D", "d").shows("D", "full").shows("d", "dilute"))
                .locus("Ln", ln -> ln.alleles("Ln", "ln").dominant("Ln", "ln").shows("Ln", "full").shows("ln", "leaden"))
                .trait("depth", depth -> depth
                        .when(Condition.where("D", "full").and("Ln", "full"), "full").otherwise("pale"))
                .build();
        Model oneSeries = Model.builder("sample.pale-series", "1.0.0", traits)
                .locus("D", d -> d.alleles("D", "d", "ln").dominant("D", "d").dominant("D", "ln")
                        .shows("D", "full").shows("d", "pale").shows("ln", "pale").shows("d/ln", "pale"))
                .trait("depth", depth -> depth.when(Condition.where("D", "full"), "full").otherwise("pale"))
                .build();
        Genotype first = Genotype.parse(twoLoci, "D/d Ln/ln");
        out.println("two loci, F1: " + Cross.of(twoLoci,
                Genotype.parse(twoLoci, "d/d Ln/Ln"), Genotype.parse(twoLoci, "D/D ln/ln")).phenotypes());
        out.println("two loci, F2: " + Cross.of(twoLoci, first, first).phenotypes());
        out.println("one series, F1: " + Cross.of(oneSeries,
                Genotype.parse(oneSeries, "d/d"), Genotype.parse(oneSeries, "ln/ln")).phenotypes());
        // end
        // spotless:on
        return Shown.of(twoLoci);
    }
}
