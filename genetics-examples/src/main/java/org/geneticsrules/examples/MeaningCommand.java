package org.geneticsrules.examples;

import java.util.concurrent.Callable;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.named.NameAnswers;
import org.geneticsrules.model.Model;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Says what a name says of an animal. */
@Command(
        name = "meaning",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Says what a name says of an animal, in each of its senses.",
        footer = {
            "",
            "What does \"sandy\" say in the British Isles?",
            "  genetics meaning sandy --in \"British Isles\"",
        })
final class MeaningCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Mixin
    private ModelChoice choice;

    @Mixin
    private OutputChoice output;

    @Parameters(paramLabel = "NAME", description = "The name, or a synonym.")
    private String word = "";

    @Option(
            names = "--in",
            paramLabel = "VOCABULARY",
            required = true,
            description = "The vocabulary of whoever said it, by its id or region.")
    private String in = "";

    @Mixin
    private FacetOption facet;

    @Mixin
    private VocabularyOptions options;

    @Override
    public Integer call() {
        output.isJson(); // a misspelt format is found before the work
        Answers answers = choice.answers();
        Model model = answers.compiled().model();
        return output.print(
                NameAnswers.of(answers)
                        .meaning(facet.meaning(options.one("--in", in, model), word, options.occasion(model))),
                model,
                spec.commandLine().getOut());
    }
}
