package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.recorded.LookNext;
import org.geneticsrules.answer.recorded.LookNextQuestion;
import org.geneticsrules.answer.recorded.RecordedAnswer;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;

/** What to look at next in a white animal, and what the look would leave. */
final class NextLook {

    private NextLook() {}

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
        Catalogue traits = Catalogue.builder("sample.next-look.traits", "1.0.0")
                .trait("coat", "coloured", "white").trait("eye", "dark", "pink").trait("hue", "black", "brown", "none seen").build();
        Model model = Model.builder("sample.next-look", "1.0.0", traits)
                .locus("C", c -> c.alleles("C", "c").dominant("C", "c").shows("C", "pigment").shows("c", "albino"))
                .locus("M", m -> m.alleles("M", "m").dominant("M", "m").shows("M", "plain").shows("m", "whitened"))
                .locus("B", b -> b.alleles("B", "b").dominant("B", "b").shows("B", "dark").shows("b", "brown"))
                .trait("coat", coat -> coat.when(Condition.where("C", "pigment").and("M", "plain"), "coloured").otherwise("white"))
                .trait("eye", eye -> eye.when(Condition.where("C", "albino"), "pink").otherwise("dark"))
                .trait("hue", hue -> hue.when(Condition.where("B", "brown"), "brown").otherwise("black"))
                .mask(Mask.of("white coat", Condition.where("coat", "white")).covering("hue", "none seen"))
                .population("few", p -> p.frequency("C", "C", Probability.of(9, 10)).frequency("C", "c", Probability.of(1, 10))
                        .frequency("M", "M", Probability.of(7, 10)).frequency("M", "m", Probability.of(3, 10))
                        .frequency("B", "B", Probability.of(4, 5)).frequency("B", "b", Probability.of(1, 5)))
                .build();
        Individual stray = Individual.of("stray").with(Observation.of(LifeStage.unstated(), Phenotype.of("coat", "white")));
        for (Individual seen : List.of(stray,
                stray.with(Observation.of(LifeStage.unstated(), Phenotype.of("eye", "dark"))))) {
            Pedigree alone = Pedigree.builder("sample.stray", "1").add(seen).build();
            RecordedAnswer answer = RecordedAnswers.of(Answers.of(CompiledModel.of(model), List.of()), alone)
                    .lookNext(LookNextQuestion.of("stray"));
            out.println(answer.verdict());
            LookNext found = (LookNext) answer.finding();
            for (LookNext.OfTrait row : found.traits()) {
                out.println("  " + row.trait() + ": " + row.word().word() + " " + row.tells());
                row.states().forEach(one -> out.println("    " + one.state() + ", " + one.chances().get(0)
                        + (one.leaves().isEmpty() ? "" : ", would leave " + one.leaves())));
            }
            found.together().forEach(one -> out.println("  may be " + one.expressions() + ": " + one.chances().get(0)));
        }
        // end
        // spotless:on
        return Shown.of(model);
    }
}
