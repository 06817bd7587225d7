package org.geneticsrules.examples;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Function;
import java.util.function.Supplier;
import org.geneticsrules.answer.compared.Analysis;
import org.geneticsrules.answer.compared.HeldModel;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Says which of several models recorded litters favour. */
@Command(
        name = "which-model",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = {
            "Says which of several beliefs about inheritance recorded litters favour, and how strongly.",
            "It tells too whether any of them fits, and what would turn that. The model chosen is the one that "
                    + "others are held against."
        },
        footer = {
            "",
            "Decide beforehand which model the others are held against, name every rival that is tried, and",
            "leave no litter out. Nothing here says that a mating is advisable.",
            "",
            "Is sandy of one series with chocolate, or a locus of its own?",
            "  genetics which-model --pedigree litters.csv --rival my-hypothesis.json",
            "All rivals that the plug-in has, as far as they speak of the traits recorded:",
            "  genetics which-model --pedigree litters.csv --traits \"hue, eye colour\"",
            "",
            "With --freeze the question is kept with its answer and all that it hangs on, to be run again",
            "(genetics rerun).",
            "",
            "Exits with 1 where the records decide nothing."
        })
final class WhichModelCommand implements Callable<Integer> {

    @Mixin
    private ModelChoice choice;

    @Option(
            names = "--rival",
            paramLabel = "MODEL",
            description = "A model or a patch to hold against it: the id of one of a plug-in, or a file. May be "
                    + "repeated. What one of them leaves open is left out for all, and told. Default: the "
                    + "rivals of the plug-in that speak of every recorded trait of which the model speaks.")
    private List<String> rivals = new ArrayList<>();

    @Option(
            names = "--belief",
            paramLabel = "MODEL=SHARE",
            description = "What is believed of a model beforehand, in proportion to the others: its id and a number "
                    + "from 0 to 1, for example \"my-hypothesis=1/10\". May be repeated. Default: 1 for each. "
                    + "It moves what may be believed afterwards, and no likelihood ratio.")
    private List<String> beliefs = new ArrayList<>();

    @Option(
            names = "--fitted",
            paramLabel = "MODEL=N",
            description = "How many numbers of a model were fitted to these same records: its id and a count, for "
                    + "example \"my-hypothesis=2\". May be repeated. Default: none. A ratio is then no evidence for "
                    + "it, and AIC and BIC are told.")
    private List<String> fitted = new ArrayList<>();

    @Mixin
    private LitterQuestionOptions litters;

    @Override
    public Integer call() {
        Function<Asked, Supplier<Beliefs>> stated = asked -> Beliefs.read(asked, beliefs, fitted);
        return rivals.isEmpty()
                ? litters.answer(
                        choice,
                        stated,
                        Analysis.Kind.AT_HAND,
                        asked ->
                                () -> asked.rivals().stream().map(HeldModel::of).toList())
                : litters.answer(choice, stated, Analysis.Kind.NAMED, asked -> {
                    asked.read(() -> ModelChoice.once(rivals));
                    List<Supplier<HeldModel>> others = rivals.stream()
                            .map(rival -> asked.read(() -> choice.held(rival)))
                            .toList();
                    return () -> others.stream().map(Supplier::get).toList();
                });
    }
}
