package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.recorded.DnaTest;
import org.geneticsrules.answer.recorded.DnaTestQuestion;
import org.geneticsrules.answer.recorded.RecordedAnswer;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/** What a DNA test of the sister of an albino would tell. */
final class DnaTesting {

    private DnaTesting() {}

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
        Catalogue traits = Catalogue.builder("sample.dna-test.traits", "1.0.0").trait("eye", "dark", "pink").build();
        Model model = Model.builder("sample.dna-test", "1.0.0", traits)
                .locus("C", c -> c.alleles("C", "c").dominant("C", "c").shows("C", "pigment").shows("c", "albino"))
                .trait("eye", eye -> eye.when(Condition.where("C", "albino"), "pink").otherwise("dark"))
                .population("few", p -> p.frequency("C", "C", Probability.of(9, 10)).frequency("C", "c", Probability.of(1, 10)))
                .build();
        Observation dark = Observation.of(LifeStage.unstated(), Phenotype.of("eye", "dark"));
        Observation pink = Observation.of(LifeStage.unstated(), Phenotype.of("eye", "pink"));
        Pedigree kennel = Pedigree.builder("sample.kennel", "1")
                .add(Individual.of("Wicket", Sex.FEMALE).with(dark)).add(Individual.of("Tarn", Sex.MALE).with(dark))
                .add(Individual.of("Sorrel", Sex.FEMALE).with(pink)).add(Individual.of("Fen", Sex.FEMALE).with(dark))
                .add(Litter.of("A", "Wicket", "Tarn", "Sorrel", "Fen")).build();
        RecordedAnswers answers = RecordedAnswers.of(Answers.of(CompiledModel.of(model), List.of()), kennel);
        HiddenAllele albino = HiddenAllele.find(model, "c");
        for (Probability error : List.of(Probability.ZERO, Probability.of(1, 50))) {
            RecordedAnswer answer = answers.dnaTest(DnaTestQuestion.of("Fen", albino).wrongIn(error));
            DnaTest found = (DnaTest) answer.finding();
            out.println(answer.verdict());
            out.println("  without the test: carries " + found.before().carries().get(0));
            found.reports().forEach(one -> out.println("  reported " + one.reported() + ", " + one.chances().get(0)
                    + ": carries " + one.after().carries().get(0)));
            out.println("  tells " + found.tells().get(0) + " bits");
        }
        // end
        // spotless:on
        return Shown.of(model);
    }
}
