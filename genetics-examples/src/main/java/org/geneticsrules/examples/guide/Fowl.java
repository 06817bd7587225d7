package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.expression.View;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;

/** Barring on the Z, where the hen has a single dose, from her sire. */
final class Fowl {

    private Fowl() {}

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
        Catalogue traits = Catalogue.builder("sample.fowl.traits", "1.0.0").trait("barring", "barred", "plain").build();
        Model model = Model.builder("sample.fowl", "1.0.0", traits)
                .locus("B", b -> b.alleles("B", "b").dominant("B", "b").shows("B", "barred").shows("b", "plain"))
                .group(LinkageGroup.single(Transmission.Z, "B"))
                .trait("barring", barring -> barring.when(Condition.where("B", "barred"), "barred").otherwise("plain"))
                .build();
        Cross sexingCross = Cross.of(model, Genotype.parse(model, "b/b"), Genotype.parse(model, "B/W"));
        out.println(sexingCross.phenotypes(View.of(List.of("sex", "barring"))));
        // end
        // spotless:on
        return Shown.of(model);
    }
}
