package org.geneticsrules.examples;

import java.util.function.Function;
import org.geneticsrules.answer.recorded.RecordedAnswer;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** What all questions about recorded animals have in common: the model, the records, and how the answer is printed. */
final class RecordedOptions {

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Mixin
    private ModelChoice choice;

    @Mixin
    private PedigreeChoice pedigree;

    @Mixin
    private OutputChoice output;

    /**
     * Answers a question.
     *
     * @param question looks up what it names, and tells how it is asked if all that is there
     * @return one of {@link ExitCodes}
     */
    int answer(Function<Asked, Function<RecordedAnswers, RecordedAnswer>> question) {
        Asked asked = new Asked(choice.answers(), pedigree);
        asked.read(output::isJson); // a misspelt format is found before the work
        Function<RecordedAnswers, RecordedAnswer> answer = question.apply(asked);
        return output.print(
                answer.apply(asked.records()), asked.model(), spec.commandLine().getOut());
    }
}
