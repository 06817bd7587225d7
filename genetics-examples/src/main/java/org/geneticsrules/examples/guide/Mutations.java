package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.cross.Parent;
import org.geneticsrules.cross.UncertainCross;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;

/** An allele that turns into another once in a while. */
final class Mutations {

    private Mutations() {}

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
        Catalogue traits = Catalogue.builder("sample.maize.traits", "1.0.0")
                .trait("aleurone", "coloured", "colourless").build();
        Model model = Model.builder("sample.maize", "1.0.0", traits)
                .locus("R", r -> r.alleles("R", "r").dominant("R", "r").shows("R", "coloured").shows("r", "colourless")
                        .mutation("R", "r", Probability.of(273, 554_786)))
                .trait("aleurone", seed -> seed.when(Condition.where("R", "coloured"), "coloured").otherwise("colourless"))
                .build();
        Genotype pure = Genotype.parse(model, "R/R");
        Cross test = Cross.of(model, pure, Genotype.parse(model, "r/r"));
        Phenotype colourless = Phenotype.of("aleurone", "colourless");
        out.println("test cross: " + test.probability(colourless));
        out.println("at least one among 1000 seeds: " + test.probability(colourless).atLeastOnceIn(1000).toDecimal(4));
        out.println("both gametes mutated: " + Cross.of(model, pure, pure).probability(colourless));
        Parent either = Parent.of(model, pure);
        out.println("possible without mutation: "
                + UncertainCross.of(CompiledModel.of(model), either, either).possible(List.of("aleurone")));
        // end
        // spotless:on
        return Shown.of(model);
    }
}
