package org.geneticsrules.examples;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import org.geneticsrules.expression.Completeness;
import org.geneticsrules.json.CompletenessDocument;
import org.geneticsrules.json.Documents;
import org.geneticsrules.render.CompletenessText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Tells how complete a model is. */
@Command(
        name = "review",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description =
                "Reviews a model as a whole: where it makes no claim, what no animal reaches, which alleles, genotypes"
                        + " and loci nothing tells apart, which states belong to one sex, season or age, and what evidence there"
                        + " is.",
        footer = {
            "",
            "A file whose statements contradict each other is reviewed too, and the contradictions stand first.",
            "All other faults of a file have to be mended before; see: genetics check",
            "",
            "  genetics review",
            "  genetics review --file my-model.json --catalogue my-traits.json"
        })
final class ReviewCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Mixin
    private ModelChoice choice;

    @Option(
            names = "--format",
            paramLabel = "FORMAT",
            defaultValue = "text",
            description = "text for people (default), or json for programs: the report's document and nothing else.")
    private String format = "text";

    @Override
    public Integer call() {
        boolean json = Inputs.choice("--format", format, "text", "json").equals("json");
        Completeness report = choice.review();
        PrintWriter out = spec.commandLine().getOut();
        out.print(json ? Documents.write(CompletenessDocument.of(report)) : CompletenessText.of(report));
        return report.conflicts().isEmpty() ? ExitCodes.ANSWERED : ExitCodes.NOT_UNDERSTOOD;
    }
}
