package org.geneticsrules.examples;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Supplier;
import org.geneticsrules.answer.recorded.RecordedAnswer;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Population;
import org.geneticsrules.pedigree.CalledName;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.NamedRecords;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.trait.Sighting;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What questions about one animal, alone or among recorded relatives, have in common. */
final class AnimalChoice {

    private static final String ALONE = "the animal";

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Mixin
    private ModelChoice choice;

    @Option(
            names = "--pedigree",
            paramLabel = "FILE",
            description = "The recorded animals, a pedigree as .json or as a .csv table; with --animal.")
    private @Nullable Path file;

    @Option(names = "--animal", paramLabel = "ID", description = "The recorded animal, by its id.")
    private @Nullable String animal;

    @Option(
            names = "--look",
            paramLabel = "LOOK",
            description = "What was seen of a single animal so far, for example \"eye colour: dark, hue: brown\"; "
                    + "when it was seen after an at sign, \"... @ week 60, moult 2, in daylight\"; once for each look. "
                    + "Without a pedigree.")
    private List<String> looks = new ArrayList<>();

    @Option(
            names = "--called",
            paramLabel = "NAME",
            description = "What a single animal was called, and by whose words, \"sandy in British Isles\"; when, and "
                    + "at which stage, \"... on 1998-11-02 @ moult 2\"; what is spoken of, \"colour: sandy in ...\"; "
                    + "once for each name. Without a pedigree.")
    private List<String> called = new ArrayList<>();

    @Mixin
    private OwnVocabularies vocabularies;

    @Option(names = "--sex", paramLabel = "SEX", description = "The sex of a single animal: female or male.")
    private @Nullable String sex;

    @Option(
            names = "--population",
            paramLabel = "NAME",
            description = {
                "Where founders come from for whom the records do not say.",
                "Default: each population of the model in turn."
            })
    private @Nullable String population;

    @Mixin
    private OutputChoice output;

    /**
     * Answers a question.
     *
     * @param question looks up what it names besides the animal, and tells how it is asked if all that is there
     * @return one of {@link ExitCodes}
     */
    int answer(BiFunction<Asked, Supplier<String>, Function<RecordedAnswers, RecordedAnswer>> question) {
        boolean isRecorded = file != null || animal != null;
        if (isRecorded && (file == null || animal == null)) {
            throw new ParameterException(spec.commandLine(), "--pedigree and --animal are given together, or neither");
        }
        if (isRecorded && (!looks.isEmpty() || !called.isEmpty() || sex != null)) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--look, --called and --sex describe a single animal; of one in a pedigree all are recorded there");
        }
        Asked asked = new Asked(choice.answers(), this::records, this::about);
        asked.read(output::isJson); // a misspelt format is found before the work
        Supplier<String> who = asked.animal("--animal", animal == null ? ALONE : animal);
        Function<RecordedAnswers, RecordedAnswer> answer = question.apply(asked, who);
        return output.print(
                answer.apply(asked.records()), asked.model(), spec.commandLine().getOut());
    }

    /** The recorded animals, or a single one of whom nothing is known but what is told here. */
    private NamedRecords records(Model model) {
        if (file != null) {
            return PedigreeChoice.read(file, model, vocabularies.all(model));
        }
        Individual alone = Individual.of(ALONE);
        for (String look : looks) {
            Sighting seen = Inputs.sighting("--look", model, look);
            Observation observed = Observation.of(seen.stage(), seen.look());
            alone = alone.with(seen.light().map(observed::in).orElse(observed));
        }
        for (CalledName name : CalledNames.all("--called", model, called)) {
            alone = alone.with(name);
        }
        if (sex != null) {
            alone = alone.with(Inputs.sex("--sex", sex));
        }
        Pedigree records = Pedigree.builder("a-single-animal", "1").add(alone).build();
        return called.isEmpty()
                ? NamedRecords.of(records, List.of())
                : CalledNames.read("--called", called, records, vocabularies.all(model));
    }

    private Supplier<RecordedAnswers> about(Asked asked) {
        Supplier<Optional<Population>> origin = asked.read(() -> Inputs.population(asked.model(), population));
        return () -> origin.get().map(herd -> asked.plain().from(herd.id())).orElseGet(asked::plain);
    }
}
