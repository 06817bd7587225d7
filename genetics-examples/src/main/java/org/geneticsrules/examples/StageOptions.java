package org.geneticsrules.examples;

import java.util.Optional;
import java.util.OptionalInt;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.LifeStage;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The options that say when animals are looked at. */
final class StageOptions {

    @Option(names = "--weeks", paramLabel = "N", description = "The age in weeks at which the look is asked for.")
    private @Nullable Integer weeks;

    @Option(
            names = "--moult",
            paramLabel = "N",
            description = "The number of moults after which the look is asked for; 0 is the juvenile coat.")
    private @Nullable Integer moult;

    @Option(names = "--season", paramLabel = "NAME", description = "The season in which the look is asked for.")
    private @Nullable String season;

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
