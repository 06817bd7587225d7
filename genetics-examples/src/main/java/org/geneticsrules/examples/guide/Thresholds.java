package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Outcomes;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Phenotype;

/** Many small doses and a residual, cut into states. */
final class Thresholds {

    private Thresholds() {}

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
        Catalogue traits = Catalogue.builder("sample.kernel.traits", "1.0.0")
                .trait("shade", "white", "light", "middling", "dark").trait("colour", "white", "red").build();
        Map<String, Map<String, Integer>> doses = new LinkedHashMap<>();
        ModelBuilder rules = Model.builder("sample.kernel", "1.0.0", traits);
        for (String locus : List.of("R1", "R2", "R3")) {
            String white = locus.toLowerCase(Locale.ROOT);
            rules.locus(locus, r -> r.alleles(locus, white)
                    .shows(locus, "two").shows(locus + "/" + white, "one").shows(white, "none"));
            doses.put(locus, new TreeMap<>(Map.of("one", 1, "two", 2)));
        }
        Map<String, Integer> shades = new LinkedHashMap<>();
        shades.put("light", 1);
        shades.put("middling", 3);
        shades.put("dark", 5);
        Distribution<Integer> weather = Distribution.ofWeights(Outcomes.of(List.of(0, 1)), new long[] {3, 1});
        Model model = rules
                .trait("colour", colour -> colour.otherwise(
                        new CaseState.Threshold(doses, Distribution.certain(0), "white", Map.of("red", 1)), Optional.empty()))
                .trait("shade", shade -> shade.otherwise(
                        new CaseState.Threshold(doses, weather, "white", shades), Optional.empty()))
                .build();
        Genotype plant = Genotype.parse(model, "R1/r1 R2/r2 R3/r3");
        Cross selfed = Cross.of(model, plant, plant);
        out.println(selfed.phenotypes(List.of("colour")));
        Distribution<Phenotype> seeds = selfed.phenotypes(List.of("shade"));
        out.println(seeds.outcomes() + " as " + seeds.ratio());
        // end
        // spotless:on
        return Shown.of(model);
    }
}
