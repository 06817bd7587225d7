package org.geneticsrules.examples;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import org.geneticsrules.json.Documents;
import org.geneticsrules.model.Model;
import org.geneticsrules.render.ModelText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Shows one model. */
@Command(
        name = "model",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Shows a model: loci, rules, what each locus hides, populations, the evidence and its sources.")
final class ModelCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Mixin
    private ModelChoice choice;

    @Option(
            names = "--format",
            paramLabel = "FORMAT",
            defaultValue = "text",
            description =
                    "text for people (default), or json: the model's document, to be changed and used with --file.")
    private String format = "text";

    @Override
    public Integer call() {
        boolean json = Inputs.choice("--format", format, "text", "json").equals("json");
        Model model = choice.model();
        PrintWriter out = spec.commandLine().getOut();
        out.print(json ? Documents.write(model) : ModelText.of(model));
        return ExitCodes.ANSWERED;
    }
}
