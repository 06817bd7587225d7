package org.geneticsrules.examples;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.geneticsrules.answer.estimated.ModelNumber;
import org.geneticsrules.estimation.Penetrance;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Estimates which share of the animals of a genotype shows it. */
@Command(
        name = "penetrance",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Estimates which share of the animals of a genotype shows it.",
        footer = {
            "",
            "By animals that are known to have the genotype, by a test or by their young:",
            "  genetics estimate penetrance --known \"7 of 10\"",
            "By young of known matings, each of which has the genotype with a chance:",
            "  genetics estimate penetrance --young \"3 of 20 at 1/4\" --young \"4 of 12 at 1/2\"",
            "By recorded animals, under a model that leaves the state to chance in one of its cases:",
            "  genetics estimate penetrance --file model.json --catalogue traits.json --pedigree kennel.csv \\",
            "      --trait bib --state yes",
            "",
            "Exits with 1 where the records say nothing of it."
        })
final class EstimatePenetranceCommand implements Callable<Integer> {

    @Option(
            names = "--known",
            paramLabel = "COUNT",
            description = "How many of the animals known to have the genotype show it, for example \"7 of 10\".")
    private @Nullable String known;

    @Option(
            names = "--young",
            paramLabel = "COUNT",
            description = "How many of the young of a mating show it, and the chance that one of them has the "
                    + "genotype, for example \"3 of 20 at 1/4\". Once for each kind of mating.")
    private List<String> young = new ArrayList<>();

    @Option(names = "--trait", paramLabel = "TRAIT", description = "With --pedigree: the trait.")
    private @Nullable String trait;

    @Option(names = "--state", paramLabel = "STATE", description = "With --pedigree: the state that chance may bring.")
    private @Nullable String state;

    @Option(
            names = "--case",
            paramLabel = "CASE",
            description = "With --pedigree: the case of the trait's rule, if several leave the state to chance.")
    private @Nullable String rule;

    @Mixin
    private EstimateQuestion question;

    @Override
    public Integer call() {
        return switch (question.source(
                List.of("--trait", "--state", "--case"),
                EstimateQuestion.Source.of("--known", known != null),
                EstimateQuestion.Source.of("--young", !young.isEmpty()))) {
            case "--known" -> known(String.valueOf(known));
            case "--young" -> {
                List<Penetrance.Mating> matings = young.stream()
                        .map(one -> CountTexts.mating("--young", one))
                        .toList();
                yield question.print(CountTexts.of(
                        "--young",
                        String.join(", ", young),
                        () -> question.counted().penetrance(matings)));
            }
            default -> {
                String of = EstimateQuestion.needed("--trait", trait, "the trait that chance has a part in");
                String shows = EstimateQuestion.needed("--state", state, "the state that chance may bring");
                Optional<String> in = Optional.ofNullable(rule);
                yield question.records(records -> records.ofModel(new ModelNumber.Showing(of, in, shows)));
            }
        };
    }

    private int known(String given) {
        CountTexts.Some some = CountTexts.some("--known", given);
        return question.print(
                CountTexts.of("--known", given, () -> question.counted().penetrance(some.some(), some.of())));
    }
}
