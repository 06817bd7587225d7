package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;

/** The embedding sample of the README: two loci, one of which masks the other. */
final class Embedding {

    private Embedding() {}

    /**
     * Runs the sample.
     *
     * @param out where to print
     * @return what it is about
     */
    static Shown run(PrintStream out) {
        // The sample is laid out by hand, one statement of the model per line.
        // spotless:off
        // sample
        Catalogue traits = Catalogue.builder("sample.traits", "1.0.0")
                .trait("hue", "black", "brown", "none seen").build();
        Model model = Model.builder("sample.coat", "1.0.0", traits)
                .locus("C", c -> c.alleles("C", "c").dominant("C", "c").shows("C", "pigment").shows("c", "albino"))
                .locus("B", b -> b.alleles("B", "b").dominant("B", "b").shows("B", "dark").shows("b", "brown"))
                .trait("hue", hue -> hue.when(Condition.where("B", "dark"), "black").otherwise("brown"))
                .mask(Mask.of("albino", Condition.where("C", "albino")).covering("hue", "none seen"))
                .build();
        Genotype carrier = Genotype.parse(model, "C/c B/b");
        Cross cross = Cross.of(model, carrier, carrier);
        out.println(cross.phenotypes());
        out.println(cross.atLeastOne(Phenotype.of("hue", "none seen"), 8).toDecimal(4));
        cross.explain(List.of("hue")).hidden().forEach(hidden ->
                out.println(hidden.phenotype() + " hides " + hidden.locus() + ": " + hidden.causes()));
        // end
        // spotless:on
        return Shown.of(model);
    }
}
