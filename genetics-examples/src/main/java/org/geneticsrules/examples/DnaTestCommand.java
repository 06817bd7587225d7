package org.geneticsrules.examples;

import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.recorded.DnaTestQuestion;
import org.geneticsrules.probability.Probability;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Says what a DNA test of an animal would tell, and what its error would change. */
@Command(
        name = "dna-test",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Says what a DNA test of an animal would tell without any mating, and what its error changes.",
        footer = {
            "",
            "Would a DNA test settle whether Osprel carries albino?",
            "  genetics dna-test --pedigree kennel.csv --animal Osprel --carries albino",
            "",
            "The same of a single ferret, by a test that is wrong in one case of a hundred:",
            "  genetics dna-test --look \"eye colour: dark\" --carries albino --error 1/100",
            "",
            "It says what is on record of a cause in the DNA. Whether a laboratory offers a test, and how often",
            "that is wrong, is to be asked of a veterinarian or the laboratory."
        })
final class DnaTestCommand implements Callable<Integer> {

    @Mixin
    private AnimalChoice choice;

    @ArgGroup(exclusive = true, multiplicity = "1")
    private Asking what = new Asking();

    /** What is asked: one of both. */
    static final class Asking {

        @Option(
                names = "--carries",
                paramLabel = "NAME",
                required = true,
                description = "An allele that it may carry, by word or letter; the test is of its locus.")
        private @Nullable String carries;

        @Option(names = "--locus", paramLabel = "ID", required = true, description = "The locus tested, by its id.")
        private @Nullable String locus;
    }

    @Option(
            names = "--error",
            paramLabel = "CHANCE",
            defaultValue = "0",
            description = "How often the test is wrong, for example 1/100. Default: never.")
    private String error = "0";

    @Override
    public Integer call() {
        return choice.answer((asked, who) -> {
            Supplier<Probability> wrong = asked.read(() -> Inputs.error("--error", error));
            Supplier<DnaTestQuestion> question = question(asked, who);
            return records -> records.dnaTest(question.get().wrongIn(wrong.get()));
        });
    }

    private Supplier<DnaTestQuestion> question(Asked asked, Supplier<String> who) {
        String allele = what.carries;
        String locus = what.locus;
        if (allele != null) {
            Supplier<HiddenAllele> named = asked.allele("--carries", allele);
            return () -> DnaTestQuestion.of(who.get(), named.get());
        }
        Supplier<Set<String>> named = asked.loci("--locus", Optional.ofNullable(locus));
        asked.read(() -> {
            if (named.get().size() != 1) {
                asked.wrong("--locus: a test is of one locus, but \"" + locus + "\" names "
                        + named.get().size());
            }
            return named;
        });
        return () -> DnaTestQuestion.of(who.get(), named.get().iterator().next());
    }
}
