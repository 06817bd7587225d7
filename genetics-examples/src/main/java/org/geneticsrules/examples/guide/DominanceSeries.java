package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Sex;

/** Five alleles of one series, not all of which dominate one another. */
final class DominanceSeries {

    private DominanceSeries() {}

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
        Catalogue traits = Catalogue.builder("sample.rabbit.traits", "1.0.0")
                .trait("coat", "full", "chinchilla", "light chinchilla", "pale", "Himalayan", "white").build();
        Model model = Model.builder("sample.rabbit", "1.0.0", traits)
                .locus("C", c -> c.alleles("C", "cch", "cl", "ch", "c")
                        .dominant("C", "cch").dominant("cch", "cl").dominant("cch", "ch").dominant("ch", "c")
                        .shows("C", "full").shows("cch", "chinchilla").shows("ch", "Himalayan").shows("c", "white")
                        .shows("cl", "light chinchilla").shows("cl/ch", "pale").shows("cl/c", "pale"))
                .trait("coat", coat -> coat
                        .when(Condition.where("C", "full"), "full")
                        .when(Condition.where("C", "chinchilla"), "chinchilla")
                        .when(Condition.where("C", "light chinchilla"), "light chinchilla")
                        .when(Condition.where("C", "pale"), "pale")
                        .when(Condition.where("C", "Himalayan"), "Himalayan")
                        .when(Condition.where("C", "white"), "white"))
                .build();
        Locus series = model.locus("C");
        for (AllelePair pair : series.pairs()) {
            out.println(pair + " shows " + series.expression(pair, Sex.FEMALE));
        }
        Cross cross = Cross.of(model, Genotype.parse(model, "cch/c"), Genotype.parse(model, "cl/ch"));
        out.println(cross + ": " + cross.phenotypes());
        // end
        // spotless:on
        return Shown.of(model);
    }
}
