package org.geneticsrules.examples;

import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.trait.LifeStage;
import org.jspecify.annotations.Nullable;
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

    @Option(names = "--weeks", paramLabel = "N", description = "The age in weeks at which the look is asked for.")
    private @Nullable Integer weeks;

    @Option(
            names = "--moult",
            paramLabel = "N",
            description = "The number of moults after which the look is asked for; 0 is the juvenile coat.")
    private @Nullable Integer moult;

    @Option(names = "--season", paramLabel = "NAME", description = "The season in which the look is asked for.")
    private @Nullable String season;

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
        LifeStage counted = new LifeStage(count("--weeks", weeks), count("--moult", moult), Optional.empty());
        String named = season;
        if (named == null) {
            return counted;
        }
        return Inputs.reading("--season", named, () -> Inputs.stage(model, counted, named.strip()));
    }

    private static OptionalInt count(String option, @Nullable Integer given) {
        return given == null ? OptionalInt.empty() : OptionalInt.of(Inputs.count(option, given, 0, LifeStage.MOST));
    }
}
