package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Outcomes;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sighting;

/** An inner trait that carries the chance for two traits which vary together. */
final class Expressivity {

    private Expressivity() {}

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
        Catalogue traits = Catalogue.builder("sample.spread.traits", "1.0.0")
                .trait("throat", "bib", "none").trait("head", "stripe", "none").build();
        Distribution<String> spread = Distribution.ofWeights(
                Outcomes.of(List.of("none", "low", "high")), new long[] {1, 6, 3});
        Model model = Model.builder("sample.spread", "1.0.0", traits)
                .locus("W", w -> w.alleles("W", "w").dominant("W", "w").shows("W", "marked").shows("w", "plain"))
                .trait("spread", inner -> inner.inner("none", "low", "high")
                        .when("marked", Condition.where("W", "marked"), new CaseState.Chance(spread))
                        .otherwise("none"))
                .trait("throat", throat -> throat.when(Condition.where("spread", "low", "high"), "bib").otherwise("none"))
                .trait("head", head -> head.when(Condition.where("spread", "high"), "stripe").otherwise("none"))
                .build();
        Cross cross = Cross.of(model, Genotype.parse(model, "W/w"), Genotype.parse(model, "w/w"));
        cross.phenotypes().asMap().forEach((look, chance) -> out.println(chance + " " + look));
        out.println("throat alone: " + cross.phenotypes(List.of("throat")));
        out.println("head alone: " + cross.phenotypes(List.of("head")));
        Sighting bib = Sighting.of(Phenotype.of("throat", "bib"));
        CompiledModel compiled = CompiledModel.of(model);
        for (List<Sighting> seen : List.of(List.of(bib), List.of(bib, bib))) {
            compiled.evidence(seen).forEach(box ->
                    out.println("bib seen " + seen.size() + " x: " + box.box() + " would show it with " + box.weight()));
        }
        // end
        // spotless:on
        return Shown.of(model);
    }
}
