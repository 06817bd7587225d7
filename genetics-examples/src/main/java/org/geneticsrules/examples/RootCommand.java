package org.geneticsrules.examples;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The program without a command: says what there is. */
@Command(
        name = "genetics",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        versionProvider = RootCommand.Version.class,
        description = "Foresees the young of a mating, explains and names a coat, exactly and with reasons.",
        footer = {
            "",
            "Exit codes:",
            "  0  answered (\"impossible\" is an answer), or nothing wrong was found",
            "  1  undecided: what was stated contradicts itself, frequencies are missing, or the",
            "     records tell too little; of answers that are compared: they differ",
            "  2  not understood: the command line, a genotype, a look or a document",
            "  3  refused: an exact answer would take too much work",
            "  4  the program failed",
            "",
            "Start with: genetics demo"
        },
        subcommands = {
            DemoCommand.class,
            DescribeCommand.class,
            MatingCommand.class,
            CoatCommand.class,
            HandOverCommand.class,
            TestMatingCommand.class,
            LookNextCommand.class,
            LaterCommand.class,
            DnaTestCommand.class,
            MayCarryCommand.class,
            CarrierTrailCommand.class,
            HowSureCommand.class,
            ParentageCommand.class,
            NextLitterCommand.class,
            RegistryCommand.class,
            LitterFitCommand.class,
            WhichModelCommand.class,
            TellApartCommand.class,
            RerunCommand.class,
            CompareAnswersCommand.class,
            EstimateCommand.class,
            SimulateCommand.class,
            PowerCommand.class,
            NameCommand.class,
            MeaningCommand.class,
            ConvertCommand.class,
            CompareCommand.class,
            ModelsCommand.class,
            ModelCommand.class,
            ReviewCommand.class,
            CheckCommand.class
        })
final class RootCommand implements Runnable {

    @Spec
    private CommandSpec spec;

    @Override
    public void run() {
        CommandLine line = spec.commandLine();
        line.usage(line.getOut());
    }

    /** Reads the version that the build wrote. */
    static final class Version implements CommandLine.IVersionProvider {
        @Override
        public String[] getVersion() {
            String version = RootCommand.class.getPackage().getImplementationVersion();
            return new String[] {"genetics " + (version == null ? "(not packaged)" : version)};
        }
    }
}
