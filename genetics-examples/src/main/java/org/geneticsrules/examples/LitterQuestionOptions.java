package org.geneticsrules.examples;

import java.util.function.Function;
import java.util.function.Supplier;
import org.geneticsrules.answer.compared.LitterAnswer;
import org.geneticsrules.answer.compared.LitterAnswers;
import org.geneticsrules.comparison.ModelFit;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** What questions about litters have in common: the records, the traits, draws where not all can be gone through, and the output. */
final class LitterQuestionOptions {

    private static final int FEWEST_DRAWS = 99;
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
            description = {
                "How many sets of litters are drawn for a p where not all outcomes can be gone",
                "through; " + ModelFit.USUAL_DRAWS + " by default."
            })
    private int draws = ModelFit.USUAL_DRAWS;

    @Option(
            names = "--seed",
            paramLabel = "SEED",
            description = "Where the draws begin; the same seed gives the same p. Default: 1.")
    private long seed = ModelFit.USUAL_SEED;

    @Mixin
    private OutputChoice output;

    /**
     * Answers a question.
     *
     * @param choice the model
     * @param question asks about the litters, with what else is named looked up first
     * @return one of {@link ExitCodes}
     */
    int answer(ModelChoice choice, Function<Asked, Function<LitterAnswers, LitterAnswer>> question) {
        Asked asked = new Asked(choice.answers(), pedigree);
        asked.read(() -> {
            output.checkOfLitters();
            return true;
        }); // a misspelt format is found before the work
        Supplier<Integer> number = asked.read(() -> Inputs.count("--draws", draws, FEWEST_DRAWS, MOST_DRAWS));
        Function<LitterAnswers, LitterAnswer> answer = question.apply(asked);
        LitterAnswers litters =
                LitterAnswers.of(asked.records()).about(Inputs.names(traits)).drawing(number.get(), seed);
        return output.print(
                answer.apply(litters), asked.model(), spec.commandLine().getOut());
    }
}
