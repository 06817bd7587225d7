package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;

/** A coat that differs by season, at any age. */
final class Seasons {

    private Seasons() {}

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
        Catalogue traits = Catalogue.builder("sample.season.traits", "1.0.0")
                .seasons("summer", "winter").trait("tail tip", "dark", "pale").build();
        Model model = Model.builder("sample.season", "1.0.0", traits)
                .locus("T", t -> t.alleles("T", "t").dominant("T", "t").shows("T", "steady").shows("t", "turning"))
                .trait("tail tip", tip -> tip
                        .when(Condition.where("T", "turning").and("season", "winter"), "pale").otherwise("dark"))
                .build();
        Genotype carrier = Genotype.parse(model, "T/t");
        Cross cross = Cross.of(model, carrier, carrier);
        for (String season : traits.seasons()) {
            out.println(season + ": " + cross.phenotypes(View.of(List.of("tail tip")).at(LifeStage.unstated().in(season))));
        }
        // end
        // spotless:on
        return Shown.of(model);
    }
}
