package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Outcomes;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;

/** How many kits of a litter, of a size that is known or not, and of which sex. */
final class Litters {

    private Litters() {}

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
        Catalogue traits = Catalogue.builder("sample.litter.traits", "1.0.0").trait("coat", "coloured", "white").build();
        Model model = Model.builder("sample.litter", "1.0.0", traits)
                .locus("C", c -> c.alleles("C", "c").dominant("C", "c").shows("C", "pigment").shows("c", "albino"))
                .trait("coat", coat -> coat.when(Condition.where("C", "albino"), "white").otherwise("coloured"))
                .build();
        Genotype carrier = Genotype.parse(model, "C/c");
        Cross cross = Cross.of(model, carrier, carrier);
        Phenotype white = Phenotype.of("coat", "white");
        out.println("white of four: " + cross.count(white, 4));
        for (int kits : new int[] {4, 6, 8}) {
            out.println("at least one of " + kits + ": " + cross.atLeastOne(white, kits).toDecimal(6));
        }
        LitterSize size = LitterSize.named("an invented size",
                Distribution.ofWeights(Outcomes.of(List.of(4, 6, 8)), new long[] {1, 2, 1}));
        View view = View.of(List.of("coat"));
        out.println("none in a litter of " + size.kits() + ": " + cross.count(view, white, size).probability(0).toDecimal(6));
        View withSex = View.of(List.of("sex", "coat"));
        Phenotype whiteSon = Phenotype.parse("sex: male, coat: white");
        out.println("at least one white son of eight: "
                + cross.count(withSex, whiteSon, LitterSize.of(8)).probability(0).complement().toDecimal(6));
        // end
        // spotless:on
        return Shown.of(model);
    }
}
