package org.geneticsrules.examples;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.CoatQuestion;
import org.geneticsrules.expression.CompiledModel;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Explains the look of one animal. */
@Command(
        name = "coat",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Explains how one animal's look comes about and what it does not tell.",
        footer = {
            "",
            "Why is Wicket's albino kit white, and what may it pass on?",
            "  genetics coat --genotype \"c/c B/b\" --omitted wild-type",
            "What may the stray Pellam, dark-eyed and brown, carry unseen?",
            "  genetics coat --look \"eye colour: dark, hue: brown\" --traits \"hue, eye colour\"",
            "",
            "A trait that changes with age or season is refused until --weeks, --moult or --season is stated."
        })
final class CoatCommand implements Callable<Integer> {

    @Spec
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
                "What it looks like, \"trait: state, ...\", or looked like, \"... @ week 8\".",
                "Once for each time it was looked at."
            })
    private List<String> looks = new ArrayList<>();

    @Option(names = "--sex", paramLabel = "SEX", description = "Its sex: female or male. Default: not known.")
    private @Nullable String sex;

    @Mixin
    private AskedOptions asked;

    @Override
    public Integer call() {
        output.isJson(); // a misspelt format is found before the work
        Answers answers = choice.answers();
        CompiledModel compiled = answers.compiled();
        Animal animal = Inputs.animal(compiled, "--genotype", genotype, "--look", looks, asked.omitted());
        if (sex != null) {
            animal = animal.ofSex(Inputs.sex("--sex", sex));
        }
        CoatQuestion question = new CoatQuestion(animal, asked.traits(), asked.stage(compiled.model()));
        return output.print(
                answers.coat(question), compiled.model(), "", spec.commandLine().getOut());
    }
}
