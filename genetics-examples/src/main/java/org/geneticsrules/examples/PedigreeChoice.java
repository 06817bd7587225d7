package org.geneticsrules.examples;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.inference.Sampling;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.Source;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Population;
import org.geneticsrules.pedigree.NamedRecords;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.table.PedigreeTable;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.vocabulary.Vocabulary;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The options that choose recorded animals, and where founders come from. */
final class PedigreeChoice {

    @Option(
            names = "--pedigree",
            paramLabel = "FILE",
            required = true,
            description = "The recorded animals: a pedigree as .json, or as a .csv table. Names that animals were "
                    + "called by are read with the vocabularies of the plug-ins and one's own (--own).")
    private Path file = Path.of("");

    @Option(
            names = "--population",
            paramLabel = "NAME",
            description = "Where founders come from for whom the records do not say. Default: each population "
                    + "of the model in turn; of litters, the first one that names all frequencies that "
                    + "matter, and then how it comes out in each of the others.")
    private @Nullable String population;

    @Option(
            names = "--estimate",
            paramLabel = "SEED",
            description = "Estimate chances that are too large to be calculated exactly, with random "
                    + "numbers from this seed; each is told with its standard error. May take minutes. "
                    + "Only of what animals carry; how sure, parentage and litters stay exact.")
    private @Nullable Long estimate;

    @Option(
            names = "--misnamed",
            paramLabel = "ERROR",
            description = "How often one state of a trait is recorded as another, for example "
                    + "\"hue: brown as black=2/100\", at a stage \"... @ moult 0=2/100\"; once for each. "
                    + "What does not fit may then be an error of naming. Default: none are reckoned with.")
    private List<String> misnamed = new ArrayList<>();

    @Mixin
    private OwnVocabularies vocabularies;

    /** The recorded animals, with the names they were called by read. */
    NamedRecords read(Model model) {
        return read(file, model, vocabularies.all(model));
    }

    /** What reads the names of the recorded animals; nothing where there are none. */
    List<Vocabulary> vocabularies(Pedigree recorded, Model model) {
        boolean named = recorded.individuals().values().stream()
                .anyMatch(one -> !one.names().isEmpty());
        return named ? vocabularies.all(model) : List.of();
    }

    /** The population named for founders. */
    Optional<String> population(Model model) {
        return Inputs.population(model, population).map(Population::id);
    }

    /** The answers about the recorded animals, with what is assumed about them. */
    Supplier<RecordedAnswers> about(Asked asked) {
        Supplier<Optional<Population>> origin = asked.read(() -> Inputs.population(asked.model(), population));
        Supplier<Confusions> named = asked.read(() -> Misnamings.read(asked.model(), misnamed));
        return () -> {
            RecordedAnswers recorded = asked.plain().with(named.get());
            RecordedAnswers from =
                    origin.get().map(herd -> recorded.from(herd.id())).orElse(recorded);
            return estimate == null ? from : from.sampling(Sampling.seeded(estimate));
        };
    }

    /** Reads recorded animals and compares them with a model; what is wrong is reported with file, line and column. */
    static NamedRecords read(Path file, Model model, List<Vocabulary> vocabularies) {
        String name = file.getFileName() == null ? "" : file.getFileName().toString();
        try {
            if (name.toLowerCase(Locale.ROOT).endsWith(".csv")) {
                return PedigreeTable.of(name, "1").read(file, model, vocabularies);
            }
            return Documents.reader().readPedigree(Source.of(file), model, vocabularies);
        } catch (ProblemsException e) {
            throw new InputException(ProblemText.of(file.toString(), e.problems()));
        }
    }
}
