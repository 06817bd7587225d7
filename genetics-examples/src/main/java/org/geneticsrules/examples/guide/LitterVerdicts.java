package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.compared.LitterAnswer;
import org.geneticsrules.answer.compared.LitterAnswers;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.comparison.ComparedModels;
import org.geneticsrules.comparison.ModelComparison;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.render.LitterText;
import org.geneticsrules.table.PedigreeTable;

/** Prints which model invented litters favour, for the page about it. Stateless and thread-safe. */
final class LitterVerdicts {

    private LitterVerdicts() {}

    /** Records as they stand in a table. */
    static Pedigree records(String table) {
        return PedigreeTable.of("sample.litters", "1").read(table);
    }

    /** A ferret model, or the model of common practice with a patch, under a short name. */
    static Candidate ferret(String name) {
        return Candidate.of(KitRecords.model(name)).called(name);
    }

    /** Compares models, the first being the one that others are held against. */
    static ComparedModels compare(List<Candidate> models, Pedigree litters, String population, String... traits) {
        ModelComparison question = ModelComparison.of(models, litters).from(population);
        return (traits.length == 0 ? question : question.about(List.of(traits))).compare();
    }

    /** Prints the running ratio of each rival over the first model, litter by litter, and the bar. */
    static void ratios(PrintStream out, ComparedModels compared) {
        for (int place = 0; place < compared.size(); place++) {
            List<String> words = new ArrayList<>();
            for (int rival = 1; rival < compared.candidates().size(); rival++) {
                words.add(compared.candidates().get(rival) + " " + ratio(compared.running(rival, 0)[place]));
            }
            out.println(compared.litter(place).litter() + ": " + String.join(", ", words));
        }
        out.printf(
                Locale.ROOT,
                "over %s; a ratio of %.0f : 1 is evidence%n",
                compared.candidates().get(0),
                compared.bar());
    }

    /** A ratio from its logarithm. */
    static String ratio(double log) {
        if (Double.isInfinite(log)) {
            return log > 0 ? "without limit" : "excluded";
        }
        return String.format(Locale.ROOT, "%.3f", Math.exp(log));
    }

    /** Prints what the answer for people says first; there a model goes by its title. */
    static void verdict(
            PrintStream out, List<Candidate> models, Pedigree litters, String population, String... traits) {
        Answers answers = Answers.of(models.get(0).compiled(), List.of());
        LitterAnswer answer = LitterAnswers.of(
                        RecordedAnswers.of(answers, litters).from(population))
                .about(List.of(traits))
                .favour(models.stream()
                        .skip(1)
                        .map(model -> model.called(model.model().title().orElse(model.name())))
                        .toList());
        out.println(LitterText.of(answer).split("\n\n", 2)[0].strip());
    }
}
