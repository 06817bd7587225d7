package org.geneticsrules.examples;

import java.util.concurrent.Callable;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Says how likely a recorded animal is to carry an allele, record by record. */
@Command(
        name = "carrier-trail",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Says how likely a recorded animal is to carry an allele, before any record and after each.",
        footer = {
            "",
            "How likely is Osprel to carry albino, and which records tell?",
            "  genetics carrier-trail --pedigree kennel.csv --animal Osprel --carries albino",
            "",
            "Each line names a record and by what it multiplied the odds; records that moved nothing are counted."
        })
final class CarrierTrailCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Mixin
    private ModelChoice choice;

    @Mixin
    private PedigreeChoice pedigree;

    @Mixin
    private OutputChoice output;

    @Option(names = "--animal", paramLabel = "ID", required = true, description = "The animal, by its id.")
    private String animal = "";

    @Option(
            names = "--carries",
            paramLabel = "NAME",
            required = true,
            description = "What it may carry: an allele by word or letter.")
    private String carries = "";

    @Override
    public Integer call() {
        output.isJson(); // a misspelt format is found before the work
        Answers answers = choice.answers();
        HiddenAllele allele = Inputs.reading(
                "--carries", carries, () -> HiddenAllele.find(answers.compiled().model(), carries));
        RecordedAnswers recorded = pedigree.about(answers);
        return output.print(
                recorded.carrierTrail(PedigreeChoice.animal(recorded, "--animal", animal), allele),
                answers.compiled().model(),
                spec.commandLine().getOut());
    }
}
