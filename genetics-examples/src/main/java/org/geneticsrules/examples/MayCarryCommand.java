package org.geneticsrules.examples;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.Stage;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Says what a recorded animal may be and hide, by all records of it and its relatives. */
@Command(
        name = "may-carry",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Says what a recorded animal may carry, by its own records and those of its relatives.",
        footer = {
            "",
            "What may Kit 3 carry, and how likely is each?",
            "  genetics may-carry --pedigree kennel.csv --animal \"Kit 3\" --loci \"C, B\"",
            "",
            "What all records exclude does not depend on how common an allele is; chances do, and are given for",
            "each population of the model unless --population names one."
        })
final class MayCarryCommand implements Callable<Integer> {

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
            names = "--loci",
            paramLabel = "NAMES",
            description = "The loci asked about, separated by commas. Default: all of the model.")
    private @Nullable String loci;

    @Override
    public Integer call() {
        output.isJson(); // a misspelt format is found before the work
        Answers answers = choice.answers();
        Model model = answers.compiled().model();
        Set<String> asked = loci(model);
        RecordedAnswers recorded = pedigree.about(answers);
        return output.print(
                recorded.mayCarry(PedigreeChoice.animal(recorded, "--animal", animal), asked),
                model,
                spec.commandLine().getOut());
    }

    private Set<String> loci(Model model) {
        List<Problem> problems = new ArrayList<>();
        Set<String> asked = new LinkedHashSet<>(Inputs.names(loci));
        for (String locus : asked) {
            if (!model.loci().containsKey(locus)) {
                problems.add(Problems.unknown(
                        Stage.REFERENCES,
                        "unknown-locus",
                        "",
                        "locus",
                        locus,
                        model.loci().keySet()));
            }
        }
        if (!problems.isEmpty()) {
            throw new InputException(ProblemText.of("--loci", String.valueOf(loci), problems));
        }
        return asked;
    }
}
