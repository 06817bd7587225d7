package org.geneticsrules.examples;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.geneticsrules.answer.compared.Analysis;
import org.geneticsrules.json.ChangesDocument;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.FrozenAnalysis;
import org.geneticsrules.json.Limits;
import org.geneticsrules.json.Rerun;
import org.geneticsrules.json.Source;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.render.DifferencesText;
import org.geneticsrules.render.TextStyle;
import org.geneticsrules.spi.Renewal;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Asks a frozen question again. */
@Command(
        name = "rerun",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = {
            "Asks again what was frozen with --freeze (litter-fit, which-model), and says what moved.",
            "Nothing but the file is needed: records, models and cautions are in it."
        },
        footer = {
            "",
            "Before anything is asked, every part of the file is compared with its hash; what was changed is",
            "named, and nothing is run. Hashes find mistakes. They are no signature.",
            "",
            "Is it still the same answer?",
            "  genetics rerun analysis.json",
            "What would the models say that the plug-ins have today, and in which statements are they otherwise?",
            "  genetics rerun analysis.json --at-hand",
            "And with a newer version of a hypothesis of one's own?",
            "  genetics rerun analysis.json --model my-hypothesis.json",
            "",
            "Exits with 0 where the answer is the same, with 1 where anything in it moved."
        })
final class RerunCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "FILE", description = "A frozen analysis.")
    private Path file = Path.of("");

    @Option(
            names = "--at-hand",
            description = "Ask the models, patches and vocabularies of the same ids that the plug-ins "
                    + "have now, and raise their cautions of today. What they have not stays.")
    private boolean atHand;

    @Option(
            names = "--model",
            paramLabel = "MODEL",
            description = "A model or a patch to take in place of the frozen one of the same id: an id "
                    + "of a plug-in, or a file. May be repeated.")
    private List<String> models = new ArrayList<>();

    @Option(names = "--freeze", paramLabel = "FILE", description = "Keeps what came out now in a new file.")
    private @Nullable Path freeze;

    @Option(
            names = "--format",
            paramLabel = "FORMAT",
            defaultValue = "text",
            description = "text for people (default), or json for programs.")
    private String format = "text";

    @Override
    public Integer call() {
        Noted noted = new Noted();
        boolean json = noted.read(() -> Inputs.choice("--format", format, "text", "json"))
                .filter("json"::equals)
                .isPresent();
        noted.read(() -> OutputFile.freezable(spec, freeze));
        Optional<FrozenAnalysis> read = noted.read(this::read);
        Optional<Analysis> asked = read.flatMap(frozen -> noted.read(() -> renewed(frozen.analysis())));
        noted.throwIfAny();
        Rerun rerun = read.orElseThrow().rerun(asked.orElseThrow());
        if (freeze != null) {
            OutputFile.write(freeze, Documents.write(rerun.after()));
        }
        PrintWriter out = spec.commandLine().getOut();
        out.print(
                json
                        ? Documents.write(ChangesDocument.of(rerun))
                        : DifferencesText.again(
                                rerun.answer(),
                                rerun.documents(),
                                rerun.before().library(),
                                rerun.after().library(),
                                TextStyle.standard()));
        return rerun.answer().isEmpty() ? ExitCodes.ANSWERED : ExitCodes.DIFFERENT;
    }

    private FrozenAnalysis read() {
        try {
            return Documents.reader(Limits.registry()).readAnalysis(Source.of(file));
        } catch (ProblemsException e) {
            throw new InputException(ProblemText.of(file.toString(), e.problems()));
        }
    }

    private Analysis renewed(Analysis analysis) {
        Renewal renewal = atHand ? Shelf.open().renewal() : Renewal.ofStated();
        for (String stated : models) {
            renewal = StatedVersion.with(stated, renewal, analysis);
        }
        try {
            return renewal.renew(analysis);
        } catch (IllegalArgumentException e) {
            throw new InputException("problem: " + e.getMessage() + "\n");
        }
    }
}
