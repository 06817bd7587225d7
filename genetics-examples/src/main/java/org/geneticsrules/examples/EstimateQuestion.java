package org.geneticsrules.examples;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.estimated.CountedAnswers;
import org.geneticsrules.answer.estimated.EstimateAnswer;
import org.geneticsrules.answer.estimated.RecordedEstimates;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.model.Population;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Confusions;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** What questions about a number have in common: recorded animals in place of counts, the level of intervals, and the output. */
final class EstimateQuestion {

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Mixin
    private ModelChoice choice;

    @Option(
            names = "--pedigree",
            paramLabel = "FILE",
            description = "Recorded animals, in place of counts: a pedigree as .json, or as a .csv table.")
    private @Nullable Path pedigree;

    @Option(
            names = "--population",
            paramLabel = "NAME",
            description = "Where founders come from for whom the records do not say. Default: the first that will do.")
    private @Nullable String population;

    @Option(
            names = "--misnamed",
            paramLabel = "ERROR",
            description =
                    "How often one state of a trait is recorded as another, for example \"hue: brown as black=2/100\".")
    private List<String> misnamed = new ArrayList<>();

    @Mixin
    private OwnVocabularies vocabularies;

    @Option(
            names = "--level",
            paramLabel = "LEVEL",
            description = "How often intervals of this kind should hold the truth. Default: 0.95, 19 in 20.")
    private double level = 0.95;

    @Mixin
    private OutputChoice output;

    /** One kind of counts, or records, of which exactly one is stated. */
    record Source(String option, boolean stated) {}

    /** Finds which one is stated. */
    String source(Source... counts) {
        List<Source> all = new ArrayList<>(List.of(counts));
        all.add(new Source("--pedigree", pedigree != null));
        List<String> stated =
                all.stream().filter(Source::stated).map(Source::option).toList();
        if (stated.size() != 1) {
            throw new InputException("problem: state one of "
                    + String.join(", ", all.stream().map(Source::option).toList())
                    + (stated.isEmpty() ? "" : ", not " + String.join(" and ", stated)) + "\n");
        }
        output.isJson(); // a misspelt format is found before the work
        level();
        return stated.get(0);
    }

    /** An option without which others say nothing. */
    static String needed(String option, @Nullable String given, String what) {
        if (given == null) {
            throw new InputException("problem: state " + option + ": " + what + "\n");
        }
        return given;
    }

    private double level() {
        if (!(level > 0 && level < 1)) {
            Problem problem = Problem.of(Stage.SYNTAX, "level-out-of-range", "", level + " is no level")
                    .expecting("more than 0 and less than 1, such as 0.95");
            throw new InputException(ProblemText.of("--level", Double.toString(level), List.of(problem)));
        }
        return level;
    }

    CountedAnswers counted() {
        return CountedAnswers.at(level());
    }

    Answers answers() {
        return choice.answers();
    }

    /** Asks about the recorded animals. */
    int records(Function<RecordedEstimates, EstimateAnswer> question) {
        return looked(asked -> () -> question);
    }

    /** Asks about the recorded animals, with what else is named looked up first. */
    int looked(AskedOf question) {
        Path file = Path.of(String.valueOf(pedigree));
        Asked asked = new Asked(
                choice.answers(), model -> PedigreeChoice.read(file, model, vocabularies.all(model)), this::about);
        Supplier<Function<RecordedEstimates, EstimateAnswer>> found = question.of(asked);
        RecordedAnswers records = asked.records();
        return print(found.get().apply(RecordedEstimates.of(records, level())));
    }

    /** Looks up what a question names. */
    interface AskedOf {
        Supplier<Function<RecordedEstimates, EstimateAnswer>> of(Asked asked);
    }

    private Supplier<RecordedAnswers> about(Asked asked) {
        Supplier<Optional<Population>> origin = asked.read(() -> Inputs.population(asked.model(), population));
        Supplier<Confusions> named = asked.read(() -> Misnamings.read(asked.model(), misnamed));
        return () -> {
            RecordedAnswers plain = asked.plain().with(named.get());
            return origin.get().map(herd -> plain.from(herd.id())).orElse(plain);
        };
    }

    int print(EstimateAnswer answer) {
        return output.print(answer, spec.commandLine().getOut());
    }
}
