package org.geneticsrules.examples;

import java.util.concurrent.Callable;
import java.util.function.Supplier;
import org.geneticsrules.answer.recorded.LaterQuestion;
import org.geneticsrules.trait.LifeStage;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Says what an animal, alone or among recorded relatives, may show at a later stage of its life. */
@Command(
        name = "later",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description =
                "Says what an animal may show at a stage of its life, by all that was seen of it and its relatives.",
        footer = {
            "",
            "This silver will keep whitening: what range at the third moult?",
            "  genetics later --look \"white guard hairs: scattered @ moult 1\" \\",
            "      --traits \"white guard hairs\" --moult 3",
            "",
            "The same of a recorded animal, whose relatives count too:",
            "  genetics later --pedigree kennel.csv --animal \"Kit 3\" --weeks 60 --moult 3 --season winter",
            "",
            "What is possible hangs on no frequency. Chances are given for each population of the model unless",
            "--population names one; where a coat changes with age they are as sure as the model's statement of",
            "that, which the answer grades."
        })
final class LaterCommand implements Callable<Integer> {

    @Mixin
    private AnimalChoice choice;

    @Option(
            names = "--traits",
            paramLabel = "NAMES",
            description = "The traits asked for, separated by commas. Default: all the model rules.")
    private @Nullable String traits;

    @Mixin
    private StageOptions when;

    @Override
    public Integer call() {
        return choice.answer((asked, who) -> {
            Supplier<LifeStage> stage = asked.read(() -> {
                LifeStage then = when.stage(asked.model());
                if (then.equals(LifeStage.unstated())) {
                    asked.wrong("no stage is stated; say when the animal will be looked at, with --weeks, --moult or"
                            + " --season, for example --moult 3");
                }
                return then;
            });
            return records ->
                    records.later(LaterQuestion.of(who.get(), stage.get()).in(Inputs.names(traits)));
        });
    }
}
