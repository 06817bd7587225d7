package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Outcomes;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Clock;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;

/** White hairs that spread with each moult until they cover the hue. */
final class Whitening {

    private Whitening() {}

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
        Catalogue traits = Catalogue.builder("sample.whitening.traits", "1.0.0")
                .trait("hue", "black", "none").trait("eye", "dark", "pink")
                .trait("white hairs", "none", "few", "half", "all").build();
        CaseState spreading = new CaseState.Progression(Clock.MOULT,
                Distribution.ofWeights(Outcomes.of(List.of("few", "half")), new long[] {3, 1}),
                new TreeMap<>(Map.of(
                        "few", Distribution.ofWeights(Outcomes.of(List.of("few", "half")), new long[] {1, 1}),
                        "half", Distribution.ofWeights(Outcomes.of(List.of("half", "all")), new long[] {2, 1}))),
                true);
        Model model = Model.builder("sample.whitening", "1.0.0", traits)
                .locus("C", c -> c.alleles("C", "c").dominant("C", "c").shows("C", "pigment").shows("c", "albino"))
                .locus("M", m -> m.alleles("M", "m").shows("M", "plain").shows("M/m", "one dose").shows("m", "two doses"))
                .trait("hue", hue -> hue.otherwise("black"))
                .trait("eye", eye -> eye.otherwise("dark"))
                .trait("white hairs", hairs -> hairs
                        .when(Condition.where("M", "plain"), "none")
                        .when("one", Condition.where("M", "one dose"), spreading)
                        .when(Condition.where("M", "two doses"), "all"))
                .mask(Mask.of("albino", Condition.where("C", "albino"))
                        .covering("hue", "none").covering("white hairs", "all").covering("eye", "pink"))
                .mask(Mask.of("whitened", Condition.where("white hairs", "all")).covering("hue", "none"))
                .build();
        Genotype parent = Genotype.parse(model, "C/c M/m");
        Cross cross = Cross.of(model, parent, parent);
        for (int moult = 0; moult <= 3; moult++) {
            View view = View.of(List.of("eye", "hue")).at(LifeStage.atMoult(moult));
            out.println("moult " + moult + ": " + cross.phenotypes(view));
        }
        try {
            cross.phenotypes(List.of("hue"));
        } catch (ProblemsException refused) {
            refused.problems().forEach(problem -> out.println(problem.code() + ": " + problem.message()));
        }
        // end
        // spotless:on
        return Shown.of(model);
    }
}
