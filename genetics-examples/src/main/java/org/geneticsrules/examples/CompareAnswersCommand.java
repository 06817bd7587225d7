package org.geneticsrules.examples;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.geneticsrules.document.Differences;
import org.geneticsrules.document.Node;
import org.geneticsrules.json.ChangesDocument;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.Limits;
import org.geneticsrules.json.Source;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.render.DifferencesText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Says what is otherwise between two answers that were written as JSON. */
@Command(
        name = "compare-answers",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = {
            "Says what is otherwise between two answers that were written with --format json, or frozen.",
            "It compares verdict, chances, assumptions, cautions and evidence. Any kind of answer will do."
        },
        footer = {
            "",
            "Looks, animals, models and cautions are matched by name, whatever their order. Words are compared",
            "to the letter, exact chances exactly; other numbers may differ by a rounding.",
            "",
            "  genetics litter-fit --pedigree litters.csv --format json > then.json",
            "  genetics litter-fit --pedigree more-litters.csv --format json > now.json",
            "  genetics compare-answers then.json now.json",
            "",
            "Exits with 0 where the two are the same, with 1 where they differ."
        })
final class CompareAnswersCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "BEFORE", description = "An answer as JSON, or a frozen analysis.")
    private Path before = Path.of("");

    @Parameters(index = "1", paramLabel = "AFTER", description = "The answer to hold against it.")
    private Path after = Path.of("");

    @Option(
            names = "--tolerance",
            paramLabel = "SHARE",
            description = "By how much numbers that are not exact may differ, as a share of "
                    + "themselves. Default: 1e-11, one in the last of the twelve digits written.")
    private double tolerance = Differences.USUAL_TOLERANCE;

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
        noted.read(this::checkedTolerance);
        Optional<Node> first = noted.read(() -> read(before));
        Optional<Node> second = noted.read(() -> read(after));
        noted.throwIfAny();
        Differences found = Differences.between(first.orElseThrow(), second.orElseThrow(), tolerance);
        PrintWriter out = spec.commandLine().getOut();
        if (!json) {
            List<String> asked = List.of(text(first.orElseThrow(), "question"), text(second.orElseThrow(), "question"));
            if (!asked.get(0).equals(asked.get(1))) {
                out.println("These answer two questions, or one that is worded otherwise:");
                asked.forEach(question -> out.println("- " + (question.isEmpty() ? "(none is stated)" : question)));
                out.println();
            }
        }
        out.print(json ? Documents.write(ChangesDocument.of(found)) : DifferencesText.of(found));
        return found.isEmpty() ? ExitCodes.ANSWERED : ExitCodes.DIFFERENT;
    }

    private double checkedTolerance() {
        if (!(tolerance >= 0 && tolerance < 1)) {
            throw new InputException(
                    "problem: --tolerance: " + tolerance + " is out of range; expected 0 to less than 1\n");
        }
        return tolerance;
    }

    /** What a text of an answer says; empty if it has none of that name. */
    private static String text(Node answer, String name) {
        return answer instanceof Node.ObjectNode all && all.members().get(name) instanceof Node.TextNode found
                ? found.value()
                : "";
    }

    private static Node read(Path file) {
        try {
            Node answer = Documents.reader(Limits.registry()).readAnswer(Source.of(file));
            if (text(answer, "kind").equals("drawn-truth")) {
                throw new InputException("problem: " + file
                        + " holds what drawn animals truly carry, and is no answer; expected an answer as JSON\n");
            }
            return answer;
        } catch (ProblemsException e) {
            throw new InputException(ProblemText.of(file.toString(), e.problems()));
        }
    }
}
