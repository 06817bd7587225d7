package org.geneticsrules.examples;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.named.NameAnswers;
import org.geneticsrules.model.Model;
import org.geneticsrules.vocabulary.Meaning;
import org.geneticsrules.vocabulary.Occasion;
import org.geneticsrules.vocabulary.Vocabulary;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Says what a name of one vocabulary is in another, or at another time. */
@Command(
        name = "convert",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Says what a name of one region is in another, or at another time, and what is lost.",
        footer = {
            "",
            "What is a sandy of the British Isles called in North America?",
            "  genetics convert sandy --from \"British Isles\" --to \"North America\"",
            "What is a class of 1996 called today in the same region?",
            "  genetics convert shetland --from \"North America\" --on 1996 --to \"North America\"",
        })
final class ConvertCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Mixin
    private ModelChoice choice;

    @Mixin
    private OutputChoice output;

    @Parameters(
            arity = "1..*",
            paramLabel = "NAME",
            description = "The name; or several that make up the name of the whole coat.")
    private List<String> words = new ArrayList<>();

    @Option(
            names = "--from",
            paramLabel = "VOCABULARY",
            required = true,
            description = "The vocabulary of whoever said it, by its id or region.")
    private String from = "";

    @Option(
            names = "--to",
            paramLabel = "VOCABULARY",
            required = true,
            description = "The vocabulary that is wanted, by its id or region.")
    private String to = "";

    @Option(
            names = "--to-day",
            paramLabel = "DATE",
            description = "The day, month or year in which the new name is used; default: today's names.")
    private @Nullable String toDay;

    @Mixin
    private FacetOption facet;

    @Mixin
    private VocabularyOptions options;

    @Override
    public Integer call() {
        output.isJson(); // a misspelt format is found before the work
        Answers answers = choice.answers();
        Model model = answers.compiled().model();
        Vocabulary vocabulary = options.one("--from", from, model);
        Vocabulary target = options.one("--to", to, model);
        Occasion occasion = options.occasion(model);
        List<Meaning> names = words.stream()
                .map(word -> facet.meaning(vocabulary, word, occasion))
                .toList();
        return output.print(
                NameAnswers.of(answers).convert(names, target, VocabularyOptions.date("--to-day", toDay)),
                model,
                spec.commandLine().getOut());
    }
}
