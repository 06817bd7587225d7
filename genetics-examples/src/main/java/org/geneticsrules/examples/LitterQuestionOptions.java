package org.geneticsrules.examples;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.geneticsrules.answer.compared.Analysis;
import org.geneticsrules.answer.compared.HeldModel;
import org.geneticsrules.answer.compared.LitterAnswer;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.comparison.ModelFit;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.FrozenAnalysis;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** What questions about litters have in common: the records, the traits, draws where not all can be gone through, and the output. */
final class LitterQuestionOptions {

    private static final int MOST_DRAWS = 10_000_000;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Mixin
    private PedigreeChoice pedigree;

    @Option(
            names = "--traits",
            paramLabel = "TRAITS",
            description = "The traits that count, separated by commas. Default: all that were recorded.")
    private @Nullable String traits;

    @Option(
            names = "--draws",
            paramLabel = "N",
            description = "How many sets of litters are drawn for a p where not all outcomes can be gone " + "through; "
                    + ModelFit.USUAL_DRAWS + " by default.")
    private int draws = ModelFit.USUAL_DRAWS;

    @Option(
            names = "--seed",
            paramLabel = "SEED",
            description = "Where the draws begin; the same seed gives the same p. Default: 1.")
    private long seed = ModelFit.USUAL_SEED;

    @Option(
            names = "--freeze",
            paramLabel = "FILE",
            description = "Keeps question, records, models and answer in one file, which needs nothing "
                    + "else to be run again: genetics rerun FILE.")
    private @Nullable Path freeze;

    @Mixin
    private OutputChoice output;

    /**
     * Answers a question.
     *
     * @param choice the model
     * @param beliefs reads what is stated of models beforehand
     * @param kind what is asked
     * @param rivals looks up the models held against it, and makes them when nothing is wrong
     * @return one of {@link ExitCodes}
     */
    int answer(
            ModelChoice choice,
            Function<Asked, Supplier<Beliefs>> beliefs,
            Analysis.Kind kind,
            Function<Asked, Supplier<List<HeldModel>>> rivals) {
        Asked asked = new Asked(choice.answers(), pedigree);
        asked.read(() -> {
            output.checkOfLitters();
            return true;
        }); // a misspelt format is found before the work
        Supplier<Integer> number =
                asked.read(() -> Inputs.count("--draws", draws, Analysis.Settings.FEWEST_DRAWS, MOST_DRAWS));
        asked.read(() -> OutputFile.freezable(spec, freeze));
        Supplier<Beliefs> believed = beliefs.apply(asked);
        Supplier<List<HeldModel>> others = rivals.apply(asked);
        RecordedAnswers records = asked.records();
        List<HeldModel> models = believed.get()
                .of(Stream.concat(Stream.of(choice.held()), others.get().stream())
                        .toList());
        Analysis analysis = new Analysis(
                kind,
                models.get(0),
                models.subList(1, models.size()),
                choice.cautions(asked.model()),
                asked.recorded(),
                pedigree.vocabularies(asked.recorded(), asked.model()),
                new Analysis.Settings(
                        pedigree.population(asked.model()),
                        Inputs.names(traits),
                        records.confusions(),
                        number.get(),
                        seed));
        LitterAnswer answer = analysis.run();
        if (freeze != null) {
            OutputFile.write(freeze, Documents.write(FrozenAnalysis.of(analysis, answer)));
        }
        return output.print(answer, asked.model(), spec.commandLine().getOut());
    }
}
