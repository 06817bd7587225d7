package org.geneticsrules.examples;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import org.geneticsrules.model.Model;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Lists the models at hand. */
@Command(
        name = "models",
        mixinStandardHelpOptions = true,
        description = "Lists the models of all plug-ins at hand, with the patches for each.",
        footer = {"", "A plug-in that cannot be used is named on the error stream; the others are listed."})
final class ModelsCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        Shelf shelf = Shelf.open();
        for (Model model : shelf.models()) {
            out.println(model.id());
            out.println("    " + model.title().orElse("(no title)"));
            out.println("    version " + model.version()
                    + model.taxon().map(taxon -> ", " + taxon).orElse("")
                    + shelf.plugin(model)
                            .map(plugin -> ", from plug-in " + plugin)
                            .orElse(""));
            shelf.patches(model)
                    .forEach(patch -> out.println("    patch " + patch.id()
                            + patch.title().map(title -> ": " + title).orElse("")));
        }
        shelf.problems().forEach(problem -> spec.commandLine().getErr().println("problem: " + problem));
        return ExitCodes.ANSWERED;
    }
}
