package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.recorded.Later;
import org.geneticsrules.answer.recorded.LaterQuestion;
import org.geneticsrules.answer.recorded.RecordedAnswer;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Outcomes;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Clock;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Trait;

/** What a coat that whitens may show two moults on. */
final class LaterLook {

    private LaterLook() {}

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
        Catalogue traits = Catalogue.builder("sample.later.traits", "1.0.0").trait("hue", "black", "none seen")
                .trait(new Trait("white hairs", Optional.empty(), List.of("none", "few", "half", "all"), true,
                        Optional.empty(), List.of(), Optional.empty())).build();
        CaseState whitening = new CaseState.Progression(Clock.MOULT,
                Distribution.ofWeights(Outcomes.of(List.of("few", "half")), new long[] {3, 1}),
                new TreeMap<>(Map.of(
                        "few", Distribution.ofWeights(Outcomes.of(List.of("few", "half")), new long[] {1, 1}),
                        "half", Distribution.ofWeights(Outcomes.of(List.of("half", "all")), new long[] {2, 1}))),
                true);
        Model model = Model.builder("sample.later", "1.0.0", traits)
                .locus("M", m -> m.alleles("M", "m").shows("M", "plain").shows("M/m", "one dose").shows("m", "two doses"))
                .trait("hue", hue -> hue.otherwise("black"))
                .trait("white hairs", hairs -> hairs
                        .when(Condition.where("M", "plain"), "none")
                        .when("one", Condition.where("M", "one dose"), whitening)
                        .when(Condition.where("M", "two doses"), "all"))
                .mask(Mask.of("whitened", Condition.where("white hairs", "all")).covering("hue", "none seen"))
                .population("few", p -> p.frequency("M", "M", Probability.of(9, 10)).frequency("M", "m", Probability.of(1, 10)))
                .build();
        Individual mist = Individual.of("Mist")
                .with(Observation.of(LifeStage.atMoult(1), Phenotype.of("white hairs", "few")));
        RecordedAnswers alone = RecordedAnswers.of(Answers.of(CompiledModel.of(model), List.of()),
                Pedigree.builder("sample.alone", "1").add(mist).build());
        RecordedAnswer answer = alone.later(LaterQuestion.of("Mist", LifeStage.atMoult(3)));
        out.println(answer.verdict());
        for (Later.OfTrait row : ((Later) answer.finding()).traits()) {
            row.states().forEach(one -> out.println("  " + row.trait() + " " + one.state() + ": " + one.whether().word()
                    + ", " + one.chances().get(0) + (one.hiddenBy().isEmpty() ? "" : ", hidden by mask " + one.hiddenBy())));
        }
        RecordedAnswer young = alone.later(LaterQuestion.of("Mist", LifeStage.atMoult(1)).in(Set.of("white hairs")));
        out.println(young.verdict());
        // end
        // spotless:on
        return Shown.of(model);
    }
}
