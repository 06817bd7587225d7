package org.geneticsrules.examples;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.inference.Sampling;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.Source;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Population;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.table.PedigreeTable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The options that choose recorded animals, and where founders come from. */
final class PedigreeChoice {

    @Option(
            names = "--pedigree",
            paramLabel = "FILE",
            required = true,
            description = "The recorded animals: a pedigree as .json, or as a .csv table.")
    private Path file = Path.of("");

    @Option(
            names = "--population",
            paramLabel = "NAME",
            description = {
                "Where founders come from for whom the records do not say.",
                "Default: each population of the model in turn."
            })
    private @Nullable String population;

    @Option(
            names = "--estimate",
            paramLabel = "SEED",
            description = {
                "Estimate chances that are too large to be calculated exactly, with random",
                "numbers from this seed; each is told with its standard error. May take minutes.",
                "Only of what animals carry; how sure, parentage and litters stay exact."
            })
    private @Nullable Long estimate;

    /** The questions about the recorded animals. */
    RecordedAnswers about(Answers answers) {
        Model model = answers.compiled().model();
        Optional<Population> origin = Inputs.population(model, population);
        Pedigree pedigree = read(file, model);
        RecordedAnswers recorded = RecordedAnswers.of(answers, pedigree);
        RecordedAnswers from = origin.map(named -> recorded.from(named.id())).orElse(recorded);
        return estimate == null ? from : from.sampling(Sampling.seeded(estimate));
    }

    /** Reads recorded animals and compares them with a model; what is wrong is reported with file, line and column. */
    static Pedigree read(Path file, Model model) {
        String name = file.getFileName() == null ? "" : file.getFileName().toString();
        try {
            if (name.toLowerCase(Locale.ROOT).endsWith(".csv")) {
                return PedigreeTable.of(name, "1").read(file, model);
            }
            return Documents.reader().readPedigree(Source.of(file), model);
        } catch (ProblemsException e) {
            throw new InputException(ProblemText.of(file.toString(), e.problems()));
        }
    }

    /** An animal of the pedigree; a misspelt one is named with the nearest. */
    static String animal(RecordedAnswers recorded, String option, String given) {
        Pedigree pedigree = recorded.pedigree();
        if (!pedigree.individuals().containsKey(given)) {
            throw unknown(option, given, "individual", pedigree.individuals().keySet());
        }
        return given;
    }

    /** A litter of the pedigree. */
    static Litter litter(RecordedAnswers recorded, String option, String given) {
        Litter litter = recorded.pedigree().litters().get(given);
        if (litter == null) {
            throw unknown(option, given, "litter", recorded.pedigree().litters().keySet());
        }
        return litter;
    }

    private static InputException unknown(String option, String given, String what, Set<String> known) {
        Problem problem = Problems.unknown(Stage.REFERENCES, "unknown-" + what, "", what, given, known);
        return new InputException(ProblemText.of(option, given, List.of(problem)));
    }
}
