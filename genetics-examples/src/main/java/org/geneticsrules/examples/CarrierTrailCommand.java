package org.geneticsrules.examples;

import java.util.concurrent.Callable;
import java.util.function.Supplier;
import org.geneticsrules.answer.HiddenAllele;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

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
            "Each line names a record and by what it multiplied the odds; those that moved nothing are counted."
        })
final class CarrierTrailCommand implements Callable<Integer> {

    @Mixin
    private RecordedOptions recorded;

    @Mixin
    private AnimalOption animal;

    @Mixin
    private AlleleOption carries;

    @Override
    public Integer call() {
        return recorded.answer(asked -> {
            Supplier<String> who = animal.among(asked);
            Supplier<HiddenAllele> allele = carries.of(asked);
            return records -> records.carrierTrail(who.get(), allele.get());
        });
    }
}
