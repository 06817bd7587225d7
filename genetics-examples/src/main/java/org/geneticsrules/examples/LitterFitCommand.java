package org.geneticsrules.examples;

import java.util.List;
import java.util.concurrent.Callable;
import org.geneticsrules.answer.compared.Analysis;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Judges whether litters go with what is believed of their inheritance. */
@Command(
        name = "litter-fit",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = {
            "Judges whether recorded litters go with what is believed of their inheritance.",
            "It tells which kits are impossible, unlikely or fine, how each litter goes, and all of them together."
        },
        footer = {
            "",
            "Say in the records how each litter came to be recorded: litters that were noticed for a rare look",
            "hold more of it than others (see the guide on recorded animals).",
            "",
            "Does this litter fit the accepted inheritance?",
            "  genetics litter-fit --pedigree litters.csv --population \"few carriers\"",
            "Only by one trait, and with looks that may be misread:",
            "  genetics litter-fit --pedigree litters.csv --traits \"eye colour\" \\",
            "      --misnamed \"eye colour: dark as pink=1/1000\"",
            "",
            "With --freeze the question is kept with its answer and all that it hangs on, to be run again",
            "(genetics rerun).",
            "",
            "Exits with 1 where no litter could be tested; that litters exclude the model, or go badly with it,",
            "is an answer (\"rejected\" in the document)."
        })
final class LitterFitCommand implements Callable<Integer> {

    @Mixin
    private ModelChoice choice;

    @Mixin
    private LitterQuestionOptions litters;

    @Override
    public Integer call() {
        return litters.answer(choice, Beliefs::none, Analysis.Kind.FIT, asked -> () -> List.of());
    }
}
