package org.geneticsrules.examples;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.recorded.Progress;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.answer.recorded.RegistryQuestion;
import org.geneticsrules.answer.recorded.RegistryReport;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.RegistryDocument;
import org.geneticsrules.model.Model;
import org.geneticsrules.render.RegistryText;
import org.geneticsrules.table.RegistryTable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Checks the records of a whole registry. */
@Command(
        name = "registry",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Checks whether the records of a whole registry fit one another, animal by animal.",
        footer = {
            "",
            "The verdict on each animal is accept, query, look again or not decided, with the reason to send.",
            "It accuses nobody: of records that do not fit, any may be mistaken, or the model.",
            "The file is written as a whole or not at all, also if the program is ended meanwhile.",
            "",
            "Check a table, and write a verdict for each animal:",
            "  genetics registry --pedigree registry.csv --out verdicts.csv",
            "How likely is each animal to carry albino, too?",
            "  genetics registry --pedigree registry.csv --carries albino --population \"few carriers\" \\",
            "      --out verdicts.json",
            "The same of many thousands of relatives, in ten minutes at most:",
            "  genetics registry --pedigree registry.csv --carries albino --minutes 10 --out verdicts.csv"
        })
final class RegistryCommand implements Callable<Integer> {

    private static final int MOST_MINUTES = 10_000;
    private static final double NANOS = 60e9;

    @Spec
    private CommandSpec spec;

    @Mixin
    private ModelChoice choice;

    @Mixin
    private PedigreeChoice pedigree;

    @Option(
            names = "--carries",
            paramLabel = "NAMES",
            description = "Alleles, by word or letter, separated by commas: how likely each animal is "
                    + "to carry them is written to --out.")
    private @Nullable String carries;

    @Option(
            names = "--out",
            paramLabel = "FILE",
            description = "Where to write a verdict for each animal: a .csv table or a .json document.")
    private @Nullable Path out;

    @Option(
            names = "--sets",
            paramLabel = "N",
            defaultValue = "5",
            description = "How many of the fewest records to look at again are listed, 1 to 100. Default: 5.")
    private int sets = 5;

    @Option(
            names = "--minutes",
            paramLabel = "N",
            description = "How long chances may be worked out, such as 5 or 0.5; those of the relatives that "
                    + "take least come first, and what is not come to is told. Default: no limit.")
    private @Nullable Double minutes;

    @Option(
            names = "--progress",
            paramLabel = "WHEN",
            defaultValue = "auto",
            description = "Whether to show how far it has come: auto (on a terminal, default), always or never.")
    private String progress = "auto";

    @Option(names = "--words", description = "Name loci and alleles by words and not by letters.")
    private boolean words;

    @Override
    public Integer call() {
        Asked asked = new Asked(choice.answers(), pedigree);
        Model model = asked.model();
        Path file = out;
        Supplier<Boolean> json = asked.read(
                () -> file != null && OutputFile.apart(spec, "--out", file) && OutputFile.isJson("--out", file));
        Supplier<String> shown = asked.read(() -> Inputs.choice("--progress", progress, "auto", "always", "never"));
        Supplier<Integer> most = asked.read(() -> Inputs.count("--sets", sets, 1, 100));
        Supplier<BooleanSupplier> over = asked.read(() -> isOver(minutes));
        List<Supplier<HiddenAllele>> alleles = Inputs.names(carries).stream()
                .map(name -> asked.allele("--carries", name))
                .toList();
        if (!alleles.isEmpty() && file == null) {
            asked.wrong("--carries is written to a file; say which with --out");
        }
        if (minutes != null && alleles.isEmpty()) {
            asked.wrong("--minutes limits how long chances are worked out; say of which alleles with --carries");
        }
        RecordedAnswers recorded = asked.records();
        PrintWriter err = spec.commandLine().getErr();
        Progress bar = ProgressBar.of("checking", err, shown.get());
        RegistryReport report = recorded.check(
                new RegistryQuestion(alleles.stream().map(Supplier::get).toList(), most.get()), bar, over.get());
        if (file != null) {
            OutputFile.write(
                    file, json.get() ? Documents.write(RegistryDocument.of(report)) : RegistryTable.write(report));
        }
        spec.commandLine().getOut().print(RegistryText.of(report, OutputChoice.style(model, words)));
        return report.count(RegistryReport.Verdict.NOT_DECIDED) > 0 ? ExitCodes.UNDECIDED : ExitCodes.ANSWERED;
    }

    private static BooleanSupplier isOver(@Nullable Double minutes) {
        if (minutes == null) {
            return () -> false;
        }
        if (!(minutes >= 0 && minutes <= MOST_MINUTES)) {
            throw new InputException(
                    "problem: --minutes " + minutes + ": expected a number from 0 to " + MOST_MINUTES + "\n");
        }
        return new Timer(minutes * NANOS);
    }

    /** Begins when it is first asked, since chances are worked out last. Not thread-safe. */
    private static final class Timer implements BooleanSupplier {
        private final double most;
        private boolean begun;
        private long start;

        Timer(double most) {
            this.most = most;
        }

        @Override
        public boolean getAsBoolean() {
            if (!begun) {
                begun = true;
                start = System.nanoTime();
            }
            return System.nanoTime() - start >= most;
        }
    }
}
