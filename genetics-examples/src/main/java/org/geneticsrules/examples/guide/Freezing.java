package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import org.geneticsrules.answer.compared.Analysis;
import org.geneticsrules.answer.compared.HeldModel;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.FrozenAnalysis;
import org.geneticsrules.json.Rerun;
import org.geneticsrules.json.Source;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Outcomes;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.render.DifferencesText;
import org.geneticsrules.render.TextStyle;
import org.geneticsrules.spi.Renewal;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;

/** A question that is frozen, run again, tampered with, and asked of a newer model. */
final class Freezing {

    private Freezing() {}

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
        // Invented: both parents carry albino by a DNA test, and the litter was written down as it was born.
        Pedigree litter = LitterVerdicts.records("""
                id,count,sex,litter,dam,sire,ascertainment,locus: C,trait: coat
                Hazel,,female,,,,,C/c,
                Rowan,,male,,,,,C/c,
                ,6,,first,Hazel,Rowan,complete,,coloured
                ,2,,first,,,,,white
                """);
        Model all = albino("sample.all", "1.0.0", Probability.ONE);
        Model some = albino("sample.some", "1.0.0", Probability.of(1, 2));
        Analysis question = Analysis.of(Analysis.Kind.NAMED, HeldModel.of(all), litter, HeldModel.of(some));
        FrozenAnalysis frozen = FrozenAnalysis.of(question);
        String file = Documents.write(frozen);

        FrozenAnalysis read = Documents.reader().readAnalysis(Source.of("analysis.json", file));
        out.print("Run again: " + DifferencesText.of(read.rerun().answer()));
        try {
            Documents.reader().readAnalysis(Source.of("analysis.json", file
                    .replaceFirst("\"coat\": \"white\"", "\"coat\": \"coloured\"")
                    .replace("No model is ahead", "A model is ahead")));
        } catch (ProblemsException e) {
            e.problems().forEach(problem -> out.println("Tampered with: " + problem.message().split(":", 2)[0]
                    + " (" + problem.code() + " at " + problem.pointer() + ")"));
        }
        Model newer = albino("sample.some", "1.1.0", Probability.of(2, 3));
        Rerun rerun = read.rerun(Renewal.ofStated().with(newer).renew(read.analysis()));
        out.print("Of a newer model: " + DifferencesText.again(rerun.answer(), rerun.documents(),
                rerun.before().library(), rerun.after().library(), TextStyle.standard()));
        // end
        // spotless:on
        return Shown.of(frozen);
    }

    private static final Catalogue TRAITS = Catalogue.builder("sample.freezing.traits", "1.0.0")
            .trait("coat", "coloured", "white")
            .build();

    /** White with two doses of c, all such animals or some of them. */
    private static Model albino(String id, String version, Probability white) {
        return Model.builder(id, version, TRAITS)
                .title(white.equals(Probability.ONE) ? "all c/c are white" : "some c/c are white")
                .locus(
                        "C",
                        c -> c.alleles("C", "c")
                                .dominant("C", "c")
                                .shows("C", "pigment")
                                .shows("c", "albino"))
                .trait("coat", coat -> {
                    if (white.equals(Probability.ONE)) {
                        coat.when(Condition.where("C", "albino"), "white");
                    } else {
                        coat.when("albino", Condition.where("C", "albino"), new CaseState.Chance(whiteWith(white)));
                    }
                    coat.otherwise("coloured");
                })
                .population(
                        "any",
                        founders -> founders.frequency("C", "C", Probability.of(9, 10))
                                .frequency("C", "c", Probability.of(1, 10)))
                .build();
    }

    private static Distribution<String> whiteWith(Probability white) {
        return Distribution.ofWeights(Outcomes.of(List.of("white", "coloured")), new long[] {
            white.numerator().longValueExact(), white.complement().numerator().longValueExact()
        });
    }
}
