package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Outcomes;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;

/** A dominant that four carriers in five show, and what an unaffected kit may carry. */
final class Penetrance {

    private Penetrance() {}

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
        Catalogue traits = Catalogue.builder("sample.penetrance.traits", "1.0.0")
                .trait("status", "affected", "unaffected").build();
        Distribution<String> fourInFive = Distribution.ofWeights(
                Outcomes.of(List.of("affected", "unaffected")), new long[] {4, 1});
        Model model = Model.builder("sample.penetrance", "1.0.0", traits)
                .locus("D", d -> d.alleles("D", "d").dominant("D", "d").shows("D", "carrier").shows("d", "free"))
                .trait("status", status -> status
                        .when("carrier", Condition.where("D", "carrier"), new CaseState.Chance(fourInFive))
                        .otherwise("unaffected"))
                .build();
        Cross cross = Cross.of(model, Genotype.parse(model, "D/d"), Genotype.parse(model, "d/d"));
        out.println(cross.phenotypes());
        cross.explain(List.of("status")).hidden().forEach(hidden ->
                out.println(hidden.phenotype() + " may be " + hidden.chances().orElseThrow()));
        // end
        // spotless:on
        return Shown.of(model);
    }
}
