package org.geneticsrules.examples;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.Answer;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.CoatQuestion;
import org.geneticsrules.expression.CompiledModel;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** What questions about the look of one animal have in common: the model, the animal, what is asked, and how the answer is printed. */
final class OneAnimalOptions {

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Mixin
    private ModelChoice choice;

    @Mixin
    private OutputChoice output;

    @Option(names = "--genotype", paramLabel = "GENOTYPE", description = "What is known of its genotype.")
    private @Nullable String genotype;

    @Option(
            names = "--look",
            paramLabel = "LOOK",
            description = {
                "What it looks like, \"trait: state, ...\", or looked like, \"... @ week 8, in daylight\".",
                "Once for each time it was looked at."
            })
    private List<String> looks = new ArrayList<>();

    @Option(
            names = "--called",
            paramLabel = "NAME",
            description = "What it was called, and by whose words, \"sandy in British Isles\"; when, and at which "
                    + "stage, \"... on 1998-11-02 @ moult 2\"; what is spoken of, \"colour: sandy in ...\". "
                    + "Once for each name.")
    private List<String> called = new ArrayList<>();

    @Mixin
    private OwnVocabularies vocabularies;

    @Option(names = "--sex", paramLabel = "SEX", description = "Its sex: female or male. Default: not known.")
    private @Nullable String sex;

    @Mixin
    private AskedOptions asked;

    /** Asks about the animal, and prints the answer. */
    int answer(BiFunction<Answers, CoatQuestion, Answer> question) {
        output.isJson(); // a misspelt format is found before the work
        Answers answers = choice.answers();
        CompiledModel compiled = answers.compiled();
        Animal animal = Inputs.animal(compiled, "--genotype", genotype, "--look", looks, asked.omitted());
        if (sex != null) {
            animal = animal.ofSex(Inputs.sex("--sex", sex));
        }
        if (!called.isEmpty()) {
            animal = CalledNames.called(
                    "--called", called, animal, compiled.model(), vocabularies.all(compiled.model()));
        }
        CoatQuestion about = new CoatQuestion(animal, asked.traits(), asked.stage(compiled.model()));
        return output.print(
                question.apply(answers, about),
                compiled.model(),
                "",
                spec.commandLine().getOut());
    }
}
