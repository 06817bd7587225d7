package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.View;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Viability;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;

/** A lethal homozygote, a locus linked to it, and one that is not. */
final class ViabilityStatements {

    private ViabilityStatements() {}

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
        Catalogue traits = Catalogue.builder("sample.yellow.traits", "1.0.0")
                .trait("coat", "yellow", "agouti").trait("tail", "straight", "kinked").trait("depth", "full", "pale").build();
        Model model = Model.builder("sample.yellow", "1.0.0", traits)
                .locus("A", a -> a.alleles("Y", "a").expressions("double yellow", "yellow", "agouti")
                        .shows("Y", "double yellow").shows("Y/a", "yellow").shows("a", "agouti"))
                .locus("K", k -> k.alleles("K", "k").dominant("K", "k").shows("K", "straight").shows("k", "kinked"))
                .locus("D", d -> d.alleles("D", "d").dominant("D", "d").shows("D", "full").shows("d", "dilute"))
                .group(LinkageGroup.autosomal("second", List.of("A", "K"), List.of(Probability.of(1, 10))))
                .trait("coat", coat -> coat.when(Condition.where("A", "agouti"), "agouti").otherwise("yellow"))
                .trait("tail", tail -> tail.when(Condition.where("K", "kinked"), "kinked").otherwise("straight"))
                .trait("depth", depth -> depth.when(Condition.where("D", "dilute"), "pale").otherwise("full"))
                .viability(Viability.lethal("two doses", "A", "double yellow"))
                .build();
        Genotype parent = Genotype.parse(model, "[Y K]/[a k] D/d");
        Cross cross = Cross.of(model, parent, parent);
        out.println("lost before birth: " + cross.lostShare(Census.BORN));
        for (String trait : List.of("coat", "tail", "depth")) {
            View born = View.of(List.of(trait));
            out.println("conceived " + cross.phenotypes(born.among(Census.CONCEIVED)) + ", born " + cross.phenotypes(born));
        }
        // end
        // spotless:on
        return Shown.of(model);
    }
}
