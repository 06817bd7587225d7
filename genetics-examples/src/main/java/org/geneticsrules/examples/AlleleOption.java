package org.geneticsrules.examples;

import java.util.function.Supplier;
import org.geneticsrules.answer.HiddenAllele;
import picocli.CommandLine.Option;

/** The allele that an animal may carry. */
final class AlleleOption {

    @Option(
            names = "--carries",
            paramLabel = "NAME",
            required = true,
            description = "What it may carry: an allele by word or letter.")
    private String carries = "";

    Supplier<HiddenAllele> of(Asked asked) {
        return asked.allele("--carries", carries);
    }
}
