package org.geneticsrules.examples;

import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

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

    @Mixin
    private RecordedOptions recorded;

    @Mixin
    private AnimalOption animal;

    @Option(
            names = "--loci",
            paramLabel = "NAMES",
            description = "The loci asked about, separated by commas. Default: all of the model.")
    private @Nullable String loci;

    @Override
    public Integer call() {
        return recorded.answer(asked -> {
            Supplier<String> who = animal.among(asked);
            Supplier<Set<String>> at = asked.loci("--loci", Optional.ofNullable(loci));
            return records -> records.mayCarry(who.get(), at.get());
        });
    }
}
