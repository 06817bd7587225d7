package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.estimated.CountedAnswers;
import org.geneticsrules.answer.estimated.CountedAnswers.Ascertained;
import org.geneticsrules.answer.estimated.EstimateAnswer;
import org.geneticsrules.answer.estimated.ModelNumber;
import org.geneticsrules.answer.estimated.RecordedEstimates;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.estimation.HardyWeinberg;
import org.geneticsrules.estimation.LinkageFamily;
import org.geneticsrules.estimation.Sibship;
import org.geneticsrules.estimation.TestCross;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.table.PedigreeTable;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;

/** Numbers from counts, and from a pedigree in which the phase of a parent is not known. */
final class CountedNumbers {

    private CountedNumbers() {}

    /**
     * Runs the sample.
     *
     * @param out where to print
     * @return what it is about
     */
    static Shown run(PrintStream out) {
        // Laid out by hand, one statement of the model and one row of the table per line.
        // spotless:off
        // sample
        CountedAnswers counted = CountedAnswers.at(0.95);
        Probability quarter = Probability.of(1, 4);
        List<Sibship> litters = List.of(Sibship.of(2, 1, 6), Sibship.of(2, 2, 1)); // six of two with one affected, one with both
        Catalogue traits = Catalogue.builder("sample.numbers.traits", "1.0.0")
                .trait("hue", "black", "brown").trait("mark", "plain", "hooded").build();
        Model model = Model.builder("sample.numbers", "1.0.0", traits)
                .locus("B", b -> b.alleles("B", "b").dominant("B", "b").shows("B", "dark").shows("b", "brown"))
                .locus("H", h -> h.alleles("H", "h").dominant("H", "h").shows("H", "plain").shows("h", "hooded"))
                .group(LinkageGroup.autosomal("one", List.of("B", "H"), List.of(Probability.of(1, 5))))
                .trait("hue", hue -> hue.when(Condition.where("B", "brown"), "brown").otherwise("black"))
                .trait("mark", mark -> mark.when(Condition.where("H", "hooded"), "hooded").otherwise("plain"))
                .population("even", p -> p.frequency("B", "B", Probability.of(1, 2)).frequency("B", "b", Probability.of(1, 2))
                        .frequency("H", "H", Probability.of(1, 2)).frequency("H", "h", Probability.of(1, 2)))
                .build();
        Pedigree pedigree = PedigreeTable.of("sample.family", "1").read("""
                id,count,sex,litter,dam,sire,ascertainment,trait: hue,trait: mark
                Ivy,,female,,,,,black,plain
                Ash,,male,,,,,brown,hooded
                ,4,,spring,Ivy,Ash,complete,black,plain
                ,3,,spring,,,,brown,hooded
                ,1,,spring,,,,black,hooded
                """);
        RecordedEstimates recorded = RecordedEstimates.of(
                RecordedAnswers.of(Answers.of(CompiledModel.of(model), List.of()), pedigree), 0.95);
        for (EstimateAnswer answer : List.of(
                counted.testCross(new TestCross(12, 100)),
                counted.families(List.of(new LinkageFamily("one kit", 0, 1, false))),
                counted.segregation(litters, Ascertained.COMPLETE, Optional.empty(), quarter),
                counted.segregation(litters, Ascertained.AT_LEAST_ONE, Optional.empty(), quarter),
                counted.genotypes(new HardyWeinberg(119, 76, 13)),
                recorded.ofModel(new ModelNumber.Recombining("B-H", Optional.empty())))) {
            out.println("- " + answer.verdict());
        }
        // end
        // spotless:on
        return Shown.of(model);
    }
}
