package org.geneticsrules.examples;

import java.util.concurrent.Callable;
import java.util.function.Supplier;
import org.geneticsrules.answer.recorded.LookNextQuestion;
import org.geneticsrules.trait.LifeStage;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Says what to look at next in an animal, alone or among recorded relatives. */
@Command(
        name = "look-next",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Says which look at an animal is expected to tell most of what it may carry, and what it may be.",
        footer = {
            "",
            "A white ferret of unknown parents: what should be looked at next?",
            "  genetics look-next --look \"white guard hairs: all @ week 60, moult 2\" --weeks 60 --moult 2",
            "",
            "The same of a recorded animal, whose relatives count too:",
            "  genetics look-next --pedigree kennel.csv --animal \"Kit 3\" --moult 2",
            "",
            "What a look tells depends on how common alleles are; it is given for each population of the model",
            "unless --population names one."
        })
final class LookNextCommand implements Callable<Integer> {

    @Mixin
    private AnimalChoice choice;

    @Option(
            names = "--traits",
            paramLabel = "NAMES",
            description = "The traits to choose among, separated by commas. Default: all the model rules.")
    private @Nullable String traits;

    @Mixin
    private StageOptions when;

    @Override
    public Integer call() {
        return choice.answer((asked, who) -> {
            Supplier<LifeStage> stage = asked.read(() -> when.stage(asked.model()));
            return records -> records.lookNext(
                    LookNextQuestion.of(who.get()).at(stage.get()).among(Inputs.names(traits)));
        });
    }
}
