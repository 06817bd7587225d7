package org.geneticsrules.examples;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.geneticsrules.hypothesis.Comparison;
import org.geneticsrules.hypothesis.WhatMoves;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.WhatMovesDocument;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.render.WhatMovesText;
import org.geneticsrules.trait.LifeStage;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Shows what follows from believing otherwise. */
@Command(
        name = "compare",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description =
                "Shows what moves when the rules are taken to be otherwise: animals and matings, the smallest first.",
        footer = {
            "",
            "A model is compared with what --patch makes of it, or with the model --with. That nothing moves is",
            "proved, not sampled. What moves only with age is told for the first stage at which it does.",
            "",
            "What if brown were dominant? With that written down in brown-dominant.json:",
            "  genetics compare --patch brown-dominant.json",
            "Does it make a difference to litters that three loci of the fruit fly are linked?",
            "  genetics compare --model geneticsrules.textbook.fruit-fly-three-point \\",
            "      --patch geneticsrules.textbook.fruit-fly-three-point-independent"
        })
final class CompareCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Mixin
    private ModelChoice choice;

    @Mixin
    private OutputChoice output;

    @Option(
            names = "--with",
            paramLabel = "MODEL",
            description = "The other model: its id, or a file. It speaks of the same catalogue of traits.")
    private @Nullable String with;

    @Option(
            names = "--traits",
            paramLabel = "NAMES",
            description = "The traits compared, separated by commas. Default: all that both model.")
    private @Nullable String traits;

    @Option(
            names = "--stage",
            paramLabel = "STAGE",
            description = "The stage of life compared at, for example \"moult 3\". Default: all stages, from birth on.")
    private @Nullable String stage;

    @Option(
            names = "--from",
            paramLabel = "LOCUS=ALLELE",
            description = "What animals carry unless an example says otherwise; the wild type by default. Needed at a"
                    + " locus that only one model has, if nothing says so. May be repeated.")
    private List<String> from = new ArrayList<>();

    @Option(
            names = "--examples",
            paramLabel = "N",
            description =
                    "How many examples of each kind to show, 1 to 1000. Default: " + Comparison.USUAL_EXAMPLES + ".")
    private int examples = Comparison.USUAL_EXAMPLES;

    @Override
    public Integer call() {
        boolean json = output.isJson(); // a misspelt format is found before the work
        ModelChoice.Base base = choice.base();
        if ((with == null) == base.patches().isEmpty()) {
            throw new InputException("problem: state either --patch or --with: what the model is compared with\n");
        }
        Comparison question = with == null
                ? Comparison.of(base.model(), base.patched(), base.patches())
                : Comparison.of(base.model(), choice.other(with));
        question = question.inTraits(Inputs.names(traits));
        if (stage != null) {
            question = question.at(stage(stage));
        }
        for (String stated : from) {
            int equals = stated.indexOf('=');
            if (equals < 1) {
                throw unreadable("--from", stated, "is no locus with its allele", "for example M=m");
            }
            question = question.from(
                    stated.substring(0, equals).strip(),
                    stated.substring(equals + 1).strip());
        }
        WhatMoves moves = shown(question).whatMoves();
        PrintWriter out = spec.commandLine().getOut();
        out.print(
                json
                        ? Documents.write(WhatMovesDocument.of(moves))
                        : WhatMovesText.of(moves, output.style(base.model())));
        return ExitCodes.ANSWERED;
    }

    private Comparison shown(Comparison question) {
        try {
            return question.showing(examples);
        } catch (IllegalArgumentException e) {
            throw unreadable("--examples", Integer.toString(examples), "is out of range", "1 to 1000");
        }
    }

    private static LifeStage stage(String given) {
        try {
            return LifeStage.parse(given);
        } catch (IllegalArgumentException e) {
            throw unreadable(
                    "--stage", given, "is no stage of life", "for example \"week 8\", \"moult 3\" or a season");
        }
    }

    private static InputException unreadable(String option, String given, String what, String expected) {
        Problem problem = Problem.of(Stage.SYNTAX, "option-syntax", "", "\"" + given + "\" " + what)
                .expecting(expected);
        return new InputException(ProblemText.of(option, given, List.of(problem)));
    }
}
