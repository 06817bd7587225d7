package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Recombination;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;

/** A table of crossover patterns, counted in a three-point test cross. */
final class Crossovers {

    private Crossovers() {}

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
        Catalogue traits = Catalogue.builder("sample.fly.traits", "1.0.0")
                .trait("eye", "red", "vermilion").trait("wing", "whole", "cut").trait("veins", "crossed", "none").build();
        Map<String, Probability> counted = new LinkedHashMap<>();
        counted.put("none", Probability.of(580 + 592, 1448));
        counted.put("v-ct", Probability.of(89 + 94, 1448));
        counted.put("ct-cv", Probability.of(45 + 40, 1448));
        counted.put("v-ct ct-cv", Probability.of(3 + 5, 1448));
        Model model = Model.builder("sample.fly", "1.0.0", traits)
                .locus("v", v -> v.alleles("V", "v").dominant("V", "v").shows("V", "red").shows("v", "vermilion"))
                .locus("ct", ct -> ct.alleles("Ct", "ct").dominant("Ct", "ct").shows("Ct", "whole").shows("ct", "cut"))
                .locus("cv", cv -> cv.alleles("Cv", "cv").dominant("Cv", "cv").shows("Cv", "crossed").shows("cv", "none"))
                .group(LinkageGroup.of("X", Transmission.X, List.of("v", "ct", "cv"), new Recombination.Crossovers(counted)))
                .trait("eye", eye -> eye.when(Condition.where("v", "vermilion"), "vermilion").otherwise("red"))
                .trait("wing", wing -> wing.when(Condition.where("ct", "cut"), "cut").otherwise("whole"))
                .trait("veins", veins -> veins.when(Condition.where("cv", "none"), "none").otherwise("crossed"))
                .build();
        Cross test = Cross.of(model, Genotype.parse(model, "[v ct cv]/Y"), Genotype.parse(model, "[v Ct Cv]/[V ct cv]"));
        Probability both = test.probability(Phenotype.parse("eye: red, wing: whole, veins: none"))
                .plus(test.probability(Phenotype.parse("eye: vermilion, wing: cut, veins: crossed")));
        Probability vToCt = counted.get("v-ct").plus(counted.get("v-ct ct-cv"));
        Probability ctToCv = counted.get("ct-cv").plus(counted.get("v-ct ct-cv"));
        out.println("v-ct " + vToCt + ", ct-cv " + ctToCv);
        out.println("double crossovers " + both.toDecimal(6) + ", if independent " + vToCt.times(ctToCv).toDecimal(6));
        out.printf("coefficient of coincidence %.6f%n", both.toDouble() / vToCt.times(ctToCv).toDouble());
        // end
        // spotless:on
        return Shown.of(model);
    }
}
