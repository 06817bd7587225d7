package org.geneticsrules.examples;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Estimates a number; says which ones there are. */
@Command(
        name = "estimate",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = {
            "Estimates a number from counts or recorded animals, and tells how far it may be off.",
            "It may be how often loci recombine, which share of the young is affected, how frequent alleles are, "
                    + "how many animals of a genotype show it, or how well they live."
        },
        footer = {
            "",
            "How common is albino in my kennel?",
            "  genetics estimate frequency --pedigree kennel.csv --allele albino",
            "Is it really one in four?",
            "  genetics estimate segregation --pedigree kennel.csv --look \"eye colour: pink\"",
            "More with: genetics estimate NUMBER --help"
        },
        synopsisSubcommandLabel = "NUMBER",
        commandListHeading = "%nNumbers:%n",
        subcommands = {
            EstimateRecombinationCommand.class,
            EstimateSegregationCommand.class,
            EstimateFrequencyCommand.class,
            EstimatePenetranceCommand.class,
            EstimateViabilityCommand.class
        })
final class EstimateCommand implements Runnable {

    @Spec
    private CommandSpec spec;

    @Override
    public void run() {
        CommandLine line = spec.commandLine();
        line.usage(line.getOut());
    }
}
