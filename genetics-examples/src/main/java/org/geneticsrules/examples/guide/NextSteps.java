package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.compared.LitterAnswers;
import org.geneticsrules.answer.compared.TellApartAnswer;
import org.geneticsrules.answer.compared.TellApartQuestion;
import org.geneticsrules.answer.recorded.Progress;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.render.TellApartText;

/** What to do next to tell silver by dose from silver as a recessive. */
final class NextSteps {

    private NextSteps() {}

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
        // Invented: both parents have one dose by a DNA test; two kits of their first litter were looked at, and nobody else.
        String book = """
                id,count,sex,litter,dam,sire,ascertainment,locus: M,trait: white hairs
                Hazel,,female,,,,,M/m,
                Rowan,,male,,,,,M/m,
                ,1,,first,Hazel,Rowan,complete,,none
                ,1,,first,,,,,some
                Fern,,female,first,Hazel,Rowan,,,
                """;
        Pedigree litters = LitterVerdicts.records(book);
        Candidate recessive = SilverLitters.silver("recessive", m -> m.dominant("M", "m").shows("m", "some"));
        Candidate dose = SilverLitters.silver("by dose", m -> m.shows("M/m", "some").shows("m", "nearly all"))
                .called("silver by dose");
        TellApartAnswer answer = LitterAnswers.of(
                        RecordedAnswers.of(Answers.of(recessive.compiled(), List.of()), litters).from("any"))
                .tellApart(TellApartQuestion.usual().planned("Rowan", "Hazel"), List.of(dose), Progress.NONE);
        String text = TellApartText.of(answer);
        out.println(text.substring(0, text.indexOf("Please note")).strip());
        // end
        // spotless:on
        return Shown.of(dose.model());
    }
}
