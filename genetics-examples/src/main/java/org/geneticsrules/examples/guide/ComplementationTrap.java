package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;

/** An albino parent that hides the recessive it was meant to test. */
final class ComplementationTrap {

    private ComplementationTrap() {}

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
        Catalogue traits = Catalogue.builder("sample.trap.traits", "1.0.0").trait("coat", "full", "pale", "white").build();
        Model model = Model.builder("sample.trap", "1.0.0", traits)
                .locus("C", c -> c.alleles("C", "c").dominant("C", "c").shows("C", "pigment").shows("c", "albino"))
                .locus("D", d -> d.alleles("D", "d").dominant("D", "d").shows("D", "full").shows("d", "pale"))
                .trait("coat", coat -> coat.when(Condition.where("D", "full"), "full").otherwise("pale"))
                .mask(Mask.of("albino", Condition.where("C", "albino")).covering("coat", "white"))
                .build();
        Genotype pale = Genotype.parse(model, "C/C d/d");
        for (String albino : List.of("c/c D/D", "c/c d/d")) {
            Genotype white = Genotype.parse(model, albino);
            Genotype first = Cross.of(model, pale, white).genotypes(List.of("C", "D")).outcomes().iterator().next();
            Distribution<Phenotype> second = Cross.of(model, first, first).phenotypes();
            out.println("pale x white " + albino + ": F1 " + Cross.of(model, pale, white).phenotypes().outcomes()
                    + ", F2 " + second.outcomes() + " as " + second.ratio());
        }
        // end
        // spotless:on
        return Shown.of(model);
    }
}
