package org.geneticsrules.examples;

import java.util.ArrayList;
import java.util.List;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.PossibleSires;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.probability.Probability;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The options that describe the male, or two males who both had access to the dam. */
final class SireOptions {

    @Option(names = "--sire", paramLabel = "GENOTYPE", description = "The sire's genotype, for example \"C/c B/-\".")
    private @Nullable String sire;

    @Option(
            names = "--sire-look",
            paramLabel = "LOOK",
            description = {
                "What the sire looks like, \"trait: state, ...\", or looked like, \"... @ week 8\".",
                "Once for each time he was looked at."
            })
    private List<String> sireLooks = new ArrayList<>();

    @Option(
            names = "--other-sire",
            paramLabel = "GENOTYPE",
            description = "The genotype of a second male who had access, and may be the sire instead.")
    private @Nullable String other;

    @Option(names = "--other-sire-look", paramLabel = "LOOK", description = "What the second male looks like.")
    private List<String> otherLooks = new ArrayList<>();

    @Option(
            names = "--other-chance",
            paramLabel = "CHANCE",
            defaultValue = "1/2",
            description = "The chance that the second male is the sire, for example 1/3. Default: 1/2.")
    private String chance = "1/2";

    @Option(
            names = "--shared-litter",
            description = "Each of the young may have either male as its sire. Default: one sire for the litter.")
    private boolean shared;

    PossibleSires sires(CompiledModel compiled, OmittedLoci omitted) {
        Animal first = Inputs.animal(compiled, "--sire", sire, "--sire-look", sireLooks, omitted);
        if (other == null && otherLooks.isEmpty()) {
            return PossibleSires.of(first);
        }
        Animal second = Inputs.animal(compiled, "--other-sire", other, "--other-sire-look", otherLooks, omitted);
        Probability his = Inputs.chance("--other-chance", chance);
        List<Animal> both = List.of(first, second);
        return (shared ? PossibleSires.perKit(both) : PossibleSires.oneOf(both))
                .withAccess(List.of(his.complement(), his));
    }
}
