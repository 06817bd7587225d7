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

/** An X-linked locus of the cat: a black dam and an orange sire, and the other way round. */
final class SexLinkage {

    private SexLinkage() {}

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
        Catalogue traits = Catalogue.builder("sample.cat.traits", "1.0.0")
                .trait("coat", "orange", "tortoiseshell", "black").build();
        Model model = Model.builder("sample.cat", "1.0.0", traits)
                .locus("O", o -> o.alleles("O", "o").shows("O", "orange").shows("O/o", "tortoiseshell").shows("o", "black"))
                .group(LinkageGroup.single(Transmission.X, "O"))
                .trait("coat", coat -> coat
                        .when(Condition.where("O", "orange"), "orange")
                        .when(Condition.where("O", "tortoiseshell"), "tortoiseshell")
                        .when(Condition.where("O", "black"), "black"))
                .build();
        View kits = View.of(List.of("sex", "coat"));
        for (String[] parents : new String[][] {{"O/Y", "o/o"}, {"o/Y", "O/O"}, {"o/Y", "O/o"}}) {
            Cross cross = Cross.of(model, Genotype.parse(model, parents[0]), Genotype.parse(model, parents[1]));
            out.println(cross);
            cross.phenotypes(kits).asMap().forEach((look, chance) -> out.println("    " + chance + " " + look));
        }
        // end
        // spotless:on
        return Shown.of(model);
    }
}
