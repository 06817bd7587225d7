package org.geneticsrules.examples;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Stream;
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
import picocli.CommandLine.Model.OptionSpec;
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
    private String level = "0.95";

    @Mixin
    private OutputChoice output;

    /** Options of every question, whatever it is asked of. */
    private static final Set<String> ALWAYS = Set.of("--level", "--format", "--words", "--help", "--version");

    /** Options that choose a model, for questions that ask one. */
    static final List<String> OF_MODEL =
            List.of("--model", "--file", "--catalogue", "--patch", "--cautions", "--alone");

    /** Options of records, whatever is asked of them. */
    private static final List<String> OF_RECORDS = List.of("--population", "--misnamed", "--own");

    /** One kind of counts, or records, of which exactly one is stated, and the other options that belong to it. */
    record Source(String option, boolean stated, List<String> with) {
        Source {
            with = List.copyOf(with);
        }

        static Source of(String option, boolean stated, String... with) {
            return new Source(option, stated, List.of(with));
        }

        /** The same with the options that choose a model. */
        Source asking() {
            return new Source(
                    option,
                    stated,
                    Stream.concat(with.stream(), OF_MODEL.stream()).toList());
        }
    }

    /** Finds which one is stated, and refuses options that say nothing to it. */
    String source(List<String> withRecords, Source... counts) {
        List<Source> all = new ArrayList<>(List.of(counts));
        all.add(new Source(
                        "--pedigree",
                        pedigree != null,
                        Stream.concat(withRecords.stream(), OF_RECORDS.stream()).toList())
                .asking());
        List<String> stated =
                all.stream().filter(Source::stated).map(Source::option).toList();
        if (stated.size() != 1) {
            throw new InputException("problem: state one of "
                    + String.join(", ", all.stream().map(Source::option).toList())
                    + (stated.isEmpty() ? "" : ", not " + String.join(" and ", stated)) + "\n");
        }
        output.isJson(); // a misspelt format is found before the work
        level();
        all.stream().filter(Source::stated).forEach(this::refuseOthers);
        return stated.get(0);
    }

    /** An option that would change nothing was meant for something else. */
    private void refuseOthers(Source source) {
        List<String> others = spec.commandLine().getParseResult().matchedOptions().stream()
                .map(OptionSpec::longestName)
                .distinct()
                .filter(name ->
                        !name.equals(source.option()) && !source.with().contains(name) && !ALWAYS.contains(name))
                .toList();
        if (!others.isEmpty()) {
            List<String> own = source.with().stream()
                    .filter(one -> !OF_MODEL.contains(one))
                    .toList();
            throw new InputException("problem: " + String.join(" and ", others)
                    + (others.size() == 1 ? " says" : " say") + " nothing to " + source.option()
                    + "; leave " + (others.size() == 1 ? "it" : "them") + " out"
                    + (own.isEmpty() ? "" : ". With " + source.option() + " may stand " + String.join(", ", own))
                    + "\n");
        }
    }

    /** An option without which others say nothing. */
    static String needed(String option, @Nullable String given, String what) {
        if (given == null) {
            throw new InputException("problem: state " + option + ": " + what + "\n");
        }
        return given;
    }

    private double level() {
        double found =
                level.strip().matches("[0-9]*[.]?[0-9]+([eE]-?[0-9]{1,3})?") ? Double.parseDouble(level.strip()) : 0;
        if (!(found > 0 && found < 1)) {
            Problem problem = Problem.of(Stage.SYNTAX, "level-out-of-range", "", "\"" + level + "\" is no level")
                    .expecting("a number above 0 and below 1, such as 0.95 for 19 in 20");
            throw new InputException(ProblemText.of("--level", level, List.of(problem)));
        }
        return found;
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
