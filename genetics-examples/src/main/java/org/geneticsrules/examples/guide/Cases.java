package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.expression.Completeness;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;

/** Cases that are disjoint, a complement, and a trait about which the model is silent for some. */
final class Cases {

    private Cases() {}

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
        Catalogue traits = Catalogue.builder("sample.sweet-pea.traits", "1.0.0")
                .trait("flower", "coloured", "white").trait("pollen", "long", "round").build();
        ModelBuilder rules = Model.builder("sample.sweet-pea", "1.0.0", traits)
                .locus("C", c -> c.alleles("C", "c").dominant("C", "c").shows("C", "present").shows("c", "absent"))
                .locus("R", r -> r.alleles("R", "r").dominant("R", "r").shows("R", "present").shows("r", "absent"))
                .locus("L", l -> l.alleles("L", "l").dominant("L", "l").shows("L", "long").shows("l", "other"))
                .trait("flower", flower -> flower
                        .when(Condition.where("C", "present").and("R", "present"), "coloured")
                        .otherwise("white"))
                .trait("pollen", pollen -> pollen.when(Condition.where("L", "long"), "long")); // no claim about l/l
        Model model = rules.build();
        Genotype plant = Genotype.parse(model, "C/c R/r L/l");
        Cross selfed = Cross.of(model, plant, plant);
        out.println(selfed.phenotypes(List.of("flower")));
        out.println(selfed.phenotypes(List.of("pollen")));
        Completeness.of(model).gaps().stream().filter(gap -> gap.shown()).forEach(gap ->
                out.println("no claim about " + gap.trait() + " where " + gap.where()));

        try {
            Model.builder("sample.overlap", "1.0.0", traits)
                    .locus("C", c -> c.alleles("C", "c").dominant("C", "c").shows("C", "present").shows("c", "absent"))
                    .locus("R", r -> r.alleles("R", "r").dominant("R", "r").shows("R", "present").shows("r", "absent"))
                    .trait("flower", flower -> flower
                            .when(Condition.where("C", "present"), "coloured")
                            .when(Condition.where("R", "absent"), "white"))
                    .notModelled("pollen", "Not the subject of this model.")
                    .build();
        } catch (ProblemsException refused) {
            refused.problems().forEach(problem -> out.println(problem.message()));
        }
        // end
        // spotless:on
        return Shown.of(model);
    }
}
