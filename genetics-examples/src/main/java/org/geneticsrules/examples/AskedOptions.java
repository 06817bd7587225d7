package org.geneticsrules.examples;

import java.util.LinkedHashSet;
import java.util.Set;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.trait.LifeStage;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The options that questions about animals have in common: the traits, when they are looked at, and how genotypes are meant. */
final class AskedOptions {

    @Option(
            names = "--traits",
            paramLabel = "NAMES",
            description = {
                "The traits asked for, separated by commas; sex may be among them.",
                "Default: all the model rules."
            })
    private @Nullable String traits;

    @Mixin
    private StageOptions when;

    @Option(
            names = "--omitted",
            paramLabel = "MEANING",
            defaultValue = "unknown",
            description = "What it means that a genotype does not name a locus: unknown (default) or wild-type.")
    private String omitted = "unknown";

    Set<String> traits() {
        return new LinkedHashSet<>(Inputs.names(traits));
    }

    OmittedLoci omitted() {
        return Inputs.omitted(omitted);
    }

    LifeStage stage(Model model) {
        return when.stage(model);
    }
}
