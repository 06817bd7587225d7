package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import org.geneticsrules.cross.Parent;
import org.geneticsrules.cross.Sires;
import org.geneticsrules.cross.UncertainCross;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sighting;

/** Two males with access to one dam: one sire for the litter, or one for each kit. */
final class TwoSires {

    private TwoSires() {}

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
        Catalogue traits = Catalogue.builder("sample.sires.traits", "1.0.0").trait("coat", "coloured", "white").build();
        Model model = Model.builder("sample.sires", "1.0.0", traits)
                .locus("C", c -> c.alleles("C", "c").dominant("C", "c").shows("C", "pigment").shows("c", "albino"))
                .trait("coat", coat -> coat.when(Condition.where("C", "albino"), "white").otherwise("coloured"))
                .build();
        CompiledModel compiled = CompiledModel.of(model);
        Parent carrier = Parent.of(model, Genotype.parse(model, "C/c"));
        Parent free = Parent.of(model, Genotype.parse(model, "C/C"));
        Parent dam = Parent.of(model, Genotype.parse(model, "c/c"));
        List<Probability> even = List.of(Probability.of(1, 2), Probability.of(1, 2));
        Phenotype white = Phenotype.of("coat", "white");
        for (Sires sires : List.of(Sires.oneOf(List.of(carrier, free), even), Sires.perKit(List.of(carrier, free), even))) {
            UncertainCross cross = UncertainCross.of(compiled, sires, dam);
            out.println((sires.perKit() ? "each kit its own sire: " : "one sire: ")
                    + cross.count(white, 2, List.of()).orElseThrow()
                    + "; after one white kit the next is white with "
                    + cross.next(white, List.of(Sighting.of(white))).orElseThrow());
        }
        // end
        // spotless:on
        return Shown.of(model);
    }
}
