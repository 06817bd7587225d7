package org.geneticsrules.examples;

import java.util.LinkedHashSet;
import java.util.Set;
import java.util.concurrent.Callable;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.recorded.NextLitterQuestion;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.LifeStage;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Foresees a litter of two recorded animals. */
@Command(
        name = "next-litter",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Foresees the next litter of two recorded animals, by all records of them and their relatives.",
        footer = {
            "",
            "What may Tarn and Wicket have next, and how many of seven kits are albino?",
            "  genetics next-litter --pedigree kennel.csv --sire Tarn --dam Wicket --traits \"eye colour\" \\",
            "      --look \"eye colour: pink\" --kits 7",
            "",
            "Kits of parents who are not known for certain are not independent of one another; the numbers of kits",
            "take that into account."
        })
final class NextLitterCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Mixin
    private ModelChoice choice;

    @Mixin
    private PedigreeChoice pedigree;

    @Mixin
    private OutputChoice output;

    @Option(names = "--sire", paramLabel = "ID", required = true, description = "The sire, by his id.")
    private String sire = "";

    @Option(names = "--dam", paramLabel = "ID", required = true, description = "The dam, by her id.")
    private String dam = "";

    @Option(
            names = "--traits",
            paramLabel = "NAMES",
            required = true,
            description = "The traits asked for, separated by commas; a few at a time.")
    private String traits = "";

    @Option(
            names = "--look",
            paramLabel = "LOOK",
            description = "A look to count in the litter, for example \"eye colour: pink\".")
    private @Nullable String look;

    @Option(
            names = "--kits",
            paramLabel = "N",
            defaultValue = "8",
            description = "In a litter of how many kits --look is counted, 1 to 30. Default: 8.")
    private int kits = 8;

    @Mixin
    private StageOptions when;

    @Override
    public Integer call() {
        output.isJson(); // a misspelt format is found before the work
        Answers answers = choice.answers();
        Model model = answers.compiled().model();
        Set<String> asked = new LinkedHashSet<>(Inputs.names(traits));
        if (asked.isEmpty()) {
            throw new InputException("problem: --traits names no trait\n");
        }
        LifeStage stage = when.stage(model);
        int count = Inputs.count("--kits", kits, 1, NextLitterQuestion.MOST_KITS);
        RecordedAnswers recorded = pedigree.about(answers);
        NextLitterQuestion question = NextLitterQuestion.of(
                        PedigreeChoice.animal(recorded, "--sire", sire),
                        PedigreeChoice.animal(recorded, "--dam", dam),
                        asked)
                .at(stage);
        String counted = look;
        if (counted != null) {
            question = question.counting(Inputs.look("--look", model, counted), count);
        }
        return output.print(
                recorded.nextLitter(question), model, spec.commandLine().getOut());
    }
}
