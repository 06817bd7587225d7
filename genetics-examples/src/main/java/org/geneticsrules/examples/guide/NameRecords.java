package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.recorded.RecordedAnswer;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.CalledName;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.NamedRecords;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.vocabulary.Facet;
import org.geneticsrules.vocabulary.Name;
import org.geneticsrules.vocabulary.Sense;
import org.geneticsrules.vocabulary.Vocabulary;

/** An invented kennel of whose kit nothing is written down but what it was called. */
final class NameRecords {

    private NameRecords() {}

    /**
     * Runs the sample.
     *
     * @param out where to print
     * @return what it is about
     */
    static Shown run(PrintStream out) {
        // Laid out by hand.
        // spotless:off
        // sample
        Catalogue traits = Catalogue.builder("sample.called.traits", "1.0.0").trait("eye", "dark", "pink").build();
        Model model = Model.builder("sample.called", "1.0.0", traits)
                .locus("C", c -> c.alleles("C", "c").dominant("C", "c").shows("C", "pigment").shows("c", "albino"))
                .trait("eye", eye -> eye.when(Condition.where("C", "albino"), "pink").otherwise("dark"))
                .build();
        Vocabulary hills = Vocabulary.builder("sample.called.hills", "1.0.0", traits).region("The hills")
                .facet(Facet.of("colour"))
                .name(Name.of("snow", "colour").withSense(Sense.of("usual").withLook("pink", Condition.where("eye", "pink"))))
                .build();
        Pedigree kennel = Pedigree.builder("sample.called.kennel", "1")
                .add(Individual.of("Wicket", Sex.FEMALE))
                .add(Individual.of("Tarn", Sex.MALE))
                .add(Individual.of("Pip").with(CalledName.of("snow", "The hills")
                        .on(LocalDate.of(1998, 11, 2)).at(LifeStage.atMoult(1))))
                .add(Litter.of("A", "Wicket", "Tarn", "Pip"))
                .build();
        NamedRecords read = NamedRecords.of(kennel, List.of(hills));
        read.readings().forEach(one -> out.println(one.individual() + " was called " + one.name() + ": " + one.looks().orElseThrow()));
        RecordedAnswer dam = RecordedAnswers.of(Answers.of(CompiledModel.of(model), List.of()), read).mayCarry("Wicket", Set.of("C"));
        out.println(dam.verdict());
        // end
        // spotless:on
        return Shown.of(kennel, traits);
    }
}
