package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;

/** A pale ferret and an albino that may hide the same paleness. */
final class FerretTrap {

    private FerretTrap() {}

    /**
     * Runs the sample.
     *
     * @param out where to print
     * @return what it is about
     */
    static Shown run(PrintStream out) {
        // Laid out by hand, one record per line.
        // spotless:off
        // sample
        View view = View.of(List.of("dilution")).at(LifeStage.parse("week 5, moult 0"));
        record Mating(String model, String pale, String other, String young) {}
        for (Mating mating : List.of(
                new Mating("common-practice", "cl/cl", "cs/cs", "cl/cs"),
                new Mating("pale-apart", "t/t", "s/s", "T/t S/s"),
                new Mating("common-practice", "cs/cs", "c/c", "cs/c"),
                new Mating("pale-apart", "s/s", "c/c", "C/c S/s"),
                new Mating("pale-apart", "s/s", "c/c s/s", "C/c s/s"))) {
            Model model = KitRecords.model(mating.model());
            Genotype young = KitRecords.genotype(model, mating.young());
            Cross first = Cross.of(model,
                    KitRecords.genotype(model, mating.pale()), KitRecords.genotype(model, mating.other()));
            out.println(mating.pale() + " x " + mating.other() + " (" + mating.model() + ")");
            for (Cross cross : List.of(first, Cross.of(model, young, young))) {
                Distribution<Phenotype> kits = cross.phenotypes(view);
                out.println((cross == first ? "  F1 " : "  F2 ") + kits.outcomes() + " as " + kits.ratio());
            }
        }
        // end
        // spotless:on
        return Shown.of(KitRecords.model("pale-apart"));
    }
}
